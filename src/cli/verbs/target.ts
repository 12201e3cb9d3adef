import { fail, ok } from '../../base/index.ts'
import { targetDoses } from '../../plan/index.ts'
import { doseColumns } from '../../water/index.ts'
import { asNumber, asObject, type Verb } from '../verb.ts'
import { readWater } from '../water-input.ts'

export const target: Verb = {
  id: 'target',
  summary:
    '{"start": WATER, "target": {pH, ta…, ch…, cya…, borate…, fc…}, "products": [ids]} → {"doses", "after_closed"}',
  run: (input, options) => {
    const line = asObject(input, '')
    if (!line.ok) return line
    const start = readWater(line.value['start'], 'start')
    if (!start.ok) return start
    const asked = asObject(line.value['target'], 'target')
    if (!asked.ok) return asked
    const wanted: Record<string, number> = {}
    for (const [key, value] of Object.entries(asked.value)) {
      const number = asNumber(value, `target.${key}`)
      if (!number.ok) return number
      wanted[key] = number.value
    }
    const products = line.value['products']
    if (!Array.isArray(products) || !products.every((id) => typeof id === 'string')) {
      return fail({
        code: 'no-products',
        path: 'products',
        what: 'The products must be a list of product ids.',
        why: 'The target is reached with these and no others.',
        hint: 'Give e.g. ["sodium bicarbonate 100 %", "muriatic acid 31.45 % w/w HCl"].',
      })
    }
    const solved = targetDoses(start.value, wanted, products, options.constants)
    if (!solved.ok) return solved
    const { doses, after } = solved.value
    return ok({ doses, after_closed: doseColumns(after.totals, after.equilibrium) })
  },
}
