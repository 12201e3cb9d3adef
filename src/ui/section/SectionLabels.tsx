import { memo, useMemo } from 'react'
import type { Axis, Partition, Point } from '../../basin/index.ts'
import { formatSlope } from '../../units/index.ts'
import { classes } from '../fields/index.ts'
import { isDeepTint, rampPlace } from '../plan/depth-steps.ts'
import { type Box, boxesTouch, boxOfText, placeLabels } from '../plan/labels.ts'
import { type Panes, sectionToScreen, type View } from '../sheet/view.ts'
import { drawnCut } from './cut.ts'
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
/** A fall that nobody would call one is left without a figure. */
const HARDLY_SLOPED = 1 / 200
/** Where along a run its slope may be written, best first. */
const PLACES = [0.5, 0.68, 0.32, 0.82, 0.18] as const

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
  // Faces of features, which a slope is not written across.
  const faces = (cut?.pieces ?? []).flatMap((piece): Box[] => {
    const [a, b] = [piece.points[0], piece.points.at(-1)]
    if (!a || !b || (piece.part !== 'riser' && piece.part !== 'feature')) return []
    const [p, q] = [at(a[0], a[1]), at(b[0], b[1])]
    return [
      {
        x: (p[0] + q[0]) / 2,
        y: (p[1] + q[1]) / 2,
        halfWidth: Math.abs(q[0] - p[0]) / 2 + 2,
        halfHeight: Math.abs(q[1] - p[1]) / 2 + 2,
      },
    ]
  })
  const slopes = runsOf(stations).flatMap((run) => {
    const placed = placeSlope(run, view, levelM, at, faces)
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
      {slopes.map(({ run, lines, at: [x, y], depthM }) => (
        <text
          key={run.fromM}
          className={classes(
            styles['slope'],
            parts && isDeepTint(rampPlace(depthM, maxDepthM)) && styles['slopeOnDeep'],
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
  faces: readonly Box[],
): { readonly lines: readonly string[]; readonly at: Point; readonly depthM: number } | undefined {
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
      const box: Box = { x, y: y - lift - (height - LINE_PX) / 2, halfWidth: half, halfHeight: height / 2 }
      const fits = half * 2 < width * (1 - 2 * Math.abs(share - 0.5)) + 4
      const hasWater = (depthM + levelM) * view.scale * view.stretch > lift + height - 4
      if (fits && hasWater && !faces.some((face) => boxesTouch(face, box)))
        return { lines, at: [x, y - lift], depthM: depthM - lift / (view.scale * view.stretch) }
    }
  }
  return undefined
}
