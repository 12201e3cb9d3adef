import type { Problem } from '../../base/index.ts'
import styles from './problem.module.css'

/** What is wrong, why it matters, and how to mend it. */
export function ProblemNote({ problem }: { readonly problem: Problem }) {
  return (
    <div className={styles['problem']} role="note" aria-label="Needs attention">
      <p className={styles['what']}>{problem.what}</p>
      {problem.why ? <p className={styles['why']}>{problem.why}</p> : null}
      {problem.hint ? <p className={styles['hint']}>{problem.hint}</p> : null}
    </div>
  )
}
