import { fail, ok, type Problem, type Result, under } from '../../base/index.ts'
import { measure as measureAt, volumeAtLevel } from '../../basin/index.ts'
import { deriveBody, deriveVolume } from '../../derive/index.ts'
import { type Spec, validateSpec } from '../../document/index.ts'
import { asNumber, asObject, type Options, type Verb } from '../verb.ts'

export const measure: Verb = {
  id: 'measure',
  summary: 'SPEC or {"spec": SPEC, "levels"?: [levelM, …]} → {"bodies": […], "systems": […]}',
  run: (input, options) => {
    const line = asObject(input, '')
    if (!line.ok) return line
    const isWrapped = line.value['spec'] !== undefined
    const spec = validateSpec(isWrapped ? line.value['spec'] : input)
    if (!spec.ok) return isWrapped ? fail(spec.problem.map((problem) => under('spec', problem))) : spec
    const levels = levelsOf(isWrapped ? line.value['levels'] : undefined)
    if (!levels.ok) return levels
    const prefix = isWrapped ? 'spec' : ''
    const bodies = measureBodies(spec.value, levels.value, options)
    if (!bodies.ok) return fail(prefix === '' ? bodies.problem : under(prefix, bodies.problem))
    return ok({ bodies: bodies.value, systems: measureSystems(spec.value) })
  },
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
    const number = asNumber(item, `levels[${i}]`)
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
