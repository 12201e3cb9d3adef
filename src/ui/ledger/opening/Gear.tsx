import { gearFor, type ProductList } from '../../../chemicals/index.ts'
import { productOf } from './amounts.ts'
import styles from './opening.module.css'

interface GearProps {
  readonly productId: string
  readonly list: ProductList | undefined
}

/** What to wear and have at hand for one dose. */
export function Gear({ productId, list }: GearProps) {
  const product = productOf(productId, list)
  const gear = product ? gearFor([product]) : []
  if (gear.length === 0) return null
  return (
    <p className={styles['gear']}>
      <strong>Wear:</strong> {gear.map(({ wear }) => wear).join(' ')}
    </p>
  )
}
