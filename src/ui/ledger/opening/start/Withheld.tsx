import type { TargetPhase } from '../../../../plan/index.ts'
import { useUnits } from '../../../context.tsx'
import { Disclosure } from '../../../fields/index.ts'
import { sourceWords } from '../../water/source-words.ts'
import styles from '../opening.module.css'
import { phaseWords } from './start-words.ts'

interface WithheldProps {
  readonly phases: readonly TargetPhase[]
  readonly day: number
}

/** Targets that wait or are others today, and those that will be or were. */
export function Withheld({ phases, day }: WithheldProps) {
  const now = phases.filter(({ fromDay, toDay }) => day >= fromDay && day <= toDay)
  const others = phases.filter((phase) => !now.includes(phase))
  return (
    <>
      {now.length > 0 && (
        <div className={styles['note']} role="note">
          <p>
            <strong>Targets of today.</strong> The plan below keeps to them.
          </p>
          <Phases phases={now} />
        </div>
      )}
      {others.length > 0 && (
        <Disclosure title="Targets on other days of this start">
          <Phases phases={others} />
        </Disclosure>
      )}
    </>
  )
}

function Phases({ phases }: { readonly phases: readonly TargetPhase[] }) {
  const units = useUnits()
  return (
    <ul className={styles['pairs']}>
      {phases.map((phase) => (
        <li key={`${phase.key}${phase.fromDay}`}>
          {phaseWords(phase, units)}{' '}
          <span className={styles['faint']}>
            {phase.why} {sourceWords(phase)}
          </span>
        </li>
      ))}
    </ul>
  )
}
