import { useEffect } from 'react'
import { Button, LONGEST_M, QuantityField } from '../../fields/index.ts'
import { edits } from '../edits.ts'
import { Actions, Cell, Title } from './parts.tsx'
import styles from './strip.module.css'
import type { StripProps } from './types.ts'

/** A freehand drawing has a form but no size: two known lengths give it one. */
export function SketchStrip({ scene, give, toSheet }: StripProps & { readonly toSheet: () => void }) {
  // With the size said these fields go; the focus must not go with them to the page's start.
  useEffect(
    () => () => {
      if (document.activeElement === document.body) toSheet()
    },
    [toSheet],
  )
  const { body, view } = scene
  const { sketch } = body
  if (!sketch) return null
  // Lengths are kept along the plan's own axes; on a turned sheet they change places.
  const isTurned = view.turn % 2 === 1
  const along = isTurned ? 'widthM' : 'lengthM'
  const across = isTurned ? 'lengthM' : 'widthM'
  const known = { lengthM: sketch.knownLengthM, widthM: sketch.knownWidthM }
  const set = (which: 'lengthM' | 'widthM', si: number | undefined) =>
    si === undefined ? undefined : give(edits.scaleSketch(body.id, { [which]: si }))
  return (
    <>
      <Title name="How big is it?" />
      <Cell>
        <QuantityField
          label="From end to end"
          isCompact
          quantity="length"
          min={0.3}
          max={LONGEST_M}
          value={known[along]}
          onChange={(si) => set(along, si)}
        />
      </Cell>
      <Cell>
        <QuantityField
          label="How wide"
          isCompact
          quantity="length"
          min={0.3}
          max={LONGEST_M}
          value={known[across]}
          onChange={(si) => set(across, si)}
        />
      </Cell>
      <Actions>
        <Button onPress={() => give(edits.takeAsDrawn(body))}>Drawn to scale</Button>
      </Actions>
      <p className={styles['say']}>A sketch until both lengths are known: its volume is a rough guess.</p>
    </>
  )
}
