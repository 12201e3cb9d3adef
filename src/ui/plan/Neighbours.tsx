import { memo } from 'react'
import type { Point } from '../../basin/index.ts'
import type { Body } from '../../document/index.ts'
import { pathFrom } from './PlanGround.tsx'
import styles from './plan.module.css'

interface Props {
  readonly others: readonly Body[]
  readonly origin: Point
}

/** The other bodies of the plan in thin lines, so that it is seen where they lie; in plan metres from `origin`. */
export const Neighbours = memo(function Neighbours({ others, origin }: Props) {
  return (
    <>
      {others.map((body) => (
        <path
          key={body.id}
          className={styles['neighbour']}
          d={[body.outline, ...body.islands].map((path) => pathFrom(path, origin)).join('')}
          data-shape="neighbour"
        />
      ))}
    </>
  )
})
