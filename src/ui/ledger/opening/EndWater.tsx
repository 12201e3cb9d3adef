import type { OpeningPlan } from '../../../plan/index.ts'
import { useUnits } from '../../context.tsx'
import { domainOf, formatReading, InkScale } from '../scale/index.ts'
import { activeWords } from '../water/chlorine-words.ts'
import { overallMovements, visibleMovements } from './lines.ts'
import styles from './opening.module.css'

/** The water that all lines together should leave behind, against its bands; and that it clears nobody to bathe. */
export function EndWater({ plan }: { readonly plan: OpeningPlan }) {
  const units = useUnits()
  const movements = visibleMovements(overallMovements(plan.lines), (key, value) => formatReading(key, value, units))
  return (
    <section className={styles['section']}>
      {movements.length > 0 && (
        <h2>
          What it should come to, <em className={styles['expected']}>expected</em>
        </h2>
      )}
      <div className={styles['scales']}>
        {movements.map((movement) => (
          <InkScale
            key={movement.key}
            scaleKey={movement.key}
            domain={domainOf(movement.key, [movement])}
            band={movement.band}
            before={movement.before}
            after={movement.after}
            isInside={movement.inBand}
          />
        ))}
      </div>
      {movements.length > 0 && plan.endWater && (
        <p className={styles['faint']}>
          Active chlorine, the part of the free chlorine that is not held by stabiliser or as hypochlorite:{' '}
          <em className={styles['expected']}>{activeWords(plan.endWater, units)}</em>.
        </p>
      )}
      {movements.some(({ key }) => key === 'fc_mg_per_L_as_Cl2') && (
        <p className={styles['faint']}>
          Chlorine is used up from the first hour on (Season says how fast), and these figures leave that out. While the
          plan runs test it every day and bring it back into its band.
        </p>
      )}
      <div className={styles['note']} role="note">
        <p>
          <strong>{plan.bathing.cleared ? 'Bathing.' : 'Nobody bathes yet.'}</strong> {plan.bathing.reason}
        </p>
      </div>
    </section>
  )
}
