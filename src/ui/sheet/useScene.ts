import { useMemo } from 'react'
import type { Problem } from '../../base/index.ts'
import { boundsOf, type Floor } from '../../basin/index.ts'
import { type DerivedBody, deriveBody, deriveOverlaps, deriveProblems } from '../../derive/index.ts'
import { type Body, depthsOfFloor, depthToReference } from '../../document/index.ts'
import { useApp } from '../context.tsx'
import { namedInSpec } from '../part-names.ts'
import { type SectionLine, sectionLineOf } from './scene.ts'
import type { Content } from './useSheetView.ts'

/** A sheet with nothing on it shows about as much paper as a usual pool needs [m]. */
const BLANK: Content = {
  bounds: { minX: 0, minY: 0, maxX: 12, maxY: 6.4 },
  axis: { from: [0, 3.2], to: [12, 3.2] },
  depthM: 2.2,
  aboveM: 0.15,
  bedM: () => 2.2,
}

export interface Subject {
  readonly body: Body
  readonly derived: DerivedBody
  readonly section: SectionLine
  /** Deepest place below the datum [m]. */
  readonly maxDepthM: number
  /** What depths as written have in front of those from the datum [m]. */
  readonly referenceM: number
  /** The plan's other bodies. */
  readonly others: readonly Body[]
  /** Troubles that have a place in the plan. */
  readonly troubles: readonly Problem[]
}

/** The body that the sheet draws, with what is derived from it, and the room that it needs. */
export function useSubject(): { readonly subject: Subject | undefined; readonly content: Content } {
  const spec = useApp((state) => state.spec)
  const previewLevelM = useApp((state) => state.previewLevelM)
  const body = spec.bodies[0]
  const subject = useMemo(() => {
    if (!body) return undefined
    const derived = deriveBody(body)
    const section = sectionLineOf(body)
    const { measures } = derived
    const maxDepthM = measures.ok
      ? measures.value.maxDepthM - measures.value.levelM
      : Math.max(0, ...depthsOfFloor(body.floor))
    return { body, derived, section, maxDepthM, referenceM: depthToReference(body, 0) }
  }, [body])
  const troubles = useMemo(
    () =>
      [...deriveProblems(spec), ...deriveOverlaps(spec)].flatMap((problem) =>
        (problem.at?.length ?? 0) > 0 ? [namedInSpec(problem, spec)] : [],
      ),
    [spec],
  )
  const content = useMemo((): Content => {
    if (!subject) return BLANK
    const { section, maxDepthM } = subject
    return {
      bounds: boundsOf(subject.body.outline),
      axis: section.axis,
      depthM: Math.max(maxDepthM, ...depthsOfFloor(subject.body.floor), 0.3),
      aboveM: Math.max(subject.body.freeboardM, previewLevelM ?? subject.body.levelM, 0),
      bedM: (fromM, toM) => floorBetween(subject.body.floor, fromM, toM),
    }
  }, [subject, previewLevelM])
  const others = useMemo(() => spec.bodies.slice(1), [spec.bodies])
  return { subject: useMemo(() => subject && { ...subject, others, troubles }, [subject, others, troubles]), content }
}

/** Deepest place of a floor between two distances along its axis; of a floor without one, wherever it is [m]. */
export function floorBetween(floor: Floor, fromM: number, toM: number): number {
  if (floor.kind !== 'profile') return Math.max(0, ...depthsOfFloor(floor))
  const { stations } = floor
  const inside = stations.filter(([s]) => s > fromM && s < toM).map(([, depthM]) => depthM)
  return Math.max(...inside, floorAt(stations, fromM), floorAt(stations, toM))
}

function floorAt(stations: readonly (readonly [sM: number, depthM: number])[], sM: number): number {
  const next = stations.findIndex(([s]) => s >= sM)
  const [b, a] = [stations[next], stations[next - 1]]
  if (!b) return stations.at(-1)?.[1] ?? 0
  return a ? a[1] + ((b[1] - a[1]) * (sM - a[0])) / (b[0] - a[0]) : b[1]
}
