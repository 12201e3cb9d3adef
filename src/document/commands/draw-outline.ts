import * as v from 'valibot'
import { fail, ok } from '../../base/index.ts'
import { boundsOf, type Floor, type Path } from '../../basin/index.ts'
import { stillAssumed, withFloor } from '../assumed-depths.ts'
import { problem } from '../problems.ts'
import { FloorSchema, PathSchema, ToleranceSchema, WallSchema } from '../schema/geometry.ts'
import { Id, Name } from '../schema/numbers.ts'
import { DEFAULTS, SketchSchema } from '../schema/spec.ts'
import type { Body } from '../types.ts'
import { defineEdit } from './define.ts'
import { changed, replaced, without } from './places.ts'

const FOOT_M = 0.3048
/**
 * Depths of a floor that nobody has measured yet, from the shallow end to the deep one, and the height of its rim; and how well a sketch gives a
 * pool's form and depths, one standard deviation [m].
 */
const ASSUMED = {
  metres: { depthsM: [1.1, 1.7], rimM: DEFAULTS.freeboardM, sketchM: 0.1 },
  feet: { depthsM: [3.5 * FOOT_M, 5.5 * FOOT_M], rimM: FOOT_M / 2, sketchM: FOOT_M / 3 },
} as const

/**
 * Places the first body from an outline, or gives it a new one. Islands and features belonged to the old outline and go;
 * without a floor it gets a plain slope along its longer side, marked as assumed.
 */
export const drawOutline = defineEdit({
  id: 'drawOutline',
  label: 'Draw basin',
  args: v.strictObject({
    outline: PathSchema,
    bodyId: v.optional(Id),
    name: v.optional(Name),
    systemId: v.optional(Id),
    floor: v.optional(FloorSchema),
    wall: v.optional(WallSchema),
    tolerance: v.optional(ToleranceSchema),
    sketch: v.optional(SketchSchema),
    /** What the owner measures in: figures that are assumed are round in it. */
    roundIn: v.optional(v.picklist(['metres', 'feet'])),
  }),
  apply: (spec, { outline, bodyId, name, systemId, floor, wall, tolerance, sketch, roundIn = 'metres' }) => {
    const old = spec.bodies[0]
    const system = systemId ?? old?.system ?? spec.systems[0]?.id ?? DEFAULTS.systemId
    if (!spec.systems.some(({ id }) => id === system))
      return fail(problem('no-such-system-here', 'systemId', { detail: system }))
    const base: Body = old ?? {
      id: bodyId ?? 'main',
      name: 'Main pool',
      system,
      outline,
      islands: [],
      floor: { kind: 'flat', depthM: 0 },
      wall: { kind: 'vertical' },
      features: [],
      freeboardM: ASSUMED[roundIn].rimM,
      levelM: DEFAULTS.levelM,
      tolerance: DEFAULTS.tolerance,
    }
    const drawn = changed(without(base, 'sketch'), {
      name: name ?? base.name,
      system,
      outline,
      islands: [],
      features: [],
      floor: floor ?? assumedFloor(outline, ASSUMED[roundIn].depthsM),
      wall: wall ?? base.wall,
      tolerance:
        tolerance ?? (sketch ? { planM: ASSUMED[roundIn].sketchM, depthM: ASSUMED[roundIn].sketchM } : base.tolerance),
      depthsAssumed: floor ? undefined : true,
      otherFloors: undefined,
    })
    const known = floor && old ? withFloor(drawn, floor, stillAssumed(old, floor)) : drawn
    const body: Body = sketch ? { ...known, sketch } : known
    return ok({ ...spec, bodies: old ? replaced(spec.bodies, 0, body) : [body] })
  },
})

/** A slope along the longer side of the outline's box, through its middle. */
function assumedFloor(outline: Path, [shallow, deep]: readonly [number, number]): Floor {
  const { minX, minY, maxX, maxY } = boundsOf(outline)
  const [x, y] = [(minX + maxX) / 2, (minY + maxY) / 2]
  const isWide = maxX - minX >= maxY - minY
  const length = Math.max(isWide ? maxX - minX : maxY - minY, 0.01)
  return {
    kind: 'profile',
    axis: isWide ? { from: [minX, y], to: [minX + length, y] } : { from: [x, minY], to: [x, minY + length] },
    stations: [
      [0, shallow],
      [length, deep],
    ],
  }
}
