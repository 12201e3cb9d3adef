import { fail, ok, type Result } from '../base/index.ts'
import { strengthAfter } from './ageing.ts'
import { unlike } from './label-problems.ts'
import { activePercentOf, labelStrength, type StrengthBasis } from './own-strength.ts'
import { badPackage, noStrength } from './problems.ts'
import { PRODUCTS } from './products.ts'
import { LIKE_IDS } from './substances.ts'
import type { Active, Ageing, Package, Part, Product, Sourced } from './types.ts'

/** What an owner copies from a label. */
export interface OwnProduct {
  readonly id: string
  readonly label: string
  /** Id of the generic product whose substance it is. */
  readonly like: string
  readonly strength: number
  readonly basis: StrengthBasis
  /** Where the label or safety data sheet gives it; else from its strength, or the generic one's. */
  readonly densityKgPerL?: number | undefined
  readonly packages?: readonly OwnPackage[] | undefined
  /** Days since liquid chlorine was bought, reckoned by the caller: there is no clock here. */
  readonly ageDays?: number | undefined
  /** 20 where it is not known. */
  readonly storedC?: number | undefined
}

export interface OwnPackage {
  readonly label: string
  readonly massG: number
  readonly price?: number | undefined
}

const USUAL_SHED_C = 20
/** How `strengthAfter` calls what an own product calls otherwise. */
const AGEING_PATHS: Readonly<Record<string, string>> = { percent: 'strength', days: 'ageDays' }
const UNIT: { readonly [B in StrengthBasis]: string } = {
  'percent-by-mass': '%',
  'trade-percent': 'trade %',
  'available-chlorine': '% available chlorine',
}

/** A product from a label: the generic one's composition, cautions and handling, at the label's strength. */
export function ownProduct(own: OwnProduct): Result<Product> {
  const like = PRODUCTS.get(own.like)
  if (!like) return fail(unlike(own.like, LIKE_IDS))
  if (!like.active) return fail(noStrength(like.label))
  const strength = labelStrength(like, like.active, own.basis, own.strength, own.densityKgPerL)
  if (!strength.ok) return strength
  const { activePercent, densityGPerML, densityFrom, isRoundedUp } = strength.value
  const bad = (own.packages ?? []).findIndex(({ massG, price }) => !(massG > 0) || !((price ?? 0) >= 0))
  if (bad >= 0) return fail(badPackage(bad))

  const fresh = scaled(like, like.active, activePercent, densityGPerML)
  const freshChlorine = like.availableChlorine * (activePercent / activePercentOf(like, like.active))
  const ageing = ageingOf(own, like, freshChlorine * 100 * densityGPerML)
  if (!ageing.ok) return ageing
  const left = ageing.value ? ageing.value.percent / ageing.value.labelPercent : 1

  const sources: Sourced[] = [
    { what: `${own.strength} ${UNIT[own.basis]}`, source: 'the label, as the owner copied it', status: 'the label' },
    densitySource(densityFrom, densityGPerML, like),
    ...(isRoundedUp ? [ROUNDED_UP] : []),
    ...(ageing.value ? [AGED] : []),
    ...(like.contains.length > 1 ? [COMPANIONS] : []),
  ]
  const product: Product = {
    ...like,
    id: own.id,
    label: own.label,
    likeId: like.id,
    strength: strengthText(own, like.active, undefined),
    densityGPerML,
    isDensityRough: like.isDensityRough,
    // a density that the owner weighed says nothing about how another scoop packs, but the generic spread no longer fits
    bulkGPerML: densityFrom === 'label' ? undefined : like.bulkGPerML,
    contains: fresh,
    availableChlorine: freshChlorine,
    packages: packagesOf(own, like, densityGPerML),
    sources,
    aliases: [],
  }
  if (!ageing.value) return ok(product)
  return ok({
    ...product,
    strength: strengthText(own, like.active, ageing.value),
    contains: aged(fresh, left),
    availableChlorine: freshChlorine * left,
    ageing: ageing.value,
    fresh: product,
  })
}

