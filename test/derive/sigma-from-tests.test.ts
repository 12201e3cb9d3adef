import { describe, expect, test } from 'vitest'
import { sigmaFromTests } from '../../src/derive/index.ts'
import { CONSTANT_SETS, type Equilibrium, methodSigma } from '../../src/water/index.ts'

const values = {
  pH: 7.5,
  ta_mg_per_L_as_CaCO3: 90,
  ch_mg_per_L_as_CaCO3: 250,
  cya_mg_per_L: 0,
  fc_mg_per_L_as_Cl2: 2,
  salt_mg_per_L_as_NaCl: 900,
  temperature_C: 25,
}
const si = (water: Equilibrium) => water.calciteSI
const sigma = (method: 'drop-kit' | 'strip' | 'sensor', f: (water: Equilibrium) => number) =>
  sigmaFromTests(values, method, CONSTANT_SETS.default, f) ?? Number.NaN

describe('how sure a reckoned figure is', () => {
  test('calcite SI is at least as unsure as the pH it hangs on, which moves it one for one', () => {
    const ofPH = methodSigma('drop-kit', 'pH', 7.5)?.sigma ?? Number.NaN
    expect(sigma('drop-kit', si)).toBeGreaterThan(0.95 * ofPH)
    expect(sigma('drop-kit', si)).toBeLessThan(1.3 * ofPH)
  })

  test('coarser tests leave it less sure', () => {
    expect(sigma('strip', si)).toBeGreaterThan(1.5 * sigma('drop-kit', si))
  })

  test('without stabiliser active chlorine follows free chlorine and the share that pH sets', () => {
    const free = methodSigma('drop-kit', 'fc_mg_per_L_as_Cl2', 2)?.sigma ?? Number.NaN
    const found = sigma('drop-kit', (water) => water.activeChlorineMgPerL)
    // the share of HOCl is near a half, and its slope by pH is ln 10 × share × (1 − share)
    expect(found).toBeGreaterThan(0.4 * free)
    expect(found).toBeLessThan(0.5 * free + 2 * Math.LN10 * 0.25 * 0.15 + 0.05)
  })

  test('nothing can be said of too few readings', () => {
    expect(sigmaFromTests({ pH: 7.5 }, 'strip', CONSTANT_SETS.default, si)).toBeUndefined()
  })
})
