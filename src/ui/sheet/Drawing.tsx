import { type RefObject, useCallback, useId, useMemo } from 'react'
import type { Point } from '../../basin/index.ts'
import { boundsOf } from '../../basin/index.ts'
import { formatQuantity, type UnitSystem } from '../../units/index.ts'
import { AxisLine, Projections } from '../plan/AxisLine.tsx'
import { axisNames } from '../plan/axis-names.ts'
import { Dimensions } from '../plan/Dimensions.tsx'
import { bandDepths } from '../plan/depth-steps.ts'
import { floorLabels } from '../plan/floor-labels.ts'
import { ControlArms, Handles } from '../plan/Handles.tsx'
import type { Box } from '../plan/labels.ts'
import { nodesOf } from '../plan/nodes.ts'
import { Overlay } from '../plan/Overlay.tsx'
import { PlanFigures } from '../plan/PlanFigures.tsx'
import { FloorDepths, FloorLines } from '../plan/PlanFloor.tsx'
import { PlanInk, PlanWater } from '../plan/PlanGround.tsx'
import { Selected } from '../plan/Selected.tsx'
import { Troubles } from '../plan/Troubles.tsx'
import { SectionDrawing } from '../section/SectionDrawing.tsx'
import { SectionLabels } from '../section/SectionLabels.tsx'
import { Captions } from './Captions.tsx'
import type { PlacedItem } from './items.ts'
import { seenMiddle } from './place-items.ts'
import styles from './Sheet.module.css'
import { ScaleBar, SheetGrid } from './SheetGrid.tsx'
import { axisEnds, drawnAxis, planPx, pointOnAxis, type Scene } from './scene.ts'
import type { Subject } from './useScene.ts'
import { useTintedParts } from './useTintedParts.ts'
import { type Panes, sectionToScreen, svgMatrix, type View } from './view.ts'

interface Props {
  readonly view: View
  readonly panes: Panes
  readonly units: UnitSystem
  readonly subject: Subject | undefined
  readonly scene: Scene | undefined
  readonly items: readonly PlacedItem[]
  readonly armed: readonly { readonly from: Point; readonly to: Point }[]
  readonly selectedKey: string | undefined
  readonly tabKey: string | undefined
  readonly svgRef: RefObject<SVGSVGElement | null>
  /** Plan and section keep to their own panes, as they must when either is larger than its pane. */
  readonly isClipped: boolean
  readonly onFocusItem: (item: PlacedItem) => void
  readonly onDimension: (axis: 'x' | 'y') => void
}

/** The drawing: plan above, section below it at the same scale; over it, what can be taken hold of. */
export function Drawing(props: Props) {
  const { view, panes, units, subject, scene, svgRef } = props
  const id = useId()
  const origin = useOrigin(subject)
  const frame = { viewBox: `0 0 ${panes.width} ${panes.height}`, width: '100%', height: '100%' }
  return (
    <>
      <svg {...frame} aria-hidden="true">
        <defs>
          <clipPath id={`${id}-plan`}>
            <rect x={0} y={0} width={panes.width} height={panes.planHeight} />
          </clipPath>
          <clipPath id={`${id}-section`}>
            <rect x={0} y={panes.planHeight} width={panes.width} height={panes.height - panes.planHeight} />
          </clipPath>
        </defs>
        <SheetGrid view={view} panes={panes} units={units} />
        {subject && scene ? (
          <Drawn
            view={view}
            panes={panes}
            units={units}
            {...{ subject, scene, origin }}
            clip={props.isClipped ? id : undefined}
            selectedKey={props.selectedKey}
          />
        ) : null}
        {subject ? <Troubles problems={subject.troubles} view={view} panes={panes} /> : null}
        {subject ? <ScaleBar view={view} panes={panes} units={units} /> : null}
      </svg>
      {subject && scene ? (
        <svg {...frame} ref={svgRef} className={styles['grips']}>
          <title>What can be taken hold of</title>
          <Grips {...props} subject={subject} scene={scene} />
        </svg>
      ) : null}
      <svg {...frame} className={styles['overlay']} aria-hidden="true">
        <Overlay view={view} panes={panes} origin={origin} />
      </svg>
    </>
  )
}

interface GripsProps extends Props {
  readonly subject: Subject
  readonly scene: Scene
}