const ROUNDED_UP: Sourced = {
  what: 'the label rounds up; counted as the pure substance',
  source: 'molar masses',
  status: 'derived',
}
const AGED: Sourced = {
  what: 'strength left after its days in the shed; the chlorate that forms counts as salt',
  source: 'Adam & Gordon 1999, Inorg. Chem. 38, 1299 (abstract)',
  status: 'seen',
}
const COMPANIONS: Sourced = {
  what: 'what comes along with the substance, in the proportions of the generic product',
  source: 'from memory',
  status: 'from memory',
}

function densitySource(from: 'label' | 'table' | 'generic', density: number, like: Product): Sourced {
  const what = `density ${Number(density.toPrecision(4))} kg/L`
  if (from === 'label') return { what, source: 'the label, as the owner copied it', status: 'the label' }
  if (from === 'generic') return { what: `${what}, as of ${like.label}`, source: 'from memory', status: 'from memory' }
  return like.groups.includes('acid')
    ? { what, source: 'hydrochloric acid density table at 20 °C (handbook copy)', status: 'seen' }
    : { what, source: 'from memory', status: 'from memory' }
}

/** The generic product's parts at another strength: liquids keep their lye per litre, solids fill up in proportion. */
function scaled(like: Product, active: Active, activePercent: number, densityGPerML: number): readonly Part[] {
  const usual = activePercentOf(like, active)
  const first = like.contains[0]
  const rest =
    like.form === 'liquid'
      ? like.densityGPerML / densityGPerML
      : usual < 100
        ? (100 - activePercent) / (100 - usual)
        : 1
  return like.contains.map((part) => {
    // parts stated by the same mass of the same substance are one substance
    const isActive = part.gPerMol === first?.gPerMol && part.gPer100g === first.gPer100g
    return { ...part, gPer100g: part.gPer100g * (isActive ? activePercent / usual : rest) }
  })
}

/** Hypochlorite that was lost turns into salt: two thirds truly, the chlorate counted by its charge. */
function aged(parts: readonly Part[], left: number): readonly Part[] {
  const lost = parts.flatMap((part) =>
    part.formula === 'NaXcO' ? [{ ...part, formula: 'NaCl', gPer100g: part.gPer100g * (1 - left) }] : [],
  )
  const kept = parts.map((part) => (part.formula === 'NaXcO' ? { ...part, gPer100g: part.gPer100g * left } : part))
  return [...kept, ...lost]
}

function ageingOf(own: OwnProduct, like: Product, tradePercent: number): Result<Ageing | undefined> {
  const days = own.ageDays
  if (days === undefined || days === 0 || like.form !== 'liquid' || !like.groups.includes('hypochlorite'))
    return ok(undefined)
  const storedC = own.storedC ?? USUAL_SHED_C
  const after = strengthAfter({ percent: tradePercent, days, storedC })
  if (!after.ok) return fail({ ...after.problem, path: AGEING_PATHS[after.problem.path] ?? after.problem.path })
  const inLabelBasis = (trade: number) => (own.strength * trade) / tradePercent
  const { percent, low, high } = after.value
  return ok({
    labelPercent: own.strength,
    percent: inLabelBasis(percent),
    low: inLabelBasis(low),
    high: inLabelBasis(high),
    days,
    storedC,
  })
}

function strengthText(own: OwnProduct, active: Active, ageing: Ageing | undefined): string {
  const stated =
    own.basis === 'percent-by-mass'
      ? `${own.strength} % ${active.substance} by weight`
      : `${own.strength} ${UNIT[own.basis]}`
  return ageing ? `about ${Number(ageing.percent.toPrecision(2))} left of ${stated}` : stated
}

function packagesOf(own: OwnProduct, like: Product, densityGPerML: number): readonly Package[] {
  if (own.packages && own.packages.length > 0) return own.packages.map((pack) => ({ ...pack, system: 'metric' }))
  if (like.form !== 'liquid') return like.packages
  const ratio = densityGPerML / like.densityGPerML
  return like.packages.map((pack) => ({ ...pack, massG: pack.massG * ratio }))
}
