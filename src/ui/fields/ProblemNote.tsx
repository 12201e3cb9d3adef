import type { ReactNode } from 'react'
import type { Problem } from '../../base/index.ts'
import { useUnits } from '../context.tsx'
import { inOwnUnits } from './ownUnits.ts'
import styles from './problem.module.css'

interface Props {
  readonly problem: Problem
  /** What more there is to say or to press. */
  readonly children?: ReactNode
}

/** What is wrong, why it matters, and how to mend it, in the owner's units. */
export function ProblemNote({ problem, children }: Props) {
  const units = useUnits()
  return (
    <div className={styles['problem']} role="note" aria-label="Needs attention">
      <p className={styles['what']}>{inOwnUnits(problem.what, units)}</p>
      {problem.why ? <p className={styles['why']}>{inOwnUnits(problem.why, units)}</p> : null}
      {problem.hint ? <p className={styles['hint']}>{inOwnUnits(problem.hint, units)}</p> : null}
      {children}
    </div>
  )
}
