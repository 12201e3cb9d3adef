import type { Body } from '../../document/index.ts'
import { useAppStore } from '../context.tsx'
import { QuantityField } from '../fields/index.ts'
import { edits } from './edits.ts'
import styles from './Sheet.module.css'
import type { Turn } from './view.ts'

interface Props {
  readonly body: Body
  readonly turn: Turn
}

/** A freehand drawing has a form but no size: two known lengths give it one. */
export function SketchPrompt({ body, turn }: Props) {
  const store = useAppStore()
  const { sketch } = body
  if (!sketch) return null
  // Lengths are kept along the plan's own axes; on a turned sheet they change places.
  const isTurned = turn % 2 === 1
  const along = isTurned ? 'widthM' : 'lengthM'
  const across = isTurned ? 'lengthM' : 'widthM'
  const known = { lengthM: sketch.knownLengthM, widthM: sketch.knownWidthM }
  const give = (which: 'lengthM' | 'widthM', si: number | undefined) =>
    si === undefined ? undefined : store.getState().dispatch(edits.scaleSketch(body.id, { [which]: si }))
  return (
    <section className={styles['prompt']} aria-label="Size of the sketch" data-screen-only>
      <p className={styles['promptTitle']}>How big is it?</p>
      <p className={styles['promptText']}>A sketch until both are known; its volume is a rough guess.</p>
      <QuantityField
        label="From end to end"
        quantity="length"
        min={0.3}
        value={known[along]}
        onChange={(si) => give(along, si)}
      />
      <QuantityField
        label="How wide"
        quantity="length"
        min={0.3}
        value={known[across]}
        onChange={(si) => give(across, si)}
      />
    </section>
  )
}
