import type { Problem } from '../../base/index.ts'
import { type Panes, toScreen, type View } from '../sheet/view.ts'
import styles from './plan.module.css'

interface Props {
  readonly problems: readonly Problem[]
  readonly view: View
  readonly panes: Panes
}

const RING_PX = 13
const MOST_RINGS = 6

/** A ring around each place that is wrong, and in short what is wrong there. */
export function Troubles({ problems, view, panes }: Props) {
  return (
    <>
      {problems.map((problem) => {
        const places = (problem.at ?? []).slice(0, MOST_RINGS).map((p) => toScreen(view, panes, p))
        const first = places[0]
        if (!first) return null
        const isRight = first[0] > panes.width * 0.6
        return (
          <g key={`${problem.code}-${problem.path}`}>
            {places.map(([x, y]) => (
              <circle key={`${x}-${y}`} className={styles['trouble']} cx={x} cy={y} r={RING_PX} />
            ))}
            <text
              className={styles['troubleText']}
              x={first[0] + (isRight ? -RING_PX - 6 : RING_PX + 6)}
              y={Math.max(46, first[1] - RING_PX - 12)}
              textAnchor={isRight ? 'end' : 'start'}
            >
              {problem.what}
            </text>
          </g>
        )
      })}
    </>
  )
}
