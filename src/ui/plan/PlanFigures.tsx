import { memo, useDeferredValue, useMemo } from 'react'
import type { Partition } from '../../basin/index.ts'
import { classes } from '../fields/index.ts'
import { isNarrow, type Panes, toScreen, type View } from '../sheet/view.ts'
import { groundUnder } from './depth-steps.ts'
import { figuresOf } from './figures.ts'
import type { Box } from './labels.ts'
import styles from './plan.module.css'

interface Props {
  readonly parts: Partition
  readonly depthsM: readonly number[]
  readonly maxDepthM: number
  readonly levelM: number
  readonly view: View
  readonly panes: Panes
  readonly write: (depthM: number) => string
  readonly writeContour: (depthM: number) => string
  readonly taken: readonly Box[]
}

/** Depth figures over the plan. They may lag behind a drag by a moment: the lines come first. */
export const PlanFigures = memo(function PlanFigures(now: Props) {
  const { parts, depthsM, view, panes, write, writeContour, taken } = useDeferredValue(now)
  const { maxDepthM, levelM } = now
  // Figures of a moment ago go with the paper; at another scale they would stand in the wrong places.
  const origin = [parts.originX, parts.originY] as const
  const [from, to] = [toScreen(view, panes, origin), toScreen(now.view, now.panes, origin)]
  const isStale = view.scale !== now.view.scale || view.turn !== now.view.turn
  const sizePx = isNarrow(panes) ? 11 : 13.5
  const figures = useMemo(
    () => figuresOf({ parts, depthsM, view, panes, write, writeContour, taken, sizePx }),
    [parts, depthsM, view, panes, write, writeContour, taken, sizePx],
  )
  if (isStale) return null
  return (
    <g transform={`translate(${to[0] - from[0]} ${to[1] - from[1]})`}>
      {figures.contours.map((label) => {
        const ground = groundUnder(label.depthM, maxDepthM, levelM)
        return (
          <text
            key={`${label.at[0]}-${label.at[1]}`}
            className={classes(styles['contourLabel'], ground.isDeep && styles['onDeep'])}
            x={label.at[0]}
            y={label.at[1]}
            style={{ stroke: ground.colour }}
          >
            {label.text}
          </text>
        )
      })}
      {figures.soundings.map((sounding) => {
        const ground = groundUnder(sounding.depthM, maxDepthM, levelM)
        return (
          <text
            key={`${sounding.at[0]}-${sounding.at[1]}`}
            className={classes(
              styles['sounding'],
              ground.isDeep && styles['onDeep'],
              // A shore that runs through a figure leaves half of it on each ground.
              levelM < 0 && styles['given'],
            )}
            fontSize={sizePx}
            x={sounding.at[0]}
            y={sounding.at[1]}
            style={{ stroke: levelM < 0 ? ground.colour : 'none' }}
          >
            {sounding.text}
          </text>
        )
      })}
    </g>
  )
})
