/**
 * What water is, to this program: conserved totals per kilogram of water, and everything else solved from them.
 * One litre counts as one kilogram of water (no density correction), so mol/kg = (mg/L) / 1000 / molar mass.
 */

/** The conserved amounts. Doses, blending and evaporation are linear on them; pH is not among them. */
export interface Totals {
  /** Alkalinity = charge of the strong ions, Na + K + Li + 2 Ca + 2 Mg − Cl − 2 SO4 [eq/kg]. */
  readonly alkalinityEq: number
  /** Dissolved inorganic carbon [mol/kg]. */
  readonly carbonMol: number
  readonly calciumMol: number
  readonly magnesiumMol: number
  readonly sodiumMol: number
  readonly potassiumMol: number
  readonly chlorideMol: number
  readonly sulfateMol: number
  readonly boronMol: number
  /** All cyanurate rings, free and chlorinated [mol/kg]. */
  readonly cyanurateMol: number
  /** All oxidising chlorine, HOCl + OCl⁻ + chlorine on cyanurate [mol/kg]. */
  readonly chlorineMol: number
  readonly lithiumMol?: number | undefined
  readonly temperatureC: number
}

/** A conserved amount's name. */
export type TotalKey = Exclude<keyof Totals, 'temperatureC'>

/** A change of conserved totals [mol or eq per kg of water, or per whatever the caller scales it to]. */
export type Delta = { readonly [key in TotalKey]?: number | undefined }

/** Readings of a water as people take them; absent ones are 0, the temperature 25 °C. */
export interface WaterReading {
  readonly pH: number
  readonly ta_mg_per_L_as_CaCO3: number
  /** Calcium hardness only; magnesium has its own reading. */
  readonly ch_mg_per_L_as_CaCO3?: number | undefined
  readonly mg_hardness_mg_per_L_as_CaCO3?: number | undefined
  readonly sulfate_mg_per_L?: number | undefined
  readonly cya_mg_per_L?: number | undefined
  readonly borate_mg_per_L_as_B?: number | undefined
  readonly fc_mg_per_L_as_Cl2?: number | undefined
  /** All chloride as NaCl. */
  readonly salt_mg_per_L_as_NaCl?: number | undefined
  readonly temperature_C?: number | undefined
}

/** Every reading present. */
export type FullReading = { readonly [key in keyof WaterReading]-?: number }

/** Free concentrations [mol/kg of water]. */
export interface Species {
  readonly h: number
  readonly oh: number
  readonly co2: number
  readonly hco3: number
  readonly co3: number
  readonly ca: number
  readonly mg: number
  readonly na: number
  readonly k: number
  readonly li: number
  readonly cl: number
  readonly so4: number
  readonly hso4: number
  readonly caHco3: number
  readonly caCo3: number
  readonly caSo4: number
  readonly caOh: number
  readonly mgHco3: number
  readonly mgCo3: number
  readonly mgSo4: number
  readonly mgOh: number
  readonly naHco3: number
  readonly naSo4: number
  readonly kSo4: number
  /** Boric acid. */
  readonly boh3: number
  /** Borate. */
  readonly boh4: number
  readonly hocl: number
  readonly ocl: number
  /** Cyanuric acid and its ions. */
  readonly h3cy: number
  readonly h2cy: number
  readonly hcy2: number
  readonly cy3: number
  /** One, two and three chlorines on the ring. */
  readonly h2clcy: number
  readonly hclcy: number
  readonly clcy2: number
  readonly hcl2cy: number
  readonly cl2cy: number
  readonly cl3cy: number
}

/** What each part contributes to alkalinity [mg/L as CaCO3]; the parts sum to `total`. */
export interface AlkalinityParts {
  readonly carbonate: number
  readonly borate: number
  /** Free cyanurate ions. */
  readonly cyanurate: number
  /** Ions of chlorinated cyanurates. */
  readonly chlorinatedCyanurate: number
  readonly hypochlorite: number
  /** OH⁻ with its calcium and magnesium pairs, less H⁺ and HSO4⁻. */
  readonly hydroxide: number
  readonly total: number
}

/** log10 of activity coefficients. */
export interface LogGammas {
  readonly hco3: number
  readonly co3: number
  readonly ca: number
  readonly h: number
  /** Ions of charge ±1 without data of their own. */
  readonly monovalent: number
  /** Neutral species without data of their own. */
  readonly neutral: number
}

/** A water solved. */
export interface Equilibrium {
  /** −log10 of the activity of H⁺, at the water's temperature. */
  readonly pH: number
  readonly temperatureC: number
  readonly species: Species
  /** [mol/kg] */
  readonly ionicStrength: number
  /** HOCl [mg/L as Cl2]: the active chlorine. */
  readonly activeChlorineMgPerL: number
  /** OCl⁻ [mg/L as Cl2]. */
  readonly hypochloriteMgPerL: number
  /** Chlorine held on cyanurate [mg/L as Cl2]. */
  readonly boundChlorineMgPerL: number
  /** log10(ion activity product / solubility product) of calcite; −Infinity without calcium or carbonate. */
  readonly calciteSI: number
  /** log10 of the CO2 pressure the water would be in balance with [atm]; −Infinity without carbonate. */
  readonly log10PCO2Atm: number
  /** log10 of dissolved CO2 per pressure of CO2 in this water [mol/kg atm]. */
  readonly log10HenryMolPerKgAtm: number
  /** dA/dpH of the closed water at constant ionic strength [mol eq per kg and pH]. */
  readonly bufferCapacity: number
  readonly alkalinity: AlkalinityParts
  /** Dissolved CO2 [mg/L]. */
  readonly co2MgPerL: number
  /** At the water's temperature [µS/cm]. */
  readonly conductanceMicroSPerCm: number
  readonly logGammas: LogGammas
  /** Largest relative imbalance of any conserved total in the solution. */
  readonly residual: number
  readonly iterations: number
}

/** log10 K of a reaction: T in K. `analytic` = A1 + A2 T + A3/T + A4 log10 T + A5/T² + A6 T²; `vantHoff` from 25 °C. */
export type LogK =
  | { readonly kind: 'analytic'; readonly a: readonly number[] }
  | { readonly kind: 'vantHoff'; readonly logK25: number; readonly deltaHKJPerMol: number }

export type ReactionId =
  | 'water'
  | 'bicarbonate'
  | 'carbonicAcid'
  | 'carbonDioxideGas'
  | 'calcite'
  | 'caCo3'
  | 'caHco3'
  | 'caSo4'
  | 'caOh'
  | 'mgCo3'
  | 'mgHco3'
  | 'mgSo4'
  | 'mgOh'
  | 'naSo4'
  | 'naHco3'
  | 'kSo4'
  | 'hso4'
  | 'boricAcid'
  | 'hypochlorousAcid'
  | 'k6'
  | 'k10'
  | 'k12'
  | 'k9a'
  | 'k7a'
  | 'k4'
  | 'k8'
  | 'k2'
  | 'k1a'

/** One equilibrium constant with where it comes from. */
export interface Reaction {
  readonly id: ReactionId
  /** As written, e.g. `B(OH)3 + H2O = B(OH)4- + H+`. */
  readonly equation: string
  readonly logK: LogK
  readonly source: string
}

/** A named set of equilibrium constants. */
export interface Constants {
  readonly id: string
  readonly name: string
  readonly reactions: { readonly [id in ReactionId]: Reaction }
}
