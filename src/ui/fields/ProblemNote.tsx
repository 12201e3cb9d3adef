import type { ReactNode } from 'react'
import type { Problem } from '../../base/index.ts'
import styles from './problem.module.css'

interface Props {
  readonly problem: Problem
  /** What more there is to say or to press. */
  readonly children?: ReactNode
}

/** What is wrong, why it matters, and how to mend it. */
export function ProblemNote({ problem, children }: Props) {
  return (
    <div className={styles['problem']} role="note" aria-label="Needs attention">
      <p className={styles['what']}>{problem.what}</p>
      {problem.why ? <p className={styles['why']}>{problem.why}</p> : null}
      {problem.hint ? <p className={styles['hint']}>{problem.hint}</p> : null}
      {children}
    </div>
  )
}
