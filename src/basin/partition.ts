import { fail, ok, type Problem, type Result } from '../base/index.ts'
import { arrange, type RingContact } from './arrangement.ts'
import { breakSpans } from './break-lines.ts'
import { buildCells, type Division } from './cells.ts'
import { contactProblem, MOST_CONTACTS } from './contact-problems.ts'
import { type AreaMoments, addMoments } from './edge-integrals.ts'
import { facesOf } from './faces.ts'
import type { FloorPlan } from './floor-kind.ts'
import { checkFloor, isFitted, planFloor } from './floors.ts'
import { ringsAround } from './labels.ts'
import { mergeAlike } from './merge-alike.ts'
import { checkRange } from './number-range.ts'
import type { Partition } from './partition-types.ts'
import { curvesOf } from './path.ts'
import { boundsOf } from './path-figures.ts'
import { shiftedAll } from './planes.ts'
import { problem } from './problems.ts'
import { checkNumbers, checkRing, pathsOf, pushRing, type Ring, ringOf, roughBox } from './rings.ts'
import type { Span } from './span.ts'
import { DIVISION_TRIES, grainOf, MAX_EXTENT_M, MIN_EXTENT_M } from './tolerance.ts'
import type { BasinShape, Path } from './types.ts'
import { checkWall } from './walls.ts'

/**
 * The plan divided into cells of linear depth: outline, islands, patches, breaks of the floor and the lines where two
 * depths cross, laid into one arrangement. What doesn't make sense is a problem with its path relative to the body.
 */
export function partition(shape: BasinShape): Result<Partition> {
  const wrong = checkShape(shape)
  if (wrong) return fail(wrong)
  const [minX, minY, maxX, maxY] = roughBox(curvesOf(shape.outline))
  const extentM = Math.hypot(maxX - minX, maxY - minY)
  if (extentM < MIN_EXTENT_M) return fail(problem('too-small', 'outline', [shape.outline.start]))
  if (isTooLarge(shape.outline, extentM)) return fail(problem('too-large', 'outline', [shape.outline.start]))
  const originX = (minX + maxX) / 2
  const originY = (minY + maxY) / 2
  const coordinate = Math.max(Math.abs(minX), Math.abs(maxX), Math.abs(minY), Math.abs(maxY))
  const grainM = grainOf(extentM, coordinate)
  let last: Problem | undefined
  for (const { grains, settles } of DIVISION_TRIES) {
    const result = divide(shape, originX, originY, extentM, grainM * grains, settles)
    if (result.ok) return result
    // What only a coarser grain makes wrong (a side shorter than it is none) isn't what is wrong with the plan.
    if (grains <= 1 && result.problem.code !== 'cannot-divide') return result
    last ??= result.problem
  }
  return fail(last!)
}

/** Measured by the exact box where the rough one can't tell: that one may be too large for arcs and cubics. */
function isTooLarge(outline: Path, roughExtentM: number): boolean {
  if (roughExtentM <= MAX_EXTENT_M) return false
  const { minX, minY, maxX, maxY } = boundsOf(outline)
  return !(Math.max(maxX - minX, maxY - minY) <= MAX_EXTENT_M)
}

function checkShape(shape: BasinShape): Problem | undefined {
  for (const { path, where } of pathsOf(shape).paths) {
    const wrong = checkNumbers(path, where)
    if (wrong) return wrong
    if (path.segments.length === 0) return problem('too-few-points', where)
  }
  if (!Number.isFinite(shape.freeboardM)) return problem('not-a-number', 'freeboardM')
  for (const patch of shape.patches) {
    const { atOrigin, dx, dy } = patch.plane
    const numbers = [atOrigin, dx, dy, ...(patch.band ? [...patch.band.axis.from, ...patch.band.axis.to] : [])]
    if (!numbers.every(Number.isFinite)) return problem('not-a-number', `features[${patch.feature}]`)
  }
  return checkFloor(shape.floor) ?? checkWall(shape.wall) ?? checkRange(shape)
}

/** More curves than this in the edges of features make a division that takes a while. */
const MANY_CURVES = 100

/** A level floor far below the waterline. */
const STAND_IN: FloorPlan = {
  pieces: [{ plane: { atOrigin: MAX_EXTENT_M, dx: 0, dy: 0 }, within: [], weights: [] }],
  breaks: [],
  pieceAt: () => 0,
}

