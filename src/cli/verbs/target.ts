import { fail, ok, type Problem, type Result } from '../../base/index.ts'
import { TARGET_KEYS, type TargetObjective, targetDoses } from '../../plan/index.ts'
import { doseColumns } from '../../water/index.ts'
import { productsOfLine } from '../own-input.ts'
import { asNumber, asObject, type Verb } from '../verb.ts'
import { readWater, waterNotices } from '../water-input.ts'

export const target: Verb = {
  id: 'target',
  summary:
    '{"start": WATER, "target": {pH, ta…, ch…, cya…, borate…, fc…}, "products": [ids], "objective"?: "fewest-products" or "least-salt" or {"kind": "cheapest", "perGram": {id: price}}} → {"doses", "after_closed"}, with "moves" where free chlorine, stabiliser, borate or calcium has no target and can’t be left alone',
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
    const list = productsOfLine(line.value, options.nowMs)
    if (!list.ok) return list
    const objective = objectiveOf(line.value['objective'])
    if (!objective.ok) return objective
    const solved = targetDoses(start.value, wanted, products, options.constants, {
      products: list.value,
      objective: objective.value,
    })
    // the start was solved, so what has no place of its own comes from the target
    if (!solved.ok) return solved.problem.path === '' ? fail({ ...solved.problem, path: 'target' }) : solved
    const { doses, after, moves } = solved.value
    const after_closed = doseColumns(after.totals, after.equilibrium)
    return ok({ doses, after_closed, ...(moves ? { moves } : {}), ...waterNotices(line.value['start'], 'start') })
  },
}

/** What to choose by where several sets of the products reach the target. */
function objectiveOf(value: unknown): Result<TargetObjective | undefined> {
  if (value === undefined || value === null) return ok(undefined)
  if (value === 'fewest-products' || value === 'least-salt') return ok({ kind: value })
  const given = asObject(value, 'objective')
  if (!given.ok || given.value['kind'] !== 'cheapest') return fail(UNKNOWN_OBJECTIVE)
  const prices = asObject(given.value['perGram'], 'objective.perGram')
  if (!prices.ok) return prices
  const perGram: Record<string, number> = {}
  for (const [id, price] of Object.entries(prices.value)) {
    const number = asNumber(price, `objective.perGram.${id}`)
    if (!number.ok) return number
    if (number.value < 0) return fail({ ...NEGATIVE_PRICE, path: `objective.perGram.${id}` })
    perGram[id] = number.value
  }
  return ok({ kind: 'cheapest', perGram })
}

const UNKNOWN_OBJECTIVE: Problem = {
  code: 'unknown-objective',
  path: 'objective',
  what: 'The objective is none that is known.',
  why: 'It decides which of several sets of doses is taken.',
  hint: 'Give "fewest-products", "least-salt" or {"kind": "cheapest", "perGram": {id: price}}.',
}

const NEGATIVE_PRICE: Omit<Problem, 'path'> = {
  code: 'price',
  what: 'A price has to be a number, zero or more.',
  why: 'Costs are added up from it.',
  hint: 'Give what one gram costs.',
}
