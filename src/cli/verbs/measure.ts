import { fail, ok, type Problem, type Result, under } from '../../base/index.ts'
import { type Path, volumeAtLevel } from '../../basin/index.ts'
import { deriveBody, deriveBodyAt, deriveOverlaps, deriveUntangled, deriveVolume } from '../../derive/index.ts'
import type { Body, Spec } from '../../document/index.ts'
import { dryNotices } from '../dry-level.ts'
import { readSpecLine, specNotices } from '../spec-input.ts'
import { asLevel, type Verb } from '../verb.ts'

export const measure: Verb = {
  id: 'measure',
  summary:
    'SPEC or {"spec": SPEC, "levels"?: [levelM, …]} → {"bodies": […], "systems": […], "notices"?: […]}; a line that crosses itself: "untangled" in its problem',
  run: (input, options) => {
    const line = readSpecLine(input)
    if (!line.ok) return line
    const { spec, asked, prefix } = line.value
    const levels = levelsOf(asked['levels'])
    if (!levels.ok) return levels
    const { levelM } = options
    const bodies = measureBodies(spec, levels.value, levelM)
    if (!bodies.ok) return fail(under(prefix, withUntangled(spec, bodies.problem)))
    const overlaps = deriveOverlaps(atLevel(spec, levelM)).map((notice) => ({ ...notice, ...under(prefix, notice) }))
    const dry = bodies.value.flatMap(({ notices }) => notices)
    return ok({
      bodies: bodies.value.map(({ answer }) => answer),
      systems: measureSystems(spec, levelM),
      ...specNotices(spec, prefix, [...overlaps, ...dry]),
    })
  },
}

/** All bodies at a level that is asked for, or each at its own. */
function atLevel(spec: Spec, levelM: number | undefined): Spec {
  return levelM === undefined ? spec : { ...spec, bodies: spec.bodies.map((body) => ({ ...body, levelM })) }
}

/** A complaint about a line that crosses itself, with the path that would mend it where a rule can read the line. */
function withUntangled(spec: Spec, problem: Problem): Problem & { readonly untangled?: Path } {
  const proposal = deriveUntangled(spec).find(({ answers }) => answers === problem.path)
  return proposal ? { ...problem, untangled: proposal.path } : problem
}

function levelsOf(value: unknown): Result<readonly number[] | undefined> {
  if (value === undefined || value === null) return ok(undefined)
  if (!Array.isArray(value)) {
    return fail({
      code: 'levels-not-a-list',
      path: 'levels',
      what: 'The levels must be a list of numbers.',
      why: 'Each is measured for itself.',
      hint: 'Give metres above (+) or below (−) the datum, e.g. [-0.2, 0].',
    })
  }
  const levels: number[] = []
  for (const [i, item] of value.entries()) {
    const number = asLevel(item, `levels[${i}]`)
    if (!number.ok) return number
    levels.push(number.value)
  }
  return ok(levels)
}

interface MeasuredBody {
  readonly answer: unknown
  readonly notices: readonly Problem[]
}

function measureBodies(
  spec: Spec,
  levels: readonly number[] | undefined,
  levelM: number | undefined,
): Result<readonly MeasuredBody[], Problem> {
  const measured: MeasuredBody[] = []
  for (const [i, body] of spec.bodies.entries()) {
    const each = measureBody(body, levels, levelM)
    if (!each.ok) return fail(under(`bodies[${i}]`, each.problem))
    measured.push(each.value)
  }
  return ok(measured)
}

function measureBody(
  body: Body,
  levels: readonly number[] | undefined,
  levelM: number | undefined,
): Result<MeasuredBody> {
  const { partition, measures, sigmaM3 } = deriveBody(body)
  if (!partition.ok) return partition
  // A level that is asked for may be dry; the body's own may not.
  const own = measures.ok ? ok({ measures: measures.value, sigmaM3 }) : measures
  const water = levelM === undefined ? own : deriveBodyAt(body, levelM)
  if (!water.ok) return water
  const parts = partition.value
  return ok({
    answer: {
      id: body.id,
      ...water.value.measures,
      sigmaM3: water.value.sigmaM3,
      ...(levels ? { levels: levels.map((at) => ({ levelM: at, ...volumeAtLevel(parts, at) })) } : {}),
    },
    notices: levelM === undefined ? [] : dryNotices(body, water.value.measures, '--level'),
  })
}

function measureSystems(spec: Spec, levelM: number | undefined): unknown[] {
  return spec.systems.map(({ id }) => {
    const volume = deriveVolume(spec, id, levelM)
    return {
      id,
      volumeM3: volume?.m3 ?? null,
      sigmaM3: volume?.sigmaM3 ?? null,
      waterSurfaceM2: volume?.waterSurfaceM2 ?? null,
      wettedM2: volume?.wettedM2 ?? null,
    }
  })
}
