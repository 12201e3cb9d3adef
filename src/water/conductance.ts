import { debyeHuckel, permittivity } from './debye.ts'
import type { Species } from './types.ts'

interface Mobility {
  readonly species: keyof Species
  readonly charge: number
  /** Diffusion coefficient in water at 25 °C [1e-9 m²/s]. */
  readonly diffusion: number
  /** Counter-ions with which it forms a pair that the equilibria count, each with its charge. */
  readonly partners: readonly Partner[]
}

interface Partner {
  readonly species: keyof Species
  readonly charge: number
}

const ion = (
  species: keyof Species,
  charge: number,
  diffusion: number,
  partners: readonly Partner[] = [],
): Mobility => ({ species, charge, diffusion, partners })

const CA: Partner = { species: 'ca', charge: 2 }
const MG: Partner = { species: 'mg', charge: 2 }
const NA: Partner = { species: 'na', charge: 1 }
const K: Partner = { species: 'k', charge: 1 }
const HCO3: Partner = { species: 'hco3', charge: 1 }
const CO3: Partner = { species: 'co3', charge: 2 }
const SO4: Partner = { species: 'so4', charge: 2 }

/**
 * Tracer diffusion coefficients: Li & Gregory 1974, CRC Handbook (from memory). Pairs, borate, hypochlorite and
 * cyanurates are estimates by size; together they carry under 5 % of a pool's conductance.
 */
const MOBILITIES: readonly Mobility[] = [
  ion('h', 1, 9.31),
  ion('oh', 1, 5.27),
  ion('hco3', 1, 1.18, [CA, MG, NA]),
  ion('co3', 2, 0.955, [CA, MG]),
  ion('ca', 2, 0.793, [HCO3, CO3, SO4]),
  ion('mg', 2, 0.705, [HCO3, CO3, SO4]),
  ion('na', 1, 1.33, [HCO3, SO4]),
  ion('k', 1, 1.96, [SO4]),
  ion('li', 1, 1.03),
  ion('cl', 1, 2.03),
  ion('so4', 2, 1.07, [CA, MG, NA, K]),
  ion('hso4', 1, 1.33),
  ion('caHco3', 1, 0.51),
  ion('caOh', 1, 0.6),
  ion('mgHco3', 1, 0.48),
  ion('mgOh', 1, 0.6),
  ion('naSo4', 1, 0.62),
  ion('kSo4', 1, 0.75),
  ion('boh4', 1, 0.97),
  ion('ocl', 1, 1.38),
  ion('h2cy', 1, 0.93),
  ion('hcy2', 2, 0.9),
  ion('cy3', 3, 0.8),
  ion('hclcy', 1, 0.85),
  ion('clcy2', 2, 0.8),
  ion('cl2cy', 1, 0.8),
]

/**
 * Dynamic viscosity of pure water [mPa s].
 * Equation: log10(η/1.002) = (20 − t)/(t + 96) × (1.2364 − 1.37e-3 (20 − t) + 5.7e-6 (20 − t)²).
 * Symbols: t [°C].
 * Valid for: 0 to 100 °C.
 * Source: Kestin, Sokolov & Wakeham 1978, J. Phys. Chem. Ref. Data 7:941 (from memory).
 * Accuracy: 0.2 %; 0.890 at 25 °C.
 */
export function waterViscosityMPaS(temperatureC: number): number {
  const d = 20 - temperatureC
  return 1.002 * 10 ** ((d / (temperatureC + 96)) * (1.2364 - 1.37e-3 * d + 5.7e-6 * d * d))
}

const FARADAY_C_PER_MOL = 96485.33212
const GAS_CONSTANT_J_PER_MOL_K = 8.314462618
const T25_K = 298.15
const VISCOSITY_25 = waterViscosityMPaS(25)
/** Mobility against fluidity between 0 and 45 °C: 0.89 for chloride, 0.92 for sodium and calcium. */
const WALDEN_EXPONENT = 0.9
/** Closest approach of ions that form no counted pair [Å]. */
const CONTACT = 4
/** Bjerrum's distance of two single charges, times permittivity and temperature [Å K]; 3.58 Å in water at 25 °C. */
const BJERRUM = 83550

/**
 * Specific conductance at the water's own temperature [µS/cm].
 * Equation: Σ |z| m (λ − (e |z| + r |z| λ) √I / (1 + B a √I)), λ = |z| F² D25 / (R T25) × (η25/η)^0.9,
 *   e = 41.25 / (η √(ε T)), r = 8.204e5 / (ε T)^1.5; a = 4 Å, or Bjerrum's distance |z z'| 83550 / (ε T) if that is more,
 *   towards counter-ions with which a pair is counted: those nearer than it are already the pair. The mean over all
 *   counter-ions by charge.
 * Symbols: λ equivalent conductance of an ion [S cm²/eq]; m molality; I ionic strength; η viscosity (in e: poise);
 *   ε permittivity; D25 diffusion coefficient at 25 °C; a closest approach [Å]; z' charge of the counter-ion.
 * Valid for: I up to 0.1, 0 to 45 °C.
 * Source: Debye–Hückel–Onsager with a size term, and λ at several temperatures for the exponent 0.9: Robinson & Stokes,
 *   Electrolyte Solutions, ch. 7 and appendix 6; Bjerrum's distance beside pairs: J.-C. Justice's convention (all from
 *   memory). In the relaxation term r each ion is taken against a counter-ion of charge one.
 * Accuracy: 3 % against the golden tables; 1.7 % against measured single salts up to 0.01 eq/L (test).
 */
export function conductanceMicroSPerCm(species: Species, ionicStrength: number, temperatureC: number): number {
  const viscosity = waterViscosityMPaS(temperatureC)
  const epsilonT = permittivity(temperatureC) * (temperatureC + 273.15)
  const root = Math.sqrt(ionicStrength)
  const perSize = debyeHuckel(temperatureC).b * root
  const bjerrum = BJERRUM / epsilonT
  const drag = 41.25 / ((viscosity / 100) * Math.sqrt(epsilonT))
  const relaxation = 8.204e5 / epsilonT ** 1.5
  // m²/s to cm²/s is 1e4, so S m²/mol becomes S cm²/mol
  const perDiffusion =
    ((FARADAY_C_PER_MOL * FARADAY_C_PER_MOL * 1e-9) / (GAS_CONSTANT_J_PER_MOL_K * T25_K)) *
    1e4 *
    (VISCOSITY_25 / viscosity) ** WALDEN_EXPONENT
  let charges = 0
  for (const ion of MOBILITIES) charges += ion.charge * species[ion.species]
  let sum = 0
  for (const ion of MOBILITIES) {
    const equivalents = ion.charge * species[ion.species]
    if (equivalents === 0) continue
    const free = ion.charge * ion.diffusion * perDiffusion
    let size = CONTACT
    for (const partner of ion.partners) {
      const further = ion.charge * partner.charge * bjerrum - CONTACT
      // counter-ions carry half of all charges
      if (further > 0) size += ((2 * partner.charge * species[partner.species]) / charges) * further
    }
    const left = free - (ion.charge * (drag + relaxation * free) * root) / (1 + perSize * size)
    if (left > 0) sum += equivalents * left
  }
  // mol/L × S cm²/mol = 1e-3 S/cm
  return sum * 1000
}
