import type { Command } from '../../../document/index.ts'
import { REGIMES } from '../../../plan/index.ts'
import { useAppStore } from '../../context.tsx'
import { ChoiceField, Disclosure, SegmentedField } from '../../fields/index.ts'
import { Section } from '../basin/Section.tsx'
import { useProducts } from '../opening/useProducts.ts'
import { PURPOSES, productOptions } from './products.ts'
import type { NumberedProps } from './Readings.tsx'
import styles from './water.module.css'

const PACKAGES = [
  { id: 'us', label: 'pounds and US gallons' },
  { id: 'metric', label: 'kilograms and litres' },
] as const

/** How the water is kept sound, and with what. */
export function RegimeChoice({ system, number }: NumberedProps) {
  const store = useAppStore()
  const list = useProducts()
  const regime = REGIMES.get(system.regime.id)
  const edit = (command: Command) => store.getState().dispatch(command)
  const systemId = system.id
  return (
    <Section number={number} title="How it is kept">
      <ChoiceField
        label="Way of chlorinating"
        value={regime?.id}
        options={REGIMES.rows.map(({ id, label, summary }) => ({ id, label, note: summary }))}
        onChange={(id) => edit({ id: 'setRegime', args: { systemId, id } })}
        placeholder="choose one: the targets follow from it"
        description={regime?.summary}
        isCompact
      />
      <div className={styles['products']}>
        <SegmentedField
          label="Packages are sold in"
          value={system.regime.packages ?? 'metric'}
          options={PACKAGES}
          onChange={(packages) => edit({ id: 'setRegime', args: { systemId, packages } })}
        />
        <Disclosure title="Products that the plan uses">
          {PURPOSES.map((purpose) => (
            <ChoiceField
              key={purpose.id}
              label={purpose.label}
              value={system.regime.products[purpose.id] ?? regime?.products[purpose.id]}
              options={productOptions(purpose.id, list)}
              onChange={(product) => edit({ id: 'setProduct', args: { systemId, purpose: purpose.id, product } })}
            />
          ))}
        </Disclosure>
      </div>
    </Section>
  )
}
