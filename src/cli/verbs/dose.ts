import { fail, ok, type Problem, type Result, under } from '../../base/index.ts'
import { doseDelta, type ProductList } from '../../chemicals/index.ts'
import { addTotals, doseColumns, equilibrateOpen, openColumns, type Totals } from '../../water/index.ts'
import { productsOfLine } from '../own-input.ts'
import { asNumber, asObject, type Verb } from '../verb.ts'
import { solveTotals, solveWater, waterNotices } from '../water-input.ts'

const OPEN_LOG10_PCO2 = -3.38

export const dose: Verb = {
  id: 'dose',
  summary:
    '{"start": WATER, "add": [{"product", "gPerM3" or "mLPerM3"}, …]} → {"after_closed", "after_open_log10_pCO2_minus3p38"}',
  run: (input, options) => {
    const line = asObject(input, '')
    if (!line.ok) return line
    const start = solveWater(line.value['start'], 'start', options)
    if (!start.ok) return start
    const products = productsOfLine(line.value, options.nowMs)
    if (!products.ok) return products
    const dosed = applyAdditions(start.value.totals, additionsOf(line.value), products.value)
    if (!dosed.ok) return dosed
    // the start was solved, so what can't be solved now comes from what was added
    const path = line.value['add'] === undefined ? 'product' : 'add'
    const closed = solveTotals(dosed.value, options)
    if (!closed.ok) return fail({ ...closed.problem, path })
    const open = equilibrateOpen(dosed.value, OPEN_LOG10_PCO2, options.constants)
    if (!open.ok) return fail({ ...open.problem, path })
    return ok({
      after_closed: doseColumns(closed.value.totals, closed.value.equilibrium),
      after_open_log10_pCO2_minus3p38: openColumns(open.value.totals, open.value.equilibrium),
      ...waterNotices(line.value['start'], 'start'),
    })
  },
}

/** Either a list under `add`, or one product with its amount beside `start`, as in a row of a dose table. */
function additionsOf(line: Readonly<Record<string, unknown>>): readonly (readonly [path: string, item: unknown])[] {
  const { add } = line
  if (Array.isArray(add)) return add.map((item, i) => [`add[${i}]`, item] as const)
  if (add !== undefined) return [['add', add]]
  return [['', { product: line['product'], gPerM3: line['amount_g_per_m3'], mLPerM3: line['amount_mL_per_m3'] }]]
}

function applyAdditions(
  start: Totals,
  additions: readonly (readonly [string, unknown])[],
  products: ProductList,
): Result<Totals, Problem> {
  let totals = start
  for (const [path, item] of additions) {
    const addition = asObject(item, path)
    if (!addition.ok) return addition
    const { product, gPerM3, mLPerM3 } = addition.value
    const at = (key: string) => (path === '' ? key : `${path}.${key}`)
    if (typeof product !== 'string') {
      return fail({
        code: 'no-product',
        path: at('product'),
        what: 'A dose must name its product.',
        why: 'What it does to the water depends on it.',
        hint: 'Give a product id as a string.',
      })
    }
    const byVolume = gPerM3 === undefined || gPerM3 === null
    const hasVolume = mLPerM3 !== undefined && mLPerM3 !== null
    if (byVolume && !hasVolume) {
      return fail({
        code: 'no-amount',
        path: at('gPerM3'),
        what: 'A dose must say how much goes in.',
        why: 'What it does to the water depends on it.',
        hint: 'Give gPerM3, or mLPerM3 for a liquid.',
      })
    }
    if (!byVolume && hasVolume) {
      return fail({
        code: 'two-amounts',
        path: at('mLPerM3'),
        what: 'The dose has both a weight and a volume.',
        why: 'They may differ, and only one can be meant.',
        hint: 'Give either gPerM3 or mLPerM3.',
      })
    }
    const amount = asNumber(byVolume ? mLPerM3 : gPerM3, at(byVolume ? 'mLPerM3' : 'gPerM3'))
    if (!amount.ok) return amount
    const delta = doseDelta(product, byVolume ? { mLPerM3: amount.value } : { gPerM3: amount.value }, products)
    if (!delta.ok) return fail(path === '' ? delta.problem : under(path, delta.problem))
    totals = addTotals(totals, delta.value)
  }
  return ok(totals)
}
