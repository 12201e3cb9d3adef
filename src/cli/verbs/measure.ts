import { fail, ok, type Problem, type Result, under } from '../../base/index.ts'
import { measure as measureAt, type Path, volumeAtLevel } from '../../basin/index.ts'
import { deriveBody, deriveOverlaps, deriveUntangled, deriveVolume } from '../../derive/index.ts'
import type { Spec } from '../../document/index.ts'
import { readSpecLine } from '../spec-input.ts'
import { asLevel, type Options, type Verb } from '../verb.ts'

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
    const bodies = measureBodies(spec, levels.value, options)
    if (!bodies.ok) return fail(under(prefix, withUntangled(spec, bodies.problem)))
    const notices = deriveOverlaps(spec).map((notice) => ({ ...notice, ...under(prefix, notice) }))
    return ok({
      bodies: bodies.value,
      systems: measureSystems(spec),
      ...(notices.length > 0 ? { notices } : {}),
    })
  },
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

function measureBodies(
  spec: Spec,
  levels: readonly number[] | undefined,
  options: Options,
): Result<unknown[], Problem> {
  const measured: unknown[] = []
  for (const [i, body] of spec.bodies.entries()) {
    const derived = deriveBody(body)
    if (!derived.partition.ok) return fail(under(`bodies[${i}]`, derived.partition.problem))
    const parts = derived.partition.value
    // A level that is asked for may be dry; the body's own may not.
    const asked = options.levelM === undefined ? derived.measures : ok(measureAt(parts, options.levelM))
    if (!asked.ok) return fail(under(`bodies[${i}]`, asked.problem))
    measured.push({
      id: body.id,
      ...asked.value,
      ...(options.levelM === undefined ? { sigmaM3: derived.sigmaM3 } : {}),
      ...(levels ? { levels: levels.map((levelM) => ({ levelM, ...volumeAtLevel(parts, levelM) })) } : {}),
    })
  }
  return ok(measured)
}

function measureSystems(spec: Spec): unknown[] {
  return spec.systems.map(({ id }) => {
    const volume = deriveVolume(spec, id)
    return {
      id,
      volumeM3: volume?.m3 ?? null,
      sigmaM3: volume?.sigmaM3 ?? null,
      waterSurfaceM2: volume?.waterSurfaceM2 ?? null,
      wettedM2: volume?.wettedM2 ?? null,
    }
  })
}
