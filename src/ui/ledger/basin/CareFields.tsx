import type { Body } from '../../../document/index.ts'
import { formatQuantity } from '../../../units/index.ts'
import { useUnits } from '../../context.tsx'
import { ChoiceField, QuantityField } from '../../fields/index.ts'
import styles from './basin.module.css'
import { CARES, careOf } from './measured.ts'
import { useEdit } from './useBasin.ts'

/** How well it was measured: what the ± of the volume comes from. */
export function CareFields({ body }: { readonly body: Body }) {
  const edit = useEdit()
  const units = useUnits()
  const { tolerance } = body
  const change = (next: Body['tolerance']) => edit('setTolerance', { bodyId: body.id, tolerance: next })
  const length = (m: number) =>
    `± ${formatQuantity('length', m, units, units === 'metric' ? { digits: 3 } : { digits: 2 })}`
  const care = careOf(tolerance)
  return (
    <div className={styles['group']}>
      <ChoiceField
        label="How well measured"
        value={care?.id}
        placeholder="as typed below"
        options={CARES.map(({ id, label, tolerance: t }) => ({
          id,
          label,
          note: `${length(t.planM)} in plan, ${length(t.depthM)} in depth`,
        }))}
        onChange={(id) => {
          const picked = CARES.find((row) => row.id === id)
          if (picked) change(picked.tolerance)
        }}
      />
      <QuantityField
        label="A point in plan, ±"
        quantity="length"
        value={tolerance.planM}
        min={0}
        isRequired
        onChange={(planM) => (planM === undefined ? undefined : change({ ...tolerance, planM }))}
      />
      <QuantityField
        label="A depth, ±"
        quantity="length"
        value={tolerance.depthM}
        min={0}
        isRequired
        onChange={(depthM) => (depthM === undefined ? undefined : change({ ...tolerance, depthM }))}
        description="Two in three are nearer than this (one standard deviation)."
      />
    </div>
  )
}
