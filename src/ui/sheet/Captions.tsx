import { memo, useMemo } from 'react'
import { isLineAssumed } from '../../document/index.ts'
import { formatQuantity } from '../../units/index.ts'
import { useUnits } from '../context.tsx'
import { assumedNote } from '../ledger/basin/assumed-words.ts'
import styles from '../plan/plan.module.css'
import type { Subject } from './useScene.ts'
import type { Panes, View } from './view.ts'

interface Props {
  readonly view: View
  readonly panes: Panes
  readonly subject: Subject
}

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
  return (
    <>
      <Caption x={18} y={22} name="PLAN" notes={[sketch, from]} isStacked />
      <Caption x={18} y={panes.planHeight + 16} name="SECTION A–A′" notes={[stretch, level, assumed, line]} />
    </>
  )
})

function Caption({
  x,
  y,
  name,
  notes,
  isStacked = false,
}: {
  readonly x: number
  readonly y: number
  readonly name: string
  readonly notes: readonly string[]
  /** The notes stand below the name, where a dimension may run beside it. */
  readonly isStacked?: boolean
}) {
  const said = notes.filter((note) => note !== '').join(' · ')
  return (
    <text className={styles['caption']} x={x} y={y}>
      {name}
      {said === '' ? null : (
        <tspan className={styles['captionNote']} {...(isStacked ? { x, dy: 15 } : { dx: 8 })}>
          {said}
        </tspan>
      )}
    </text>
  )
}