/** Overall dimensions, points, stations, features: whatever has the keyboard's focus in turn. */
function Grips({
  view,
  panes,
  units,
  subject,
  scene,
  items,
  armed,
  selectedKey,
  tabKey,
  onFocusItem,
  onDimension,
}: GripsProps) {
  const bounds = useMemo(() => boundsOf(subject.body.outline), [subject.body.outline])
  return (
    <>
      <Dimensions
        {...{ bounds, view, panes, units }}
        canEdit={scene.canEdit}
        selected={selectedKey === 'dimension-x' ? 'x' : selectedKey === 'dimension-y' ? 'y' : undefined}
        onPress={onDimension}
      />
      {scene.canEdit ? (
        <>
          <ControlArms arms={armed} />
          <Handles {...{ items, selectedKey, tabKey }} isCoarse={scene.isCoarse} onFocus={onFocusItem} />
        </>
      ) : null}
    </>
  )
}

/** A whole metre near the drawing, from which its paths are counted: far coordinates keep their digits. */
function useOrigin(subject: Subject | undefined): Point {
  const box = subject && boundsOf(subject.body.outline)
  const x = box ? Math.round((box.minX + box.maxX) / 2) : 0
  const y = box ? Math.round((box.minY + box.maxY) / 2) : 0
  return useMemo(() => [x, y], [x, y])
}

interface DrawnProps extends Pick<Props, 'view' | 'panes' | 'units' | 'selectedKey'> {
  readonly subject: Subject
  readonly scene: Scene
  readonly origin: Point
  readonly clip: string | undefined
}

function Drawn(props: DrawnProps) {
  const { view, panes, units, subject, scene, origin, clip } = props
  const { body, derived, section, maxDepthM, referenceM } = subject
  const parts = derived.partition.ok ? derived.partition.value : undefined
  const tinted = useTintedParts(derived)
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
  const levelText = scene.levelM === 0 ? '' : formatQuantity('length', scene.levelM, units)
  return (
    <>
      <g {...(clip === undefined ? {} : { clipPath: `url(#${clip}-plan)` })}>
        <g transform={svgMatrix(view, panes, origin)}>
          {tinted ? <PlanWater parts={tinted} {...{ depthsM, maxDepthM, origin }} levelM={scene.levelM} /> : null}
          <PlanInk body={body} parts={parts} origin={origin} breaks={breaksOf(body, props.selectedKey)} />
          <FloorLines floor={body.floor} origin={origin} />
          <Selected body={body} selectedKey={props.selectedKey} origin={origin} />
        </g>
        <AxisLine axis={section.axis} {...{ drawn, stations, view, panes }} />
        <FloorDepths labels={given} maxDepthM={maxDepthM} isTinted={tinted !== undefined} />
        {tinted ? (
          <PlanFigures parts={tinted} {...{ depthsM, maxDepthM, view, panes, write, writeContour, taken }} />
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

/** Dashed lines from the plan to the section: from each station, and from where the line meets the outer walls. */
function projectionLines(scene: Scene, stations: readonly (readonly [number, number])[]) {
  const { axis } = scene.section
  const ends = axisEnds(scene)
  const places: [number, number][] = stations.map(([sM, depthM]) => [sM, depthM])
  if (ends) places.push([ends[0], 0], [ends[1], 0])
  return places.flatMap(([sM, depthM]) => {
    if (ends && (sM < ends[0] - 1e-9 || sM > ends[1] + 1e-9)) return []
    const from = planPx(scene, pointOnAxis(axis, sM))
    const to = sectionToScreen(scene.view, scene.panes, axis.from, [sM, depthM])
    return from[1] < scene.panes.planHeight ? [{ from, to }] : []
  })
}

/** What figures in the plan keep off: points, the names and the line of the section. */
function boxesInTheWay(scene: Scene, drawn: readonly [number, number]): Box[] {
  const { axis } = scene.section
  const around = (at: Point, half: number): Box => ({ x: at[0], y: at[1], halfWidth: half, halfHeight: half })
  const nodes = scene.canEdit ? nodesOf(scene.body.outline).map((p) => around(planPx(scene, p), 9)) : []
  const names = axisNames({ axis, drawn, view: scene.view, panes: scene.panes })
  const length = drawn[1] - drawn[0]
  const count = Math.min(400, Math.ceil((length * scene.view.scale) / 12))
  const line = Array.from({ length: count }, (_, i) =>
    around(planPx(scene, pointOnAxis(axis, drawn[0] + ((i + 0.5) / count) * length)), 5),
  )
  const grips = scene.canEdit
    ? scene.body.features.map((_, i) => seenMiddle(scene, i)).filter((p) => p !== undefined)
    : []
  return [...nodes, ...line, ...grips.map((p) => around(planPx(scene, p), 6)), around(names.a, 12), around(names.b, 12)]
}