function divide(
  shape: BasinShape,
  originX: number,
  originY: number,
  extentM: number,
  grainM: number,
  settles: boolean,
): Result<Partition> {
  const rings: Ring[] = []
  let waterM2 = 0
  let crossM2 = 0
  const empty = new Set<number>()
  const { paths, patches } = pathsOf(shape)
  for (const { path, where } of paths) {
    const ring = ringOf(path, where, originX, originY, grainM)
    const areaM2 = signedArea(ring)
    const wrong = checkRing(ring)
    if (wrong) return fail(wrong)
    if (!(Math.abs(areaM2) > Math.hypot(ring.maxX - ring.minX, ring.maxY - ring.minY) * grainM)) empty.add(rings.length)
    if (rings.length <= shape.islands.length) {
      waterM2 += (rings.length === 0 ? 1 : -1) * Math.abs(areaM2)
      crossM2 += Math.abs(areaM2)
    }
    rings.push(ring)
  }
  const islands = shape.islands.length
  const crossingOf = (contacts: readonly RingContact[], of: readonly Ring[]): Problem | undefined =>
    contactProblem(contacts, of, empty, islands, originX, originY)
  const featureCurves = rings.slice(1 + islands).reduce((sum, { curves }) => sum + curves.length, 0)
  if (isFitted(shape.floor) || featureCurves > MANY_CURVES) {
    // What is wrong with the shores alone needn't wait for all that lies between them.
    const shores = rings.slice(0, 1 + islands)
    const wrong = crossingOf(shoreContacts(shores, grainM), shores)
    if (wrong) return fail(wrong)
  }
  // An island that reaches out of the outline is found out below; no floor need be fitted to it, which may take for ever.
  const planned = reachesOut(shape)
    ? undefined
    : planFloor(shape.floor, {
        shores: rings.slice(0, 1 + islands),
        originX,
        originY,
        extentM,
        grainM,
        planToleranceM: shape.tolerance?.planM ?? 0,
      })
  const division: Division = {
    shape,
    rings,
    // A floor that doesn't fit gives way to any other, so that what is wrong with the shores is found first.
    floor: planned?.ok ? planned.value : STAND_IN,
    patchRings: patches,
    patchPlanes: shiftedAll(
      shape.patches.map((patch) => patch.plane),
      originX,
      originY,
    ),
    originX,
    originY,
    extentM,
    grainM,
  }
  const spans: Span[] = []
  const spansInRing = rings.map((ring, id) => pushRing(ring, id, grainM, spans))
  breakSpans(division, spans)
  const contacts: RingContact[] = []
  // What is swept along the shore nobody drew: where the needle of a bend meets itself there is nothing to tell a person.
  const swept = new Set(
    patches.flatMap(({ path }, i) => (shape.patches[i]!.measuredFrom?.kind === 'shore' ? [path] : [])),
  )
  const collect = (contact: RingContact): boolean => {
    const { a, b } = contact
    // Features may meet each other and the shores as they like.
    const isWrong = (a.ring === b.ring && !swept.has(a.ring)) || Math.max(a.ring, b.ring) <= islands
    return isWrong && contacts.push(contact) > MOST_CONTACTS
  }
  const arrangement = arrange(spans, spansInRing, grainM, collect, settles)
  const crossing = crossingOf(contacts, rings)
  if (crossing) return fail(crossing)
  const faces = facesOf(arrangement)
  const around = faces && ringsAround(arrangement.edges, faces)
  if (!faces || !around) return fail(problem('cannot-divide', 'outline'))
  const cells = buildCells(division, arrangement, faces, around, waterM2, crossM2)
  if (!planned) return cells.ok ? fail(problem('cannot-divide', 'islands')) : cells
  if (!cells.ok) return cells
  return planned.ok ? ok(mergeAlike(cells.value)) : planned
}

/** Where the shores meet themselves or each other. */
function shoreContacts(shores: readonly Ring[], grainM: number): RingContact[] {
  const spans: Span[] = []
  const spansInRing = shores.map((ring, id) => pushRing(ring, id, grainM, spans))
  const contacts: RingContact[] = []
  arrange(spans, spansInRing, grainM, (contact) => contacts.push(contact) > MOST_CONTACTS)
  return contacts
}

/** True where an island reaches out of the outline's box, so that it crosses the outline or lies outside it. */
function reachesOut({ outline, islands }: BasinShape): boolean {
  if (islands.length === 0) return false
  const outer = boundsOf(outline)
  return islands.some((island) => {
    const inner = boundsOf(island)
    return inner.minX < outer.minX || inner.minY < outer.minY || inner.maxX > outer.maxX || inner.maxY > outer.maxY
  })
}

function signedArea(ring: Ring): number {
  const moments: AreaMoments = { area: 0, areaX: 0, areaY: 0 }
  for (const curve of ring.curves) {
    // In quarters, so that an arc of nearly a full turn is integrated to the last bits.
    for (let i = 0; i < 4; i++) addMoments(curve, i / 4, (i + 1) / 4, 1, moments)
  }
  return moments.area
}
