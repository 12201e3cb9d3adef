import { memo, useMemo } from 'react'
import type { Floor, Point } from '../../basin/index.ts'
import { classes } from '../fields/index.ts'
import { groundUnder } from './depth-steps.ts'
import type { FloorLabel } from './floor-labels.ts'
import { pathFrom } from './PlanGround.tsx'
import styles from './plan.module.css'

interface LinesProps {
  readonly floor: Floor
  readonly origin: Point
}

/** The lines that a floor is given by, in plan metres from `origin`: its depth lines, the rim of its hollow. */
export const FloorLines = memo(function FloorLines({ floor, origin }: LinesProps) {
  const lines = useMemo(
    () => (floor.kind === 'contours' ? floor.rings.map(({ path }) => pathFrom(path, origin)) : []),
    [floor, origin],
  )
  if (floor.kind === 'dish') {
    const [x, y] = floor.centre
    return <circle className={styles['dishRim']} cx={x - origin[0]} cy={y - origin[1]} r={floor.radiusM} />
  }
  return (
    <>
      {lines.map((d) => (
        <path key={d} className={styles['depthLine']} d={d} data-shape="depth-line" />
      ))}
    </>
  )
})

interface DepthsProps {
  readonly labels: readonly FloorLabel[]
  readonly maxDepthM: number
  readonly levelM: number
  /** Whether the water is tinted; else they stand on paper. */
  readonly isTinted: boolean
}

/** The depths that a floor is given by, each beside its place: soundings with a small cross, as surveyors write them. */
export function FloorDepths({ labels, maxDepthM, levelM, isTinted }: DepthsProps) {
  return (
    <>
      {labels.map((label) => {
        const onDeep = (depthM: number) => isTinted && groundUnder(depthM, maxDepthM, levelM).isDeep
        const ground = isTinted ? groundUnder(label.underTextM, maxDepthM, levelM).colour : 'var(--paper)'
        return (
          <g key={label.key}>
            {label.hasCross ? (
              <path
                className={classes(styles['soundingCross'], onDeep(label.groundM) && styles['crossOnDeep'])}
                d={`M${label.at[0] - 5} ${label.at[1]}h10M${label.at[0]} ${label.at[1] - 5}v10`}
              />
            ) : null}
            {label.textAt ? (
              <text
                className={classes(styles['sounding'], styles['given'], onDeep(label.underTextM) && styles['onDeep'])}
                x={label.textAt[0]}
                y={label.textAt[1]}
                style={{ fontSize: label.sizePx, stroke: ground }}
              >
                {label.text}
              </text>
            ) : null}
          </g>
        )
      })}
    </>
  )
}
