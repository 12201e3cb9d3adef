import type { Body } from '../../../document/index.ts'
import { formatQuantity } from '../../../units/index.ts'
import { useAppStore, useCanEdit, useUnits } from '../../context.tsx'
import { Button, LONGEST_M, QuantityField } from '../../fields/index.ts'
import { edits } from '../../sheet/edits.ts'
import styles from './basin.module.css'
import { lengthCaution } from './unusual.ts'
import { useEdit } from './useBasin.ts'

/** Two lengths that make a drawing out of a sketch. */
export function SketchNote({ body }: { readonly body: Body }) {
  const edit = useEdit()
  const units = useUnits()
  const canEdit = useCanEdit()
  const store = useAppStore()
  const { sketch } = body
  if (!sketch) return null
  const percent = formatQuantity('percent', 100 * sketch.scaleSigma, units)
  return (
    <div className={styles['sketch']}>
      <h4>This is a sketch</h4>
      <p className={styles['say']}>
        Its size is guessed to about {percent}, so its volume is hardly known. Two overall lengths, taken with a tape,
        scale it and make it a drawing.
      </p>
      <QuantityField
        label="Length, across the sheet"
        quantity="length"
        value={sketch.knownLengthM}
        min={0.1}
        max={LONGEST_M}
        onChange={(m) => (m === undefined ? undefined : edit('scaleSketch', { bodyId: body.id, lengthM: m }))}
        description={lengthCaution(sketch.knownLengthM ?? 0, units) ?? ''}
      />
      <QuantityField
        label="Width, up the sheet"
        quantity="length"
        value={sketch.knownWidthM}
        min={0.1}
        max={LONGEST_M}
        onChange={(m) => (m === undefined ? undefined : edit('scaleSketch', { bodyId: body.id, widthM: m }))}
        description={lengthCaution(sketch.knownWidthM ?? 0, units) ?? ''}
      />
      {canEdit ? (
        <div className={styles['buttons']}>
          <Button tone="quiet" onPress={() => store.getState().dispatch(edits.takeAsDrawn(body))}>
            It is drawn to scale
          </Button>
        </div>
      ) : null}
    </div>
  )
}
