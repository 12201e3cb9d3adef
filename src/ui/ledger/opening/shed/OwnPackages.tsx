import { useState } from 'react'
import type { Problem } from '../../../../base/index.ts'
import type { LabelledProduct, System } from '../../../../document/index.ts'
import { formatQuantity } from '../../../../units/index.ts'
import { useAppStore, useCanEdit, useUnits } from '../../../context.tsx'
import { Button, NumberField, QuantityField } from '../../../fields/index.ts'
import { gFromAmount, measureOf, productOf } from '../amounts.ts'
import styles from '../opening.module.css'
import { useProducts } from '../useProducts.ts'
import type { LabelChange } from './OwnProductFields.tsx'

interface OwnPackagesProps {
  readonly own: LabelledProduct
  readonly system: System
  readonly set: (change: LabelChange) => Problem | undefined
}

/** The sizes that it is sold in, with their price; without any the usual sizes count. */
export function OwnPackages({ own, system, set }: OwnPackagesProps) {
  const store = useAppStore()
  const units = useUnits()
  const canEdit = useCanEdit()
  const list = useProducts()
  // Gets an empty field anew after each size that was added.
  const [added, setAdded] = useState(0)
  const packages = (own.packages ?? []).map((pack) => ({ ...pack }))
  const shown = productOf(own.id, list)?.packages ?? []
  const add = (amount: number | undefined) => {
    if (amount === undefined || !(amount > 0)) return undefined
    const label = formatQuantity(measureOf(own.id, list), amount, units)
    if (packages.some((pack) => pack.label === label)) return undefined
    const refused = set({ packages: [...packages, { label, massG: gFromAmount(own.id, amount, list) }] })
    if (!refused) setAdded(added + 1)
    return refused
  }
  return (
    <div className={styles['fields']}>
      {packages.map(({ label, massG }) => (
        <div key={label} className={styles['package']}>
          <NumberField
            label={`Package of ${label}`}
            value={shown.find((pack) => pack.label === label)?.price}
            onChange={(price) =>
              store.getState().dispatch({
                id: 'setPrice',
                args: { systemId: system.id, product: own.id, packageLabel: label, price },
              })
            }
            min={0}
            unitLabel={system.currency}
            placeholder="price"
          />
          {canEdit && (
            <Button
              tone="quiet"
              label={`Remove the package of ${label}`}
              onPress={() => {
                const rest = packages.filter((pack) => pack.label !== label || pack.massG !== massG)
                set({ packages: rest.length > 0 ? rest : undefined })
              }}
            >
              Remove
            </Button>
          )}
        </div>
      ))}
      {canEdit && (
        <QuantityField
          key={added}
          label="Sold in packages of"
          quantity={measureOf(own.id, list)}
          value={undefined}
          onChange={add}
          min={0}
          placeholder="one more size"
        />
      )}
    </div>
  )
}
