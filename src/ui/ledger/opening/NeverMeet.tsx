import type { System } from '../../../document/index.ts'
import { type OpeningPlan, REGIMES } from '../../../plan/index.ts'
import { Disclosure } from '../../fields/index.ts'
import { productsOf } from './lines.ts'
import { neverMeet, orList } from './never-meet.ts'
import styles from './opening.module.css'

interface NeverMeetProps {
  readonly plan: OpeningPlan
  readonly system: System
}

/**
 * Which products must never meet outside the pool, and why: those of this plan, with the daily chlorine and the acid that
 * stand in the same shed.
 */
export function NeverMeet({ plan, system }: NeverMeetProps) {
  const usual = REGIMES.get(system.regime.id)?.products
  const chosen = system.regime.products
  const daily = [chosen.dailyChlorine ?? usual?.dailyChlorine, chosen.acid ?? usual?.acid]
  const rows = neverMeet([...productsOf(plan.lines), ...daily.filter((id) => id !== undefined)])
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
