import type { Ref } from 'react'
import type { Untangled } from '../../../derive/index.ts'
import type { Command } from '../../../document/index.ts'
import { useApp } from '../../context.tsx'
import { Button } from '../../fields/index.ts'
import { useUntangled } from '../../useUntangled.ts'
import { edits } from '../edits.ts'
import type { Hands } from '../gestures.ts'
import { pathOfRing } from '../place-items.ts'
import { axisLength, type Scene } from '../scene.ts'
import { ContourStrip, DishStrip, SoundingStrip } from './FloorStrips.tsx'
import { NodeStrip } from './NodeStrip.tsx'
import { AxisStrip, DimensionStrip, FeatureStrip, StationStrip } from './OtherStrips.tsx'
import { Actions } from './parts.tsx'
import { Readout } from './Readout.tsx'
import { SideStrip } from './SideStrip.tsx'
import { SketchStrip } from './SketchStrip.tsx'
import styles from './strip.module.css'
import { ToolStrip } from './ToolStrip.tsx'
import type { StripProps } from './types.ts'
import { UntangleStrip } from './UntangleStrip.tsx'

interface Props {
  readonly scene: Scene | undefined
  readonly hands: Hands
  readonly stripRef: Ref<HTMLElement>
  /** Puts the keyboard's focus on the drawing. */
  readonly toSheet: () => void
}

/** The strip under the drawing: the numbers of what is selected, as fields; else what the tool wants or the depth here. */
export function Strip({ scene, hands, stripRef, toSheet }: Props) {
  const tool = useApp((state) => state.tool)
  const proposal = useUntangled()
  return (
    <section ref={stripRef} className={styles['strip']} aria-label="Numbers of the selection" data-screen-only>
      {tool !== 'select' ? (
        <ToolStrip tool={tool} hands={hands} />
      ) : scene ? (
        <SelectionStrip {...{ scene, hands, proposal, toSheet }} />
      ) : (
        <p className={styles['say']}>The sheet is blank.</p>
      )}
    </section>
  )
}

interface SelectionProps {
  readonly scene: Scene
  readonly hands: Hands
  readonly proposal: Untangled | undefined
  readonly toSheet: () => void
}

function SelectionStrip({ scene, hands, proposal, toSheet }: SelectionProps) {
  const give = (command: Command) => hands.app.getState().dispatch(command)
  const remove = (command: Command) => {
    if (give(command)) return
    hands.app.getState().select(undefined)
    hands.local.setState({ spoken: 'Removed.' })
    toSheet()
  }
  const props: StripProps = { scene, hands, give, remove }
  return (
    <>
      {proposal ? <UntangleStrip {...{ ...props, proposal, toSheet }} /> : null}
      <SelectedFields {...props} toSheet={toSheet} />
    </>
  )
}

function SelectedFields({ scene, hands, give, remove, toSheet }: StripProps & Pick<Props, 'toSheet'>) {
  const selection = useApp((state) => state.selection)
  const props: StripProps = { scene, hands, give, remove }
  if (!scene.canEdit || !selection || selection.bodyId !== scene.body.id) {
    return (
      <>
        {scene.canEdit && scene.body.sketch ? <SketchStrip {...props} toSheet={toSheet} /> : <Readout scene={scene} />}
        {scene.canEdit && scene.body.floor.kind === 'flat' ? <Slope {...props} /> : null}
      </>
    )
  }
  switch (selection.kind) {
    case 'node':
    case 'segment': {
      if (selection.ring.of === 'feature') return <FeatureStrip {...props} feature={selection.ring.index} />
      const { ring } = selection
      const path = pathOfRing(scene, ring)
      if (!path) return <Readout scene={scene} />
      return selection.kind === 'node' ? (
        <NodeStrip
          key={`${JSON.stringify(ring)}-${selection.node}`}
          {...props}
          ring={ring}
          path={path}
          node={selection.node}
        />
      ) : (
        <SideStrip
          key={`${JSON.stringify(ring)}-${selection.segment}`}
          {...props}
          ring={ring}
          path={path}
          segment={selection.segment}
        />
      )
    }
    case 'contour':
      return <ContourStrip key={selection.contour} {...props} contour={selection.contour} />
    case 'sounding':
      return <SoundingStrip key={selection.sounding} {...props} sounding={selection.sounding} />
    case 'dish':
      return <DishStrip {...props} />
    case 'station':
      return <StationStrip key={selection.station} {...props} station={selection.station} />
    case 'axis':
      return <AxisStrip key={selection.end} {...props} end={selection.end} />
    case 'feature':
      return <FeatureStrip key={selection.feature} {...props} feature={selection.feature} />
    case 'dimension':
      return <DimensionStrip key={selection.axis} {...props} axis={selection.axis} />
  }
}

/** A flat floor has no stations: this gives it two, at the depth that it has. */
function Slope({ scene, give }: StripProps) {
  const { body, section } = scene
  if (body.floor.kind !== 'flat') return null
  const { depthM } = body.floor
  return (
    <Actions>
      <Button
        onPress={() =>
          give(
            edits.setFloor(body.id, {
              kind: 'profile',
              axis: section.axis,
              stations: [
                [0, depthM],
                [axisLength(section.axis), depthM],
              ],
            }),
          )
        }
      >
        Give the floor a slope
      </Button>
    </Actions>
  )
}
