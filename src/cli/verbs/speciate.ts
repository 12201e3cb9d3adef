import { speciationColumns } from '../../water/index.ts'
import { asObject, type Verb } from '../verb.ts'
import { solveWater } from '../water-input.ts'

export const speciate: Verb = {
  id: 'speciate',
  summary: '{"input": WATER} → {"output": species, alkalinity parts, calcite SI, …}',
  run: (input, options) => {
    const line = asObject(input, '')
    if (!line.ok) return line
    const water = solveWater(line.value['input'], 'input', options)
    if (!water.ok) return water
    const output = speciationColumns(water.value.totals, water.value.equilibrium, options.constants)
    return output.ok ? { ok: true, value: { output: output.value } } : output
  },
}
