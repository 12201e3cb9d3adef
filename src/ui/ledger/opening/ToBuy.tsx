import type { System } from '../../../document/index.ts'
import type { PurchaseItem } from '../../../plan/index.ts'
import { formatQuantity } from '../../../units/index.ts'
import { useAppStore, useUnits } from '../../context.tsx'
import { QuantityField } from '../../fields/index.ts'
import { amountFromG, formatAmount, gFromAmount, measureOf } from './amounts.ts'
import styles from './opening.module.css'

interface ToBuyProps {
  readonly items: readonly PurchaseItem[]
  readonly system: System
}

/** What the plan needs from the shop; what is in stock is typed here and taken off. */
export function ToBuy({ items, system }: ToBuyProps) {
  const units = useUnits()
  const store = useAppStore()
  if (items.length === 0) return null
  const setStock = (productId: string, amount: number | undefined) =>
    store.getState().dispatch({
      id: 'setStock',
      args: { systemId: system.id, product: productId, amountG: gFromAmount(productId, amount ?? 0) },
    })
  return (
    <section className={styles['section']}>
      <h2>To buy</h2>
      <table className={styles['table']}>
        <thead>
          <tr>
            <th scope="col">Product</th>
            <th scope="col">In stock</th>
            <th scope="col">Buy</th>
          </tr>
        </thead>
        <tbody>
          {items.map((item) => (
            <tr key={item.productId}>
              <th scope="row">
                {item.label}
                <span className={styles['needed']}>{formatAmount(item.productId, item.needG, units)} needed</span>
              </th>
              <td className={styles['stock']}>
                <QuantityField
                  label={`${item.label} in stock`}
                  quantity={measureOf(item.productId)}
                  value={item.inStockG > 0 ? amountFromG(item.productId, item.inStockG) : undefined}
                  onChange={(amount) => setStock(item.productId, amount)}
                  min={0}
                  placeholder="none"
                  hideLabel
                />
              </td>
              <td className={styles['buy']}>
                {item.count === 0 || item.packageLabel === ''
                  ? 'nothing'
                  : `${formatQuantity('number', item.count, units, { digits: 0 })} × ${item.packageLabel}`}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}
