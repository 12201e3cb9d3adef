import { excessChlorine } from '../../../water/index.ts'
import { useUnits } from '../../context.tsx'
import { inOwnUnits } from '../../fields/index.ts'
import styles from './water.module.css'

interface ExcessProps {
  readonly freeMgPerL: number | undefined
  /** As read; else reckoned from doses. */
  readonly isRead: boolean
}

/** The strongest caution there is: chlorine so high that it hurts people. */
export function Excess({ freeMgPerL, isRead }: ExcessProps) {
  const units = useUnits()
  const problem = excessChlorine(freeMgPerL, isRead)
  if (!problem) return null
  return (
    <div className={styles['excess']} role="alert">
      <p>
        <strong>{inOwnUnits(problem.what, units)}</strong>
      </p>
      <p>{problem.why}</p>
      <p>{problem.hint}</p>
    </div>
  )
}
