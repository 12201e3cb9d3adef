import type { Problem } from '../../base/index.ts'
import type { Point } from '../../basin/index.ts'
import type { UnitSystem } from '../../units/index.ts'
import { inOwnUnits } from '../fields/index.ts'
import { type Panes, toScreen, type View } from '../sheet/view.ts'
import styles from './plan.module.css'

interface Props {
  readonly problems: readonly Problem[]
  readonly view: View
  readonly panes: Panes
  readonly units: UnitSystem
}

const RING_PX = 13
const MOST_RINGS = 6
const LINE_PX = 16
/** About what a letter takes [px]. */
const LETTER_PX = 6.9
/** A line of words longer than this would reach over what it isn't about [px]. */
const WIDEST_PX = 340

/** A sentence in lines that fit a width [px]. */
function wrapped(text: string, widthPx: number): string[] {
  const most = Math.max(16, Math.floor((Math.min(WIDEST_PX, widthPx) - RING_PX - 12) / LETTER_PX))
  const lines: string[] = []
  for (const word of text.split(' ')) {
    const last = lines.at(-1)
    if (last !== undefined && last.length + word.length < most) lines[lines.length - 1] = `${last} ${word}`
    else lines.push(word)
  }
  return lines
}

/** A place of the plan; one that lies beyond the paper is marked at the edge that it lies beyond. */
function onPaper([x, y]: Point, { width, planHeight }: Panes): Point {
  const edge = RING_PX + 4
  return [Math.min(width - edge, Math.max(edge, x)), Math.min(planHeight - edge, Math.max(edge, y))]
}

/** A ring around each place that is wrong, and in short what is wrong there. */
export function Troubles({ problems, view, panes, units }: Props) {
  return (
    <>
      {problems.map((problem) => {
        const places = (problem.at ?? []).slice(0, MOST_RINGS).map((p) => onPaper(toScreen(view, panes, p), panes))
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
              {wrapped(inOwnUnits(problem.what, units), isRight ? first[0] : panes.width - first[0]).map((line, i) => (
                <tspan key={line} x={first[0] + (isRight ? -RING_PX - 6 : RING_PX + 6)} dy={i === 0 ? 0 : LINE_PX}>
                  {line}
                </tspan>
              ))}
            </text>
          </g>
        )
      })}
    </>
  )
}
