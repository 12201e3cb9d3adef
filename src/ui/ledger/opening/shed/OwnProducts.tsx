import { useState } from 'react'
import type { System } from '../../../../document/index.ts'
import { useCanEdit } from '../../../context.tsx'
import { Button } from '../../../fields/index.ts'
import styles from '../opening.module.css'
import { AddOwnProduct } from './AddOwnProduct.tsx'
import { OwnProductFields } from './OwnProductFields.tsx'

/** The owner's own products, copied from their labels. */
export function OwnProducts({ system }: { readonly system: System }) {
  const canEdit = useCanEdit()
  const [isAdding, setAdding] = useState(false)
  const own = system.ownProducts ?? []
  return (
    <section
      className={styles['section']}
      aria-label="Your own products"
      {...(own.length === 0 ? { 'data-screen-only': true } : {})}
    >
      <h3>Your own products</h3>
      {own.length === 0 && (
        <p className={styles['faint']}>
          The plan counts with usual strengths. Where a label says otherwise, copy it here and it counts with that.
        </p>
      )}
      {own.map((product, index) => (
        <OwnProductFields key={product.id} own={product} index={index} system={system} />
      ))}
      {isAdding && <AddOwnProduct system={system} onClose={() => setAdding(false)} />}
      {canEdit && !isAdding && (
        <div className={styles['buttons']}>
          <Button onPress={() => setAdding(true)}>Add a product from its label</Button>
        </div>
      )}
    </section>
  )
}
