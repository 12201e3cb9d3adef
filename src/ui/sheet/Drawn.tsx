import { useCallback, useMemo } from 'react'
import type { Point } from '../../basin/index.ts'
import { formatQuantity, type UnitSystem } from '../../units/index.ts'
import { AxisLine, Projections } from '../plan/AxisLine.tsx'
import { bandDepths } from '../plan/depth-steps.ts'
import { floorLabels } from '../plan/floor-labels.ts'
import { Neighbours } from '../plan/Neighbours.tsx'
import { PlanFigures } from '../plan/PlanFigures.tsx'
import { FloorDepths, FloorLines } from '../plan/PlanFloor.tsx'
import { PlanInk, PlanWater } from '../plan/PlanGround.tsx'
import { Proposal } from '../plan/Proposal.tsx'
import { Selected } from '../plan/Selected.tsx'
import { SectionDrawing } from '../section/SectionDrawing.tsx'
import { SectionLabels } from '../section/SectionLabels.tsx'
import { useUntangled } from '../useUntangled.ts'
import { Captions } from './Captions.tsx'
import { boxesInTheWay, projectionLines } from './drawn-places.ts'
import { drawnAxis, type Scene } from './scene.ts'
import type { Subject } from './useScene.ts'
import { useTintedParts } from './useTintedParts.ts'
import { type Panes, svgMatrix, type View } from './view.ts'

interface Props {
  readonly view: View
  readonly panes: Panes
  readonly units: UnitSystem
  readonly subject: Subject
  readonly scene: Scene
  readonly origin: Point
  readonly selectedKey: string | undefined
  /** Name of the clip paths of plan and section, where they are clipped at all. */
  readonly clip: string | undefined
}

/** What is drawn of the basin itself: water, ink, figures and section; nothing of it can be taken hold of. */
export function Drawn(props: Props) {
  const { view, panes, units, subject, scene, origin, clip } = props
  const { body, derived, section, maxDepthM, referenceM } = subject
  const parts = derived.partition.ok ? derived.partition.value : undefined
  const parted = useTintedParts(derived)
  // Where a wall takes all of the water there is nothing to tint; below a lowered level floor lies bare, which is drawn.
  const isDry = !derived.measures.ok && derived.measures.problem.path.startsWith('wall') && scene.levelM >= 0
  const tinted = isDry ? undefined : parted
  const depthsM = useMemo(
    () => bandDepths(maxDepthM + referenceM, units).flatMap((d) => (d > referenceM + 0.01 ? [d - referenceM] : [])),
    [maxDepthM, referenceM, units],
  )
  const write = useCallback(
    (depthM: number) =>
      formatQuantity('length', depthM + referenceM, units, units === 'metric' ? { digits: 2 } : { digits: 0 }),
    [referenceM, units],
  )
  const writeContour = useCallback(
    (depthM: number) => {
      const shown = depthM + referenceM
      if (units === 'metric')
        return formatQuantity('length', shown, units, {
          digits: Number.isInteger(Math.round(shown * 100) / 10) ? 1 : 2,
        })
      const feet = Math.round(shown / 0.3048)
      return Math.abs(shown - feet * 0.3048) < 1e-6
        ? `${feet} ft`
        : formatQuantity('length', shown, units, { digits: 0 })
    },
    [referenceM, units],
  )
  const stations = useMemo(() => (body.floor.kind === 'profile' ? body.floor.stations : []), [body.floor])
  const drawn = useMemo(() => drawnAxis(scene), [scene])
  const given = useMemo(() => floorLabels(scene, write), [scene, write])
  const taken = useMemo(
    () => [...boxesInTheWay(scene, drawn), ...given.map((label) => label.box)],
    [scene, drawn, given],
  )
  const projections = useMemo(() => projectionLines(scene, stations), [scene, stations])
  const untangled = useUntangled()
  const levelText = scene.levelM === 0 ? '' : formatQuantity('length', scene.levelM, units)
  return (
    <>
      <g {...(clip === undefined ? {} : { clipPath: `url(#${clip}-plan)` })}>
        <g transform={svgMatrix(view, panes, origin)}>
          {tinted ? <PlanWater parts={tinted} {...{ depthsM, maxDepthM, origin }} levelM={scene.levelM} /> : null}
          <PlanInk body={body} parts={parts} origin={origin} breaks={breaksOf(body, props.selectedKey)} />
          <FloorLines floor={body.floor} origin={origin} />
          <Neighbours others={subject.others} origin={origin} />
          {untangled?.bodyId === body.id ? <Proposal path={untangled.path} origin={origin} /> : null}
          <Selected body={body} selectedKey={props.selectedKey} origin={origin} />
        </g>
        <AxisLine axis={section.axis} {...{ drawn, stations, view, panes }} />
        <FloorDepths labels={given} maxDepthM={maxDepthM} levelM={scene.levelM} isTinted={tinted !== undefined} />
        {tinted ? (
          <PlanFigures
            parts={tinted}
            levelM={scene.levelM}
            {...{ depthsM, maxDepthM, view, panes, write, writeContour, taken }}
          />
        ) : null}
      </g>
      <Projections lines={projections} />
      <g {...(clip === undefined ? {} : { clipPath: `url(#${clip}-section)` })}>
        {parts ? (
          <SectionDrawing
            {...{ parts, view, panes, maxDepthM, levelText }}
            axis={section.axis}
            levelM={scene.levelM}
            freeboardM={body.freeboardM}
          />
        ) : null}
        <SectionLabels
          {...{ parts, stations, view, panes, maxDepthM, write }}
          axis={section.axis}
          levelM={scene.levelM}
        />
      </g>
      <Captions {...{ view, panes, subject }} />
    </>
  )
}

/** Where the floor bends is drawn; over soundings the net between them, while they are at hand; depth lines say it themselves. */
function breaksOf({ floor }: Subject['body'], selectedKey: string | undefined): 'all' | 'net' | 'none' {
  if (floor.kind === 'soundings') return selectedKey?.startsWith('sounding-') ? 'net' : 'none'
  return floor.kind === 'contours' || floor.kind === 'dish' ? 'none' : 'all'
}
