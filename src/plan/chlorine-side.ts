import { ok, type Result } from '../base/index.ts'
import type { Product } from '../chemicals/index.ts'
import { type Constants, daylightHours } from '../water/index.ts'
import { type Covered, coveredShare } from './covers.ts'
import { demandTerms } from './demand-terms.ts'
import { chlorineCeiling, chlorineFloor } from './floor.ts'
import { heldFloor } from './held-floor.ts'
import { HELPERS, type Helper } from './helpers.ts'
import { type Losses, lossesAt } from './residual.ts'
import { type StartWater, startWater } from './start.ts'
import type { KnownReading } from './types.ts'
import type { DemandTerm, Upkeep, UpkeepInput } from './upkeep-types.ts'

const USUAL = { pH: 7.5, alkalinityMgPerL: 90, chlorineMgPerL: 2 } as const

/** The upkeep's account of chlorine: what is held, what uses it up, and whether the floor stands. */
export interface ChlorineSide {
  readonly held: StartWater
  /** The residual that the terms are reckoned at [mg/L]. */
  readonly residual: number
  readonly covered: Covered
  readonly helpers: readonly Helper[]
  readonly terms: readonly DemandTerm[]
  readonly losses: Losses
  readonly floor: Upkeep['floor']
}

/** Chlorine's account for a water; `read` stands for it where what was read leaves stabiliser open. */
export function chlorineSide(
  input: UpkeepInput,
  read: KnownReading,
  product: Product,
  constants: Constants,
): Result<ChlorineSide> {
  const stabiliser = input.water.cya_mg_per_L
  const fc = input.targets.fc_mg_per_L_as_Cl2
  const most = fc?.isOwn ? Number.POSITIVE_INFINITY : chlorineCeiling(stabiliser, input)
  const residual = Math.min(most, Math.max(chlorineFloor(stabiliser, input).mgPerL, fc?.aim ?? USUAL.chlorineMgPerL))
  const held = waterHeld(input, read, residual, constants)
  if (!held.ok) return held
  const covered = coveredShare(
    input.coverKind,
    input.coverHoursPerDay,
    daylightHours(input.latitudeDeg, input.dayOfYear),
  )
  const helpers = HELPERS.rows.filter((helper) => input.helpers.includes(helper.id))
  const terms = demandTerms(input, held.value.water, residual, covered, helpers)
  const floor = heldFloor(input, { terms, residualMgPerL: residual, product })
  return ok({ held: held.value, residual, covered, helpers, terms, losses: lossesAt(terms, residual), floor })
}

/** The water as it is to be held: pH at its aim, chlorine at the residual, the rest as read. */
function waterHeld({ targets, waterC }: UpkeepInput, water: KnownReading, residual: number, constants: Constants) {
  const pH = targets.pH?.aim ?? water.pH ?? USUAL.pH
  const alkalinity = water.ta_mg_per_L_as_CaCO3 ?? targets.ta_mg_per_L_as_CaCO3?.aim ?? USUAL.alkalinityMgPerL
  const started = startWater(
    {
      ...water,
      pH,
      ta_mg_per_L_as_CaCO3: alkalinity,
      fc_mg_per_L_as_Cl2: residual,
      temperature_C: waterC,
    },
    constants,
  )
  if (!started.ok || water.ta_mg_per_L_as_CaCO3 !== undefined) return started
  const said = `Alkalinity is unknown; the sums take ${alkalinity} mg/L.`
  return ok({ ...started.value, assumptions: [...started.value.assumptions, said] })
}
