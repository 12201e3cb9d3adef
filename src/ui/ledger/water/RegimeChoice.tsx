import type { Product } from '../../../chemicals/index.ts'
import type { SurfaceKind, System } from '../../../document/index.ts'
import { type Purpose, REGIMES, regimeById, SURFACES } from '../../../plan/index.ts'
import { useApp, useAppStore } from '../../context.tsx'
import { ChoiceField, Disclosure } from '../../fields/index.ts'
import { productsFor } from '../opening/amounts.ts'
import styles from './water.module.css'

interface PurposeRow {
  readonly id: Purpose
  readonly label: string
  readonly use: Product['uses'][number]
}

const PURPOSES: readonly PurposeRow[] = [
  { id: 'acid', label: 'To lower pH and alkalinity', use: 'acid' },
  { id: 'alkalinity', label: 'To raise alkalinity', use: 'alkalinity' },
  { id: 'base', label: 'To raise pH', use: 'base' },
  { id: 'openingChlorine', label: 'First chlorine', use: 'chlorine' },
  { id: 'dailyChlorine', label: 'Daily chlorine', use: 'chlorine' },
  { id: 'calcium', label: 'Calcium', use: 'calcium' },
  { id: 'borate', label: 'Borate', use: 'borate' },
  { id: 'stabiliser', label: 'Stabiliser', use: 'stabiliser' },
  { id: 'salt', label: 'Salt', use: 'salt' },
]

/** How the water is kept sound, and with what. */
export function RegimeChoice({ system }: { readonly system: System }) {
  const store = useAppStore()
  const surface = useApp((state) => state.spec.site.surface)
  const regime = regimeById(system.regime.id)
  const dispatch = (id: string, args: object) =>
    store.getState().dispatch({ id, args: { systemId: system.id, ...args } })
  return (
    <section className={styles['section']}>
      <h2>How it is kept</h2>
      <div className={styles['form']}>
        <ChoiceField
          label="Way of chlorinating"
          value={regime.id}
          options={REGIMES.rows.map(({ id, label, summary }) => ({ id, label, note: summary }))}
          onChange={(id) => dispatch('setRegime', { id })}
          description={regime.summary}
        />
        <ChoiceField
          label="Lined with"
          value={surface}
          options={SURFACES.rows.flatMap(({ id, label }) => (id === 'unknown' ? [] : [{ id, label }]))}
          onChange={(id: SurfaceKind) => store.getState().dispatch({ id: 'setSite', args: { surface: id } })}
          placeholder="not stated"
          description="It sets the band for calcium and how much water may be exchanged at once."
        />
      </div>
      <Disclosure title="Products that the plan uses" level={3}>
        {PURPOSES.map((purpose) => (
          <ChoiceField
            key={purpose.id}
            label={purpose.label}
            value={system.regime.products[purpose.id] ?? regime.products[purpose.id]}
            options={optionsOf(purpose)}
            onChange={(product) => dispatch('setProduct', { purpose: purpose.id, product })}
          />
        ))}
      </Disclosure>
    </section>
  )
}

/** Gases go through licensed plant only and are not offered; a tablet is too slow for the first chlorine. */
function optionsOf(purpose: PurposeRow) {
  return productsFor(purpose.use)
    .filter((product) => product.form !== 'gas' && !(purpose.id === 'openingChlorine' && product.form === 'tablet'))
    .map(({ id, label, strength }) => ({ id, label, note: strength }))
}
