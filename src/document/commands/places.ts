import * as v from 'valibot'
import { fail, ok, type Result } from '../../base/index.ts'
import type { ContoursFloor, Floor, Path, ProfileFloor } from '../../basin/index.ts'
import { assumedDepths, withFloor } from '../assumed-depths.ts'
import { type Sides, withSides } from '../bench-sides.ts'
import { closed, nodeCount } from '../path-edit.ts'
import { type ProblemCode, problem } from '../problems.ts'
import { atLeastZero, Id, Index, LIMITS } from '../schema/numbers.ts'
import type { Body, Spec, System } from '../types.ts'

/** A ring of a body whose points can be edited. Segment i runs from node i to node i + 1. */
export type RingRef =
  | { readonly of: 'outline' }
  | { readonly of: 'island'; readonly index: number }
  | { readonly of: 'feature'; readonly index: number }
  /** A depth line of a floor by contours. */
  | { readonly of: 'contour'; readonly index: number }

const RingSchema: v.GenericSchema<unknown, RingRef> = v.variant('of', [
  v.strictObject({ of: v.literal('outline') }),
  v.strictObject({ of: v.literal('island'), index: Index }),
  v.strictObject({ of: v.literal('feature'), index: Index }),
  v.strictObject({ of: v.literal('contour'), index: Index }),
])
/** Where an edit of a ring's points happens. */
export const RING = { bodyId: Id, ring: RingSchema }

/** An overall length, above zero [m]. */
export const LENGTH = v.pipe(atLeastZero(LIMITS.coordinateM), v.gtValue(0))

/** The spec with one body edited. */
export function editBody(spec: Spec, bodyId: string, edit: (body: Body) => Result<Body>): Result<Spec> {
  const index = spec.bodies.findIndex((body) => body.id === bodyId)
  const body = spec.bodies[index]
  if (!body) return fail(problem('no-such-body', 'bodyId', { detail: bodyId }))
  const edited = edit(body)
  return edited.ok ? ok({ ...spec, bodies: replaced(spec.bodies, index, edited.value) }) : edited
}

/** The spec with one system edited. */
export function editSystem(spec: Spec, systemId: string, edit: (system: System) => Result<System>): Result<Spec> {
  const index = spec.systems.findIndex((system) => system.id === systemId)
  const system = spec.systems[index]
  if (!system) return fail(problem('no-such-system-here', 'systemId', { detail: systemId }))
  const edited = edit(system)
  return edited.ok ? ok({ ...spec, systems: replaced(spec.systems, index, edited.value) }) : edited
}

/** The spec with one ring's path edited; the edit sees it with its closing line written out. */
export function editRing(
  spec: Spec,
  at: { readonly bodyId: string; readonly ring: RingRef },
  edit: (path: Path) => Result<Path>,
): Result<Spec> {
  return editBody(spec, at.bodyId, (body) => {
    const { ring } = at
    if (ring.of === 'outline') return mapped(edit(closed(body.outline)), (outline) => ({ ...body, outline }))
    if (ring.of === 'island') {
      const island = body.islands[ring.index]
      if (!island) return fail(problem('no-such-part', 'ring.index', { detail: `island ${ring.index + 1}` }))
      return mapped(edit(closed(island)), (path) => ({ ...body, islands: replaced(body.islands, ring.index, path) }))
    }
    if (ring.of === 'contour') {
      return editContour(body, ring.index, 'ring.index', (contour) =>
        mapped(edit(closed(contour.path)), (path) => ({ ...contour, path })),
      )
    }
    const feature = body.features[ring.index]
    if (!feature) return fail(problem('no-such-part', 'ring.index', { detail: `feature ${ring.index + 1}` }))
    if (!('path' in feature)) return fail(problem('no-outline-of-points', 'ring.index'))
    return mapped(edit(closed(feature.path)), (path) => ({
      ...body,
      features: replaced(body.features, ring.index, { ...feature, path }),
    }))
  })
}

/** Where an outline's sides were renumbered by an edit of it, the benches along them follow. */
export function withBenches(
  before: Spec,
  at: { readonly bodyId: string; readonly ring: RingRef },
  sides: Sides,
  edited: Result<Spec>,
): Result<Spec> {
  const old = before.bodies.find((body) => body.id === at.bodyId)
  if (!edited.ok || !old || at.ring.of !== 'outline') return edited
  return editBody(edited.value, at.bodyId, (body) =>
    ok({ ...body, features: withSides(old.features, old.outline, sides) }),
  )
}

