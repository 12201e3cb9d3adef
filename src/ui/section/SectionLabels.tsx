import { memo } from 'react'
import type { Point } from '../../basin/index.ts'
import { formatSlope } from '../../units/index.ts'
import { classes } from '../fields/index.ts'
import { isDeepTint, rampPlace } from '../plan/depth-steps.ts'
import { boxOfText, placeLabels } from '../plan/labels.ts'
import { type Panes, sectionToScreen, type View } from '../sheet/view.ts'
import styles from './section.module.css'
import { runsOf } from './slopes.ts'

interface Props {
  readonly stations: readonly (readonly [sM: number, depthM: number])[]
  readonly axisFrom: Point
  readonly view: View
  readonly panes: Panes
  readonly maxDepthM: number
  readonly levelM: number
  readonly write: (depthM: number) => string
}

const STATION_PX = 12.5
const SLOPE_PX = 11.5

/** Depths at the stations, and each run's slope as 1 : n with the usual limit where it is passed. */
export const SectionLabels = memo(function SectionLabels(props: Props) {
  const { stations, axisFrom, view, panes, maxDepthM, levelM, write } = props
  const at = (sM: number, depthM: number) => sectionToScreen(view, panes, axisFrom, [sM, depthM])
  const depths = placeLabels(
    stations.map(([sM, depthM], i) => {
      const [x, y] = at(sM, depthM)
      const text = write(depthM)
      return { key: i, text, at: [x, y + 23] as Point, box: boxOfText(text, [x, y + 19], STATION_PX) }
    }),
    [],
  )
  const runs = runsOf(stations).flatMap((run) => {
    const text =
      run.usualLimit === undefined
        ? formatSlope(run.slope)
        : `${formatSlope(run.slope)}, usual limit 1 : ${run.usualLimit}`
    const short = formatSlope(run.slope)
    const width = (run.toM - run.fromM) * view.scale
    const depthPx = (run.middleDepthM + levelM) * view.scale * view.stretch
    const shown = width > text.length * 6.2 ? text : short
    if (width < shown.length * 6.2 || depthPx < 26 || short === 'level') return []
    const [x, y] = at((run.fromM + run.toM) / 2, run.middleDepthM)
    const isDeep = isDeepTint(rampPlace(run.middleDepthM - 16 / (view.scale * view.stretch), maxDepthM))
    return [{ run, shown, at: [x, y - 15] as Point, isDeep, box: boxOfText(shown, [x, y - 15], SLOPE_PX) }]
  })
  return (
    <g>
      {runs.map(({ run, shown, at: [x, y], isDeep }) => (
        <text
          key={run.fromM}
          className={classes(
            styles['slope'],
            isDeep && styles['slopeOnDeep'],
            run.usualLimit !== undefined && styles['limit'],
          )}
          x={x}
          y={y}
        >
          {shown}
        </text>
      ))}
      {depths.map((label) => (
        <text key={label.key} className={styles['stationText']} x={label.at[0]} y={label.at[1]}>
          {label.text}
        </text>
      ))}
    </g>
  )
})
