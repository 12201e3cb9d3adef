import { useState } from 'react'
import type { Problem } from '../../../../base/index.ts'
import type { Product } from '../../../../chemicals/index.ts'
import {
  type Command,
  type CommandArgs,
  command,
  type LabelledProduct,
  type System,
} from '../../../../document/index.ts'
import { REGIMES } from '../../../../plan/index.ts'
import { useAppStore, useCanEdit, useUnits } from '../../../context.tsx'
import {
  Button,
  ChoiceField,
  DateTimeField,
  Disclosure,
  inOwnUnits,
  NumberField,
  ProblemNote,
  QuantityField,
  SwitchField,
  TextField,
} from '../../../fields/index.ts'
import { PURPOSES } from '../../water/products.ts'
import { productOf } from '../amounts.ts'
import styles from '../opening.module.css'
import { useProducts } from '../useProducts.ts'
import { basesOfId, LIKE } from './AddOwnProduct.tsx'
import { OwnPackages } from './OwnPackages.tsx'
import { ageingWords, BASES } from './shed-words.ts'

/** Some of what a label says; what is given as undefined is unknown from then on. */
export type LabelChange = CommandArgs<'setOwnProduct'>['product']

interface OwnProductFieldsProps {
  readonly own: LabelledProduct
  readonly index: number
  readonly system: System
}

/** One label, a field for each thing it says; how old it is, and what the plan takes it for. */
export function OwnProductFields({ own, index, system }: OwnProductFieldsProps) {
  const store = useAppStore()
  const units = useUnits()
  const canEdit = useCanEdit()
  const list = useProducts()
  const [refused, setRefused] = useState<Problem | undefined>()
  const product = productOf(own.id, list)
  const trouble = list?.problems.find(({ path }) => path.startsWith(`ownProducts[${index}]`))
  const ids = { systemId: system.id, id: own.id }
  const set = (change: LabelChange) => store.getState().dispatch(command('setOwnProduct', { ...ids, product: change }))
  return (
    <Disclosure title={own.label} aside={product?.strength ?? `${own.strength} ${BASES[own.basis].unit}`} level={4}>
      {trouble && <ProblemNote problem={trouble} />}
      {product?.ageing && <p>{ageingWords(product.ageing, own.basis, units)}</p>}
      <div className={styles['fields']}>
        <TextField label="What you call it" value={own.label} onChange={(label) => set({ label })} />
        <ChoiceField
          label="Made of the same as"
          value={own.like}
          options={LIKE}
          onChange={(like) => {
            const basis = basesOfId(like)
            set({ like, ...(basis[0] && !basis.includes(own.basis) ? { basis: basis[0] } : {}) })
          }}
        />
        <ChoiceField
          label="The label states"
          value={own.basis}
          options={basesOfId(own.like).map((id) => ({ id, label: BASES[id].label }))}
          onChange={(basis) => set({ basis })}
        />
        <NumberField
          label="Strength"
          value={own.strength}
          onChange={(strength) => (strength === undefined ? undefined : set({ strength }))}
          min={0}
          unitLabel={BASES[own.basis].unit}
          isRequired
        />
        <NumberField
          label="Density"
          value={own.densityKgPerL}
          onChange={(densityKgPerL) => set({ densityKgPerL })}
          min={0}
          unitLabel="kg/L"
          placeholder={product ? `usual: ${Number(product.densityGPerML.toPrecision(3))}` : 'unknown'}
        />
        {product && agesOf(product) && (
          <>
            <DateTimeField label="Bought" value={own.boughtAt} onChange={(boughtAt) => set({ boughtAt })} />
            <DateTimeField label="Opened" value={own.openedAt} onChange={(openedAt) => set({ openedAt })} />
            <QuantityField
              label="Kept at"
              quantity="temperature"
              value={own.storedC}
              onChange={(storedC) => set({ storedC })}
              min={-10}
              max={55}
              description={inOwnUnits('Liquid chlorine weakens with age, faster when warm. Empty: 20 °C.', units)}
            />
          </>
        )}
      </div>
      <OwnPackages own={own} system={system} set={set} />
      {product && <Purposes product={product} system={system} />}
      {refused && <ProblemNote problem={refused} />}
      {canEdit && (
        <div className={styles['buttons']}>
          <Button
            tone="quiet"
            onPress={() => setRefused(store.getState().dispatch({ id: 'removeOwnProduct', args: ids }))}
          >
            Remove {own.label}
          </Button>
        </div>
      )}
    </Disclosure>
  )
}

/** Whether its strength falls as it stands. */
function agesOf({ form, groups }: Product): boolean {
  return form === 'liquid' && groups.includes('hypochlorite')
}

/** What the plan may take it for: its substance decides, the owner chooses. */
function Purposes({ product, system }: { readonly product: Product; readonly system: System }) {
  const store = useAppStore()
  const edit = (change: Command) => store.getState().dispatch(change)
  const usual = REGIMES.get(system.regime.id)?.products
  const rows = PURPOSES.filter(
    ({ id, use }) => product.uses.includes(use) && !(id === 'openingChlorine' && product.form === 'tablet'),
  )
  return (
    <div className={styles['fields']}>
      {rows.map(({ id: purpose, label }) => (
        <SwitchField
          key={purpose}
          label={`The plan takes it for: ${label.charAt(0).toLowerCase()}${label.slice(1)}`}
          value={system.regime.products[purpose] === product.id}
          onChange={(isOn) => {
            const chosen = isOn ? product.id : usual?.[purpose]
            if (chosen) edit({ id: 'setProduct', args: { systemId: system.id, purpose, product: chosen } })
          }}
        />
      ))}
    </div>
  )
}
