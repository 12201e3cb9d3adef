import type { System } from '../../../document/index.ts'
import type { OpeningPlan, PurchaseItem } from '../../../plan/index.ts'
import { formatQuantity } from '../../../units/index.ts'
import { useAppStore, useUnits } from '../../context.tsx'
import { Disclosure, NumberField, QuantityField, TextField } from '../../fields/index.ts'
import { amountFromG, formatAmount, gFromAmount, measureOf, productOf } from './amounts.ts'
import { formatMoney } from './money.ts'
import styles from './opening.module.css'
import { useProducts } from './useProducts.ts'

interface ToBuyProps {
  readonly plan: Pick<OpeningPlan, 'purchases' | 'purchaseSum'>
  readonly system: System
}

/** What the plan needs from the shop; what is in stock is typed here and taken off. */
export function ToBuy({ plan, system }: ToBuyProps) {
  const { purchases: items, purchaseSum } = plan
  if (items.length === 0) return null
  const { currency } = system
  return (
    <section className={styles['section']} aria-label="To buy">
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
            <Item key={item.productId} item={item} system={system} />
          ))}
        </tbody>
        {purchaseSum.cost !== undefined && purchaseSum.cost > 0 && (
          <tfoot>
            <tr>
              <th scope="row" colSpan={2}>
                Together
              </th>
              <td>{formatMoney(purchaseSum.cost, currency)}</td>
            </tr>
          </tfoot>
        )}
      </table>
      {purchaseSum.cost === undefined && purchaseSum.pricesUnknown < items.length && (
        <p className={styles['faint']}>No sum: the price of {purchaseSum.pricesUnknown} of them is not known.</p>
      )}
      <Prices items={items} system={system} />
    </section>
  )
}

function Item({ item, system }: { readonly item: PurchaseItem; readonly system: System }) {
  const units = useUnits()
  const store = useAppStore()
  const list = useProducts()
  const say = (amountG: number) => formatAmount(item.productId, amountG, units, list)
  const isBought = item.count > 0 && item.packageLabel !== ''
  const setStock = (amount: number | undefined) =>
    store.getState().dispatch({
      id: 'setStock',
      args: { systemId: system.id, product: item.productId, amountG: gFromAmount(item.productId, amount ?? 0, list) },
    })
  return (
    <tr>
      <th scope="row">
        {item.label}
        <span className={styles['needed']}>{say(item.needG)} needed</span>
      </th>
      <td className={styles['stock']}>
        <QuantityField
          label={`${item.label} in stock`}
          quantity={measureOf(item.productId, list)}
          value={item.inStockG > 0 ? amountFromG(item.productId, item.inStockG, list) : undefined}
          onChange={setStock}
          min={0}
          placeholder="none"
          hideLabel
        />
      </td>
      <td>
        <span className={styles['buy']}>
          {isBought
            ? `${formatQuantity('number', item.count, units, { digits: 0 })} × ${item.packageLabel}`
            : 'nothing'}
        </span>
        {isBought && item.missingFreshG !== undefined && (
          <span className={styles['needed']}>{say(item.missingFreshG)} of a fresh one is missing</span>
        )}
        {isBought && item.cost !== undefined && (
          <span className={styles['needed']}>{formatMoney(item.cost, system.currency)}</span>
        )}
        {item.leftoverG > 0.005 * item.needG && (
          <span className={styles['needed']}>{say(item.leftoverG)} left over</span>
        )}
      </td>
    </tr>
  )
}

/** What a package costs where the owner buys; the cheapest way is chosen by it. */
function Prices({ items, system }: { readonly items: readonly PurchaseItem[]; readonly system: System }) {
  const store = useAppStore()
  const list = useProducts()
  const systemId = system.id
  const packages = items.flatMap(({ productId, label }) =>
    (productOf(productId, list)?.packages ?? []).map((pack) => ({ productId, label, pack })),
  )
  const shelf = system.regime.packages ?? 'metric'
  const isOwn = (id: string) => system.ownProducts?.some((own) => own.id === id) ?? false
  const shown = packages.filter(
    ({ productId, pack }) => pack.system === shelf || isOwn(productId) || pack.price !== undefined,
  )
  return (
    <Disclosure title="Prices of packages" level={3} isScreenOnly isLazy>
      <div className={styles['fields']}>
        <TextField
          label="Currency"
          value={system.currency ?? ''}
          onChange={(text) =>
            store.getState().dispatch({
              id: 'setCurrency',
              args: { systemId, currency: text === '' ? undefined : text },
            })
          }
          placeholder="as you write it"
        />
        {shown.map(({ productId, label, pack }) => (
          <NumberField
            key={`${productId}|${pack.label}`}
            label={`${label}, ${pack.label}`}
            value={pack.price}
            onChange={(price) =>
              store.getState().dispatch({
                id: 'setPrice',
                args: { systemId, product: productId, packageLabel: pack.label, price },
              })
            }
            min={0}
            unitLabel={system.currency}
            placeholder="unknown"
          />
        ))}
      </div>
    </Disclosure>
  )
}
