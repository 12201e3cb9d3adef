import { FIRST_AID, placeRules } from '../../../chemicals/index.ts'
import type { System } from '../../../document/index.ts'
import { type OpeningPlan, REGIMES } from '../../../plan/index.ts'
import { Disclosure } from '../../fields/index.ts'
import { sourceWords } from '../water/source-words.ts'
import { productsOf } from './lines.ts'
import { neverMeet, orList, productsBy } from './never-meet.ts'
import styles from './opening.module.css'
import { PLACES } from './shed/shed-words.ts'
import { useProducts } from './useProducts.ts'

interface NeverMeetProps {
  readonly plan: OpeningPlan
  readonly system: System
}

/**
 * Which products must never meet outside the pool, where, and why: those of this plan, with the daily chlorine, the acid
 * and the stock that stand in the same shed; and what to do when it has happened.
 */
export function NeverMeet({ plan, system }: NeverMeetProps) {
  const list = useProducts()
  const usual = REGIMES.get(system.regime.id)?.products
  const chosen = system.regime.products
  const daily = [chosen.dailyChlorine ?? usual?.dailyChlorine, chosen.acid ?? usual?.acid]
  const ids = [
    ...productsOf(plan.lines),
    ...daily.filter((id) => id !== undefined),
    ...system.stock.map(({ product }) => product),
  ]
  const rows = neverMeet(ids, list)
  const rules = placeRules(productsBy(ids, list))
  return (
    <div className={styles['note']} role="note" aria-label="What must never meet">
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
      {rules.length > 0 && (
        <Disclosure title="Feeder, basket, bucket, shed" isLazy>
          {PLACES.map((place) => {
            const here = rules.filter(({ where }) => where === place.id)
            if (here.length === 0) return null
            return (
              <div key={place.id} className={styles['place']}>
                <h5>{place.label}</h5>
                <ul className={styles['pairs']}>
                  {here.map((each) => (
                    <li key={each.id}>
                      {each.text} <strong>{each.instead}</strong>{' '}
                      <span className={styles['faint']}>{sourceWords(each)}</span>
                    </li>
                  ))}
                </ul>
              </div>
            )
          })}
        </Disclosure>
      )}
      <Disclosure title="When it has happened, and whom to ask" isLazy>
        <dl className={styles['aid']}>
          {FIRST_AID.rows.map(({ id, when, act }) => (
            <div key={id}>
              <dt>{when}</dt>
              <dd>{act}</dd>
            </div>
          ))}
        </dl>
        <p className={styles['faint']}>Common practice, no source. Your emergency services have the last word.</p>
      </Disclosure>
    </div>
  )
}
