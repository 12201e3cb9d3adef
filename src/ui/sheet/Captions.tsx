import { memo, useMemo } from 'react'
import { boundsOf } from '../../basin/index.ts'
import { isLineAssumed } from '../../document/index.ts'
import { formatQuantity } from '../../units/index.ts'
import { useUnits } from '../context.tsx'
import { assumedNote } from '../ledger/basin/assumed-words.ts'
import { acrossLineY } from '../plan/Dimensions.tsx'
import styles from '../plan/plan.module.css'
import type { Subject } from './useScene.ts'
import { boundsInSheet, isNarrow, type Panes, type View } from './view.ts'

interface Props {
  readonly view: View
  readonly panes: Panes
  readonly subject: Subject
}

/** Where the plan's name stands [px]. */
const NAME_Y = 22

const FROM_WORDS = {
  waterline: '',
  'water-now': 'depths from the water now',
  'tile-line': 'depths from the tile line',
  rim: 'depths from the rim',
} as const

/** The names of the two projections, and what a reader of their figures must know. */
export const Captions = memo(function Captions({ view, panes, subject }: Props) {
  const units = useUnits()
  const { body } = subject
  const from = FROM_WORDS[body.depthsMeasuredFrom ?? 'waterline']
  const sketch = body.sketch ? 'sketch, not to scale yet' : ''
  const assumed = assumedNote(body)
  const { outline, islands, floor } = body
  const isAssumed = useMemo(() => isLineAssumed({ outline, islands, floor }), [outline, islands, floor])
  const line = isAssumed ? 'depth line assumed: draw your own' : ''
  const stretch = view.stretch === 1 ? '' : `vertical × ${view.stretch}`
  const level =
    body.levelM === 0
      ? ''
      : `water ${formatQuantity('length', Math.abs(body.levelM), units)} ${body.levelM < 0 ? 'below' : 'above'} its normal line`
  const notes = [stretch, level, assumed, line]
  return (
    <>
      <Caption x={18} y={NAME_Y} name="PLAN" notes={[sketch, from]} under={belowLine(topOf(body, view, panes))} />
      <Caption
        x={18}
        y={panes.planHeight + 16}
        name="SECTION A–A′"
        notes={isNarrow(panes) ? shortNotes(notes, panes) : notes}
      />
    </>
  )
})

/** What the section's name and the scale's bar take of its line at most, and a letter of the notes [px]. */
const [BESIDE_PX, NOTE_PX] = [200, 5.8]

/** On narrow paper each note without its advice, and of them those that find room; the ledger says all of it too. */
export function shortNotes(notes: readonly string[], { width }: Pick<Panes, 'width'>): readonly string[] {
  let left = width - BESIDE_PX
  return notes
    .map((note) => note.split(':')[0] ?? note)
    .filter((note) => {
      const px = note.length * NOTE_PX
      if (px > left) return false
      left -= px
      return true
    })
}

/** The outline's uppermost place on the screen [px]. */
function topOf(body: Subject['body'], view: View, panes: Panes): number {
  const { maxY } = boundsInSheet(boundsOf(body.outline), view.turn)
  return panes.planHeight / 2 - (maxY - view.v) * view.scale
}

const UNDER_PX = 15
/** How near a line may run to the notes' base, over it and under it [px]. */
const [OVER_PX, BELOW_PX] = [14, 5]

/** How far below the plan's name its notes stand, so that the line of the overall length doesn't strike them out [px]. */
export function belowLine(topPx: number): number {
  const line = acrossLineY(topPx) - NAME_Y
  return line > UNDER_PX - OVER_PX && line < UNDER_PX + BELOW_PX ? line + OVER_PX : UNDER_PX
}

function Caption({
  x,
  y,
  name,
  notes,
  under,
}: {
  readonly x: number
  readonly y: number
  readonly name: string
  readonly notes: readonly string[]
  /** The notes stand that far below the name, where a dimension may run beside it [px]. */
  readonly under?: number
}) {
  const said = notes.filter((note) => note !== '').join(' · ')
  return (
    <text className={styles['caption']} x={x} y={y}>
      {name}
      {said === '' ? null : (
        <tspan className={styles['captionNote']} {...(under === undefined ? { dx: 8 } : { x, dy: under })}>
          {said}
        </tspan>
      )}
    </text>
  )
}
