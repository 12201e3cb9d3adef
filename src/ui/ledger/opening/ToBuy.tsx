import type { PurchaseItem } from '../../../plan/index.ts'
import { formatQuantity } from '../../../units/index.ts'
import { useUnits } from '../../context.tsx'
import { formatAmount } from './amounts.ts'
import styles from './opening.module.css'

/** What the plan needs from the shop, after what is in stock. */
export function ToBuy({ items }: { readonly items: readonly PurchaseItem[] }) {
  const units = useUnits()
  if (items.length === 0) return null
  return (
    <section className={styles['section']}>
      <h2>To buy</h2>
      <table className={styles['table']}>
        <thead>
          <tr>
            <th scope="col">Product</th>
            <th scope="col">Needed</th>
            <th scope="col">In stock</th>
            <th scope="col">Buy</th>
          </tr>
        </thead>
        <tbody>
          {items.map((item) => (
            <tr key={item.productId}>
              <th scope="row">{item.label}</th>
              <td>{formatAmount(item.productId, item.needG, units)}</td>
              <td>{item.inStockG > 0 ? formatAmount(item.productId, item.inStockG, units) : 'none'}</td>
              <td>
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
