import type { LogK, Reaction, ReactionId } from './types.ts'

const T25_K = 298.15
const KJ_PER_KCAL = 4.184

const analytic = (...a: number[]): LogK => ({ kind: 'analytic', a })
const constant = (logK25: number): LogK => ({ kind: 'vantHoff', logK25, deltaHKJPerMol: 0 })
const vantHoff = (logK25: number, deltaHKJPerMol: number): LogK => ({ kind: 'vantHoff', logK25, deltaHKJPerMol })
/** pK = slope / T + intercept. */
const pKLine = (slope: number, intercept: number): LogK => analytic(-intercept, 0, -slope)
/** The slope of one source through another's value at 25 °C. */
const pKSlopeThrough = (pK25: number, slope: number): LogK => pKLine(slope, pK25 - slope / T25_K)

const DATABASE = 'phreeqc.dat of USGS PHREEQC 3.6.3 (value seen)'
const OBRIEN = "O'Brien, Morris & Butler 1974, in Rubin (ed.), Chemistry of Water Supply, pp. 333-358 (from memory)"
const WAHMAN_2018 = 'Wahman 2018, Environ. Sci.: Water Res. Technol. 4:1522, abstract'
const WAHMAN_ALEXANDER_2019 = 'Wahman & Alexander 2019, Environ. Eng. Sci. 36:283, abstract'

const row = (id: ReactionId, equation: string, logK: LogK, source: string): Reaction => ({ id, equation, logK, source })

/** Zero ionic strength; ions as written, activities of H+. One row is one equilibrium. */
export const ORACLE_REACTIONS: readonly Reaction[] = [
  row('water', 'H2O = H+ + OH-', analytic(293.29227, 0.1360833, -10576.913, -123.73158, 0, -6.996455e-5), DATABASE),
  row(
    'bicarbonate',
    'CO3-2 + H+ = HCO3-',
    analytic(107.8871, 0.03252849, -5151.79, -38.92561, 563713.9),
    `Plummer & Busenberg 1982, Geochim. Cosmochim. Acta 46:1011, as in ${DATABASE}`,
  ),
  row(
    'carbonicAcid',
    'CO3-2 + 2 H+ = CO2 + H2O',
    analytic(464.1965, 0.09344813, -26986.16, -165.75951, 2248628.9),
    `Plummer & Busenberg 1982, as in ${DATABASE}`,
  ),
  row('carbonDioxideGas', 'CO2(g) = CO2', analytic(10.5624, -0.023547, -3972.8, 0, 5.8746e5, 1.9194e-5), DATABASE),
  row('calcite', 'CaCO3(s) = Ca+2 + CO3-2', analytic(17.118, -0.046528, -3496), DATABASE),
  row('caCo3', 'Ca+2 + CO3-2 = CaCO3', analytic(-1228.732, -0.29944, 35512.75, 485.818), DATABASE),
  row('caHco3', 'Ca+2 + CO3-2 + H+ = CaHCO3+', analytic(-6.009, 0.03377, 2044), DATABASE),
  row('caSo4', 'Ca+2 + SO4-2 = CaSO4', analytic(1.478, 0.00829, -538.2), DATABASE),
  row('caOh', 'Ca+2 + H2O = CaOH+ + H+', constant(-12.78), DATABASE),
  row('mgCo3', 'Mg+2 + CO3-2 = MgCO3', analytic(0.991, 0.00667), DATABASE),
  row('mgHco3', 'Mg+2 + CO3-2 + H+ = MgHCO3+', analytic(48.6721, 0.03252849, -2614.335, -18.00263, 563713.9), DATABASE),
  row('mgSo4', 'Mg+2 + SO4-2 = MgSO4', analytic(0, 0.00964, -136), DATABASE),
  row('mgOh', 'Mg+2 + H2O = MgOH+ + H+', vantHoff(-11.44, 15.952 * KJ_PER_KCAL), DATABASE),
  row('naSo4', 'Na+ + SO4-2 = NaSO4-', analytic(-0.304, 0.00451, -28.9), DATABASE),
  row('naHco3', 'Na+ + HCO3- = NaHCO3', vantHoff(-0.06, 21), DATABASE),
  row('kSo4', 'K+ + SO4-2 = KSO4-', analytic(-3.0246, 0.009986, 0, 0, 1.093e5), DATABASE),
  row('hso4', 'H+ + SO4-2 = HSO4-', analytic(-56.889, 0.006473, 2307.9, 19.8858), DATABASE),
  row('boricAcid', 'H3BO3 = H2BO3- + H+', vantHoff(-9.24, 3.224 * KJ_PER_KCAL), DATABASE),
  row(
    'hypochlorousAcid',
    'HOCl = H+ + OCl-',
    analytic(10.0686, -0.0253, -3000),
    'Morris 1966, J. Phys. Chem. 70:3798 (from memory)',
  ),
  row(
    'k6',
    'H3Cy = H+ + H2Cy-',
    pKSlopeThrough(6.88, 1743),
    `6.88 at 25 C: ${OBRIEN}, also the Merck Index (seen); slope: ${WAHMAN_2018}`,
  ),
  row('k10', 'H2Cy- = H+ + HCy-2', constant(-11.4), `${OBRIEN}; also the Merck Index (seen)`),
  row('k12', 'HCy-2 = H+ + Cy-3', constant(-13.5), `${OBRIEN}; also the Merck Index (seen)`),
  row(
    'k9a',
    'HClCy- + H2O = H2Cy- + HOCl',
    pKSlopeThrough(5.62, 2229),
    `5.62 at 25 C: ${OBRIEN}; slope: ${WAHMAN_ALEXANDER_2019}`,
  ),
  row(
    'k7a',
    'Cl2Cy- + H2O = HClCy- + HOCl',
    pKSlopeThrough(4.51, 2028),
    `4.51 at 25 C: ${OBRIEN}; slope: ${WAHMAN_ALEXANDER_2019}`,
  ),
  row('k4', 'H2ClCy = H+ + HClCy-', constant(-5.33), OBRIEN),
  row('k8', 'HClCy- = H+ + ClCy-2', constant(-10.12), OBRIEN),
  row('k2', 'HCl2Cy = H+ + Cl2Cy-', constant(-3.75), OBRIEN),
  row('k1a', 'Cl3Cy + H2O = HCl2Cy + HOCl', constant(-1.8), OBRIEN),
]

/** pK = 2237.94/T + 0.016883 T − 3.305, from cells with borax buffers at 0–60 °C. */
export const MANOV_BORIC_ACID: Reaction = row(
  'boricAcid',
  'H3BO3 = H2BO3- + H+',
  analytic(3.305, -0.016883, -2237.94),
  'Manov, DeLollis & Acree 1944, J. Res. NBS 33:287, abstract',
)

/** The newer values with their own intercepts; HOCl is 1.36 to 1.58 times lower with stabiliser present. */
export const WAHMAN_REACTIONS: readonly Reaction[] = [
  row('k6', 'H3Cy = H+ + H2Cy-', pKLine(1743, 1.12), WAHMAN_2018),
  row('k9a', 'HClCy- + H2O = H2Cy- + HOCl', pKLine(2229, -1.65), WAHMAN_ALEXANDER_2019),
  row('k7a', 'Cl2Cy- + H2O = HClCy- + HOCl', pKLine(2028, -2.15), WAHMAN_ALEXANDER_2019),
]
