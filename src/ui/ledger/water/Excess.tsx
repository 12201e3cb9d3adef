import { deriveExcess } from '../../../derive/index.ts'
import { useApp, useUnits } from '../../context.tsx'
import { inOwnUnits } from '../../fields/index.ts'
import styles from './water.module.css'

/** The strongest caution there is: chlorine so high that it hurts people. */
export function Excess({ systemId }: { readonly systemId: string }) {
  const units = useUnits()
  const spec = useApp((state) => state.spec)
  const nowMs = useApp((state) => state.nowMs)
  const problem = deriveExcess(spec, systemId, nowMs)
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
