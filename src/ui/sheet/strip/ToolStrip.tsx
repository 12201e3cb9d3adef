import type { Path } from '../../../basin/index.ts'
import type { Tool } from '../../../state/index.ts'
import { Button } from '../../fields/index.ts'
import { canClose, draftAfter } from '../../plan/points-draft.ts'
import { giveContour } from '../floor-gestures.ts'
import { giveOutline, type Hands } from '../gestures.ts'
import { useLocal } from '../local.ts'
import { closeDraft } from '../place-points.ts'
import { Actions, Kinds, Title } from './parts.tsx'
import { SoundingToolStrip } from './SoundingToolStrip.tsx'
import styles from './strip.module.css'

const HINTS: Readonly<
  Record<Exclude<Tool, 'select' | 'points' | 'contour' | 'sounding' | 'bench'>, readonly [name: string, hint: string]>
> = {
  freehand: ['Draw a loop', 'Keep the pointer down and go once around the pool. Its size is asked afterwards.'],
  shelf: ['Shelf', 'Drag from the wall into the water. A press alone places one of usual size.'],
  steps: ['Steps', 'Drag from the wall to where the last tread ends. A press alone places usual steps.'],
  ramp: ['Ramp', 'Drag from the wall to where the slope ends. A press alone places one of usual length.'],
  'round-steps': ['Round steps', 'Drag from a corner or wall outward. A press alone places usual steps.'],
}
const KINDS = [
  { id: 'smooth', label: 'Smooth' },
  { id: 'corner', label: 'Corner' },
] as const

/** What the tool in hand wants, in one line. */
export function ToolStrip({ tool, hands }: { readonly tool: Exclude<Tool, 'select'>; readonly hands: Hands }) {
  const leave = () => {
    hands.local.setState({ draft: draftAfter(hands.local.getState().draft, { do: 'start-over' }), cursor: undefined })
    hands.app.getState().setTool('select')
  }
  const untangled = useLocal((state) => state.untangled)
  if (untangled) return <TangledStrip hands={hands} path={untangled} isContour={tool === 'contour'} onLeave={leave} />
  if (tool === 'points' || tool === 'contour')
    return <PointsStrip hands={hands} isContour={tool === 'contour'} onLeave={leave} />
  if (tool === 'sounding') return <SoundingToolStrip hands={hands} onLeave={leave} />
  if (tool === 'bench') return <BenchStrip onLeave={leave} />
  const [name, hint] = HINTS[tool]
  return (
    <>
      <Title name={name} />
      <p className={styles['say']}>
        {hint}
        {tool === 'freehand' ? ' Keys: Enter places points instead.' : ' Keys: arrows move, Enter begins and places.'}
      </p>
      <Actions>
        <Button onPress={leave}>Cancel</Button>
      </Actions>
    </>
  )
}

interface TangledProps {
  readonly hands: Hands
  readonly path: Path
  readonly isContour: boolean
  readonly onLeave: () => void
}

/** The loop that was drawn crosses itself: the dashed one on the plan may be taken instead. */
function TangledStrip({ hands, path, isContour, onLeave }: TangledProps) {
  const take = () => {
    if (isContour) giveContour(hands, path)
    else giveOutline(hands, path)
  }
  return (
    <>
      <Title name="The line crosses itself" />
      <p className={styles['say']}>Dashed: nearly the same line, free of itself. Or draw again.</p>
      <Actions>
        <Button tone="main" onPress={take}>
          Use the untangled line
        </Button>
        <Button onPress={onLeave}>Cancel</Button>
      </Actions>
    </>
  )
}

function BenchStrip({ onLeave }: { readonly onLeave: () => void }) {
  const from = useLocal((state) => state.benchFrom)
  return (
    <>
      <Title name="Bench along the wall" note={from === undefined ? undefined : `from side ${from + 1}`} />
      <p className={styles['say']}>
        {from === undefined
          ? 'Press the side of the pool where the bench begins. Keys: arrows go from side to side, Enter begins.'
          : 'Now the side where it ends, or the same side again. Keys: arrows, then Enter.'}
      </p>
      <Actions>
        <Button onPress={onLeave}>Cancel</Button>
      </Actions>
    </>
  )
}

interface PointsProps {
  readonly hands: Hands
  readonly isContour: boolean
  readonly onLeave: () => void
}

function PointsStrip({ hands, isContour, onLeave }: PointsProps) {
  const draft = useLocal((state) => state.draft)
  const { local } = hands
  return (
    <>
      <Title
        name={isContour ? 'Draw a depth line' : 'Place points'}
        note={draft.points.length === 0 ? undefined : `${draft.points.length} placed`}
      />
      <Kinds
        label="Kind of the next point"
        value={draft.isSmooth ? 'smooth' : 'corner'}
        options={KINDS}
        onChange={() => local.setState({ draft: draftAfter(draft, { do: 'toggle' }) })}
      />
      <p className={styles['say']}>
        {isContour
          ? 'Draw once around, or tap point by point and the first again to close. Its depth is asked afterwards.'
          : 'Tap along the pool; tap the first point to close. Keys: arrows move along the grid (Shift five lines, Ctrl finely), Enter places, Enter again closes, C corner.'}
      </p>
      <Actions>
        <Button
          isDisabled={draft.points.length === 0}
          onPress={() => local.setState({ draft: draftAfter(draft, { do: 'remove-last' }) })}
        >
          Take back
        </Button>
        <Button tone="main" isDisabled={!canClose(draft)} onPress={() => closeDraft(hands)}>
          {isContour ? 'Close line' : 'Close outline'}
        </Button>
        <Button onPress={onLeave}>Cancel</Button>
      </Actions>
    </>
  )
}
