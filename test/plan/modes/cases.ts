import type { Problem, Result } from '../../../src/base/index.ts'
import { defaultTargets, REGIMES, type StartContext, type StartMode, SURFACES } from '../../../src/plan/index.ts'
import type { PeopleReading } from '../../../src/water/index.ts'

/** A pool in the middle of everything. */
export const BEFORE: PeopleReading = {
  pH: 7.5,
  ta_mg_per_L_as_CaCO3: 90,
  ch_mg_per_L_as_CaCO3: 260,
  mg_hardness_mg_per_L_as_CaCO3: 20,
  sulfate_mg_per_L: 40,
  cya_mg_per_L: 40,
  borate_mg_per_L_as_B: 0,
  fc_mg_per_L_as_Cl2: 3,
  salt_mg_per_L_as_NaCl: 600,
  temperature_C: 24,
}

export const contextOf = (more: Partial<StartContext> = {}): StartContext => {
  const surface = 'surface' in more ? more.surface : 'plaster'
  const regimeId = more.regimeId ?? 'stabilised'
  return {
    volumeM3: 60,
    waterSurfaceM2: 40,
    surface,
    targets: defaultTargets(surface === 'unknown' ? undefined : surface, regimeId, {}),
    regimeId,
    products: {},
    constants: 'default',
    ...more,
  }
}

/** Every regime on every surface: where each target and each step turns up somewhere. */
export const CONTEXTS: readonly StartContext[] = REGIMES.rows.flatMap(({ id }) =>
  SURFACES.rows.map((surface) => contextOf({ regimeId: id, surface: surface.id })),
)

/** All that people read of a row: on screen or on paper. */
export const textsOf = (mode: StartMode): readonly string[] => [
  mode.label,
  mode.when,
  mode.dayOne,
  mode.whoRules,
  ...mode.notes,
  ...mode.inputs.flatMap(({ label, help }) => [label, help]),
  ...mode.targets.map(({ why }) => why),
  ...mode.steps.flatMap(({ title, what, how, why, often, condition }) => [
    title,
    what,
    how,
    why,
    ...(often ? [often] : []),
    ...(condition ? [condition.words] : []),
  ]),
]

export function bad(result: Result<unknown>): Problem {
  if (result.ok) throw new Error('no problem where one was due')
  return result.problem
}
