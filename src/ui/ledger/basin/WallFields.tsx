import type { Body } from '../../../document/index.ts'
import { QuantityField, SegmentedField } from '../../fields/index.ts'
import styles from './basin.module.css'
import { useEdit } from './useBasin.ts'

/** Radius of a cove until it is measured [m]; common practice, no source. */
const USUAL_COVE_M = 0.3

/** How floor and wall meet. */
export function WallFields({ body }: { readonly body: Body }) {
  const edit = useEdit()
  const { wall } = body
  const change = (next: Body['wall']) => edit('setWall', { bodyId: body.id, wall: next })
  return (
    <div className={styles['group']}>
      <SegmentedField
        label="Floor meets wall"
        value={wall.kind}
        options={[
          { id: 'vertical', label: 'square' },
          { id: 'cove', label: 'in a cove' },
        ]}
        onChange={(kind) => change(kind === 'cove' ? { kind, radiusM: USUAL_COVE_M } : { kind })}
      />
      {wall.kind === 'cove' ? (
        <QuantityField
          label="Radius of the cove"
          quantity="length"
          value={wall.radiusM}
          min={0}
          isRequired
          onChange={(radiusM) => (radiusM === undefined ? undefined : change({ kind: 'cove', radiusM }))}
        />
      ) : null}
    </div>
  )
}
