import type { OpeningPlan } from '../../../plan/index.ts'
import { Disclosure } from '../../fields/index.ts'
import { productsOf } from './lines.ts'
import { neverMeet, orList } from './never-meet.ts'
import styles from './opening.module.css'

/** Which products of this plan must never meet outside the pool, and why. */
export function NeverMeet({ plan }: { readonly plan: OpeningPlan }) {
  const rows = neverMeet(productsOf(plan.lines))
  return (
    <div className={styles['note']} role="note">
      <p>
        <strong>Never let two of these meet</strong> outside the pool. Its own clean, dry scoop for each; the chemical
        into water, never water into the chemical. The label and your local code come first.
      </p>
      {rows.length > 0 && (
        <Disclosure title="Which, and why">
          <ul className={styles['pairs']}>
            {rows.map((row) => (
              <li key={`${row.first.join()}|${row.second.join()}|${row.reason}`}>
                <strong>
                  {orList(row.first)} with {orList(row.second)}.
                </strong>{' '}
                {row.reason} <span className={styles['faint']}>({row.source})</span>
              </li>
            ))}
          </ul>
        </Disclosure>
      )}
    </div>
  )
}
