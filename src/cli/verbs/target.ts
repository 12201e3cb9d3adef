import { fail, ok } from '../../base/index.ts'
import { TARGET_KEYS, targetDoses } from '../../plan/index.ts'
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
    const wanted: Partial<Record<(typeof TARGET_KEYS)[number], number>> = {}
    for (const [name, value] of Object.entries(asked.value)) {
      const key = TARGET_KEYS.find((known) => known === name)
      if (!key) {
        return fail({
          code: 'unknown-target',
          path: `target.${name}`,
          what: `“${name}” is no reading that can be aimed at.`,
          why: 'A target that is not understood would silently not be met.',
          hint: `Use one of ${TARGET_KEYS.join(', ')}.`,
        })
      }
      const number = asNumber(value, `target.${name}`)
      if (!number.ok) return number
      wanted[key] = number.value
    }
    if (Object.keys(wanted).length === 0) {
      return fail({
        code: 'no-target',
        path: 'target',
        what: 'The target names no reading.',
        why: 'Nothing would be dosed for it.',
        hint: `Give at least one of ${TARGET_KEYS.join(', ')}.`,
      })
    }
    const products = line.value['products']
    if (!Array.isArray(products) || products.length === 0 || !products.every((id) => typeof id === 'string')) {
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
