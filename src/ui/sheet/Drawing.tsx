import { type RefObject, useId, useMemo } from 'react'
import type { Point } from '../../basin/index.ts'
import { boundsOf } from '../../basin/index.ts'
import type { UnitSystem } from '../../units/index.ts'
import { Dimensions } from '../plan/Dimensions.tsx'
import { ControlArms, Handles } from '../plan/Handles.tsx'
import { OriginMark } from '../plan/OriginMark.tsx'
import { Overlay } from '../plan/Overlay.tsx'
import { Troubles } from '../plan/Troubles.tsx'
import { Drawn } from './Drawn.tsx'
import type { PlacedItem } from './items.ts'
import styles from './Sheet.module.css'
import { ScaleBar, SheetGrid } from './SheetGrid.tsx'
import type { Scene } from './scene.ts'
import type { Subject } from './useScene.ts'
import type { Panes, View } from './view.ts'

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
        <OriginMark view={view} panes={panes} hasBody={subject !== undefined} />
        {subject ? <Troubles problems={subject.troubles} {...{ view, panes, units }} /> : null}
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
        scaleSigma={subject.body.sketch?.scaleSigma ?? 0}
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
