import { memo, useMemo } from 'react'
import type { Axis, Partition, Point } from '../../basin/index.ts'
import { formatSlope } from '../../units/index.ts'
import { classes } from '../fields/index.ts'
import { isDeepTint, rampPlace } from '../plan/depth-steps.ts'
import { type Box, boxOfText, isCrossed, placeLabels, type Stroke } from '../plan/labels.ts'
import { type Panes, sectionToScreen, type View } from '../sheet/view.ts'
import { drawnCut, isInWater } from './cut.ts'
import styles from './section.module.css'
import { type Run, runsOf } from './slopes.ts'

interface Props {
  readonly parts: Partition | undefined
  readonly stations: readonly (readonly [sM: number, depthM: number])[]
  readonly axis: Axis
  readonly view: View
  readonly panes: Panes
  readonly maxDepthM: number
  readonly levelM: number
  readonly write: (depthM: number) => string
}

const STATION_PX = 12.5
const SLOPE_PX = 11.5
const LINE_PX = 13
/** Between a slope and the lines beside it. */
const AIR_PX = 3
/** A fall that nobody would call one is left without a figure. */
const HARDLY_SLOPED = 1 / 200
/** Where along a run its slope may be written, best first. */
const PLACES = [0.5, 0.59, 0.41, 0.68, 0.32, 0.75, 0.25, 0.82, 0.18] as const

/** Depths at the stations, each run's slope as 1 : n with the usual limit where it is passed, and the floor under features. */
export const SectionLabels = memo(function SectionLabels(props: Props) {
  const { parts, stations, axis, view, panes, maxDepthM, levelM, write } = props
  const at = (sM: number, depthM: number) => sectionToScreen(view, panes, axis.from, [sM, depthM])
  const cut = useMemo(() => (parts ? drawnCut(parts, axis) : undefined), [parts, axis])
  const depths = placeLabels(
    stations.map(([sM, depthM]) => {
      const [x, y] = at(sM, depthM)
      const text = write(depthM)
      return { key: sM, text, at: [x, y + 23] as Point, box: boxOfText(text, [x, y + 19], STATION_PX) }
    }),
    [],
  )
  // What is drawn over the floor, which a slope is not written across: walls, and the faces of features.
  const drawn = (cut?.pieces ?? []).flatMap(({ part, points }): Stroke[] =>
    part === 'floor' ? [] : points.slice(1).map((to, i): Stroke => [at(...(points[i] ?? to)), at(...to)]),
  )
  const slopes = runsOf(stations).flatMap((run) => {
    const placed = placeSlope(run, view, levelM, at, drawn)
    return placed ? [{ ...placed, run }] : []
  })
  return (
    <>
      {stations.length > 1 ? (
        <path
          className={styles['hiddenFloor']}
          d={stations.map(([s, d], i) => `${i === 0 ? 'M' : 'L'}${at(s, d).join(' ')}`).join('')}
        />
      ) : null}
      {slopes.map(({ run, lines, at: [x, y], sM, depthM }) => (
        <text
          key={run.fromM}
          className={classes(
            styles['slope'],
            isInWater(cut?.beds ?? [], sM, depthM) && isDeepTint(rampPlace(depthM, maxDepthM)) && styles['slopeOnDeep'],
            run.usualLimit !== undefined && styles['limit'],
          )}
        >
          {lines.map((line, i) => (
            <tspan key={line} x={x} y={y - (lines.length - 1 - i) * LINE_PX}>
              {line}
            </tspan>
          ))}
        </text>
      ))}
      {depths.map((label) => (
        <text key={label.key} className={styles['stationText']} x={label.at[0]} y={label.at[1]}>
          {label.text}
        </text>
      ))}
    </>
  )
})

/** Where a run's slope is written: over its line, in the water, clear of features; with the limit where there is room. */
function placeSlope(
  run: Run,
  view: View,
  levelM: number,
  at: (sM: number, depthM: number) => Point,
  drawn: readonly Stroke[],
): { readonly lines: readonly string[]; readonly at: Point; readonly sM: number; readonly depthM: number } | undefined {
  const slope = formatSlope(run.slope)
  if (run.slope < HARDLY_SLOPED) return undefined
  const wordings = run.usualLimit === undefined ? [[slope]] : [[slope, `usual limit 1 : ${run.usualLimit}`], [slope]]
  const width = (run.toM - run.fromM) * view.scale
  for (const lines of wordings) {
    const half = (Math.max(...lines.map((line) => line.length)) * SLOPE_PX * 0.5) / 2
    // On a slope the text clears the higher end of the line under it.
    const lift = 10 + half * run.slope * view.stretch * 0.9
    const height = lines.length * LINE_PX
    for (const share of PLACES) {
      const depthM = run.fromDepthM + share * (run.toDepthM - run.fromDepthM)
      const [x, y] = at(run.fromM + share * (run.toM - run.fromM), depthM)
      const box: Box = { x, y: y - lift - (height - LINE_PX) / 2, halfWidth: half + AIR_PX, halfHeight: height / 2 }
      const fits = half * 2 < width * (1 - 2 * Math.abs(share - 0.5)) + 4
      const hasWater = (depthM + levelM) * view.scale * view.stretch > lift + height - 4
      if (fits && hasWater && !drawn.some((stroke) => isCrossed(box, stroke)))
        return {
          lines,
          at: [x, y - lift],
          sM: run.fromM + share * (run.toM - run.fromM),
          depthM: depthM - lift / (view.scale * view.stretch),
        }
    }
  }
  return undefined
}
