import type { Tolerance } from '../../../basin/index.ts'
import type { Body } from '../../../document/index.ts'
import { formatQuantity } from '../../../units/index.ts'
import { useUnits } from '../../context.tsx'
import { ChoiceField, Disclosure, LONGEST_M, NumberField, QuantityField } from '../../fields/index.ts'
import styles from './basin.module.css'
import { CARES, careOf } from './measured.ts'
import { useEdit } from './useBasin.ts'

type Shared = Pick<Tolerance, 'tapeScale' | 'datumM'>

/** The tolerance with errors that all measurements share; none is left out of the document. */
function shared(tolerance: Tolerance, changes: Shared): Tolerance {
  const { tapeScale, datumM, ...own } = { ...tolerance, ...changes }
  return { ...own, ...(tapeScale ? { tapeScale } : {}), ...(datumM ? { datumM } : {}) }
}

const sharedWords = ({ tapeScale, datumM }: Tolerance) => (tapeScale || datumM ? 'set' : 'none')
const rounded = (percent: number) => Math.round(percent * 1e4) / 1e4

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
          if (picked) change({ ...tolerance, ...picked.tolerance })
        }}
      />
      <QuantityField
        label="A point in plan, ±"
        quantity="length"
        value={tolerance.planM}
        min={0}
        max={LONGEST_M}
        isRequired
        onChange={(planM) => (planM === undefined ? undefined : change({ ...tolerance, planM }))}
      />
      <QuantityField
        label="A depth, ±"
        quantity="length"
        value={tolerance.depthM}
        min={0}
        max={LONGEST_M}
        isRequired
        onChange={(depthM) => (depthM === undefined ? undefined : change({ ...tolerance, depthM }))}
        description="Two in three are nearer than this (one standard deviation)."
      />
      <Disclosure isLazy title="Errors that all measurements share" aside={sharedWords(tolerance)}>
        <p className={styles['say']}>
          A tape that has stretched, or a waterline that was read wrong, puts every figure off the same way: such errors
          don’t cancel out. Leave them at none if you don’t know.
        </p>
        <NumberField
          label="The tape’s scale, ±"
          unitLabel="%"
          value={rounded((tolerance.tapeScale ?? 0) * 100)}
          min={0}
          max={20}
          isRequired
          onChange={(percent) =>
            percent === undefined ? undefined : change(shared(tolerance, { tapeScale: percent / 100 }))
          }
          description="All lengths in plan together. A cloth tape may be off by 0.2 %; paces by 5 %."
        />
        <QuantityField
          label="The waterline, ±"
          quantity="length"
          value={tolerance.datumM ?? 0}
          min={0}
          max={LONGEST_M}
          isRequired
          onChange={(datumM) => (datumM === undefined ? undefined : change(shared(tolerance, { datumM })))}
          description="All depths together: how well the line is known that they were measured from."
        />
      </Disclosure>
    </div>
  )
}
