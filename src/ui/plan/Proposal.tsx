import type { Path, Point } from '../../basin/index.ts'
import { pathFrom } from './PlanGround.tsx'
import styles from './plan.module.css'

/** A line that may take the place of one that crosses itself, in plan metres from `origin`. */
export function Proposal({ path, origin }: { readonly path: Path; readonly origin: Point }) {
  const d = pathFrom(path, origin)
  return (
    <>
      <path className={styles['proposalCasing']} d={d} />
      <path className={styles['proposal']} d={d} data-shape="untangled" />
    </>
  )
}