/** An edit of a ring at one of its nodes or segments, of which it has as many. */
export function editRingAt(
  spec: Spec,
  at: { readonly bodyId: string; readonly ring: RingRef },
  what: 'node' | 'segment',
  index: number,
  edit: (path: Path) => Result<Path>,
): Result<Spec> {
  return editRing(spec, at, (path) =>
    index < nodeCount(path)
      ? edit(path)
      : fail(problem('no-such-part', what, { detail: `${what === 'node' ? 'point' : 'side'} ${index + 1}` })),
  )
}

const OTHER_FLOOR = {
  flat: 'not-a-flat-floor',
  profile: 'not-a-profile',
  contours: 'not-by-contours',
  soundings: 'not-by-soundings',
  dish: 'not-a-dish',
} as const satisfies Record<Floor['kind'], ProblemCode>

type FloorOf<Kind extends Floor['kind']> = Extract<Floor, { readonly kind: Kind }>

/** An edit of a floor of one kind that says what becomes of its depths' standing too, as `withFloor` takes it. */
export function editFloor<Kind extends Floor['kind']>(
  spec: Spec,
  bodyId: string,
  kind: Kind,
  edit: (floor: FloorOf<Kind>, assumed: readonly boolean[]) => Result<readonly [FloorOf<Kind>, readonly boolean[]]>,
): Result<Spec> {
  return editBody(spec, bodyId, (body) =>
    body.floor.kind === kind
      ? mapped(edit(body.floor as FloorOf<Kind>, assumedDepths(body)), ([floor, assumed]) =>
          withFloor(body, floor, assumed),
        )
      : fail(problem(OTHER_FLOOR[kind], 'bodyId')),
  )
}

type Contour = ContoursFloor['rings'][number]

/** The body with one of its floor's depth lines edited. */
function editContour(
  body: Body,
  index: number,
  path: string,
  edit: (contour: Contour) => Result<Contour>,
  saysDepth = false,
): Result<Body> {
  const { floor } = body
  if (floor.kind !== 'contours') return fail(problem('not-by-contours', 'bodyId'))
  const contour = floor.rings[index]
  if (!contour) return fail(problem('no-such-part', path, { detail: `depth line ${index + 1}` }))
  return mapped(edit(contour), (edited) => {
    const assumed = assumedDepths(body).map((is, i) => is && !(i === index + 1 && saysDepth))
    return withFloor(body, { ...floor, rings: replaced(floor.rings, index, edited) }, assumed)
  })
}

/** The spec with one depth line of a body's floor edited. One that is only moved says no depth. */
export function editContourOf(
  spec: Spec,
  bodyId: string,
  index: number,
  edit: (contour: Contour) => Result<Contour>,
  saysDepth = false,
): Result<Spec> {
  return editBody(spec, bodyId, (body) => editContour(body, index, 'contour', edit, saysDepth))
}

/** The floor of a body as a profile. */
export function profileOf(body: Body): Result<ProfileFloor> {
  return body.floor.kind === 'profile' ? ok(body.floor) : fail(problem('not-a-profile', 'bodyId'))
}

export function mapped<T, U>(result: Result<T>, make: (value: T) => U): Result<U> {
  return result.ok ? ok(make(result.value)) : result
}

export function replaced<T>(list: readonly T[], index: number, item: T): readonly T[] {
  return list.map((old, i) => (i === index ? item : old))
}

export function removed<T>(list: readonly T[], index: number): readonly T[] {
  return list.filter((_, i) => i !== index)
}

/** The object without a key: an absent key is unknown, and stays out of the saved text. */
export function without<T extends object, K extends keyof T>(object: T, key: K): Omit<T, K> {
  const { [key]: _, ...rest } = object
  return rest
}

/** The object with changes: a key that is given as undefined goes, since absent is unknown. The result is checked before it is kept. */
export function changed<T extends object>(object: T, changes: { readonly [key: string]: unknown }): T {
  const result: { [key: string]: unknown } = { ...(object as { readonly [key: string]: unknown }) }
  for (const [key, value] of Object.entries(changes)) {
    if (value === undefined) delete result[key]
    else result[key] = value
  }
  return result as T
}
