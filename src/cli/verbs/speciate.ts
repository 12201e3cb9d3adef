import { fail, ok, under } from '../../base/index.ts'
import { speciationColumns, totalsOf } from '../../water/index.ts'
import { PEOPLE_KEYS, peopleWater } from '../people-input.ts'
import { unknownMethod } from '../unknown-keys.ts'
import { asObject, type Verb } from '../verb.ts'
import { readWater, solveTotals, waterNotices } from '../water-input.ts'

export const speciate: Verb = {
  id: 'speciate',
  summary:
    '{"input": WATER, "method"?: METHOD} → {"output": species, alkalinity parts, calcite SI, …}; with readings of PEOPLE also {"told", "combined"}',
  run: (input, options) => {
    const line = asObject(input, '')
    if (!line.ok) return line
    const { input: given, method } = line.value
    const reading = readWater(given, 'input')
    if (!reading.ok) return reading
    const people = peopleWater(given, reading.value, method, 'input', options.constants)
    if (!people.ok) return people
    const totals = totalsOf(people.value?.reading ?? reading.value, options.constants)
    if (!totals.ok) return fail(under('input', totals.problem))
    const water = solveTotals(totals.value, options)
    if (!water.ok) return water
    const output = speciationColumns(totals.value, water.value.equilibrium, options.constants)
    if (!output.ok) return output
    const { notices: ofWater = [] } = waterNotices(given, 'input', PEOPLE_KEYS)
    const said = [...unknownMethod(method), ...ofWater]
    const notices = said.length > 0 ? { notices: said } : {}
    if (!people.value) return ok({ output: output.value, ...notices })
    const { told, combined } = people.value
    return ok({ output: output.value, told, ...(combined ? { combined } : {}), ...notices })
  },
}
