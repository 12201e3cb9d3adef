import { memo } from 'react'
import type { Axis, Point } from '../../basin/index.ts'
import { axisLength, pointOnAxis } from '../sheet/scene.ts'
import type { Panes, View } from '../sheet/view.ts'
import { toScreen } from '../sheet/view.ts'
import { axisNames } from './axis-names.ts'
import styles from './plan.module.css'

interface Props {
  readonly axis: Axis
  /** Where the line is drawn from and to, beyond the walls [m from A]. */
  readonly drawn: readonly [fromM: number, toM: number]
  readonly stations: readonly (readonly [sM: number, depthM: number])[]
  readonly view: View
  readonly panes: Panes
}

/** The section line A–A′ over the plan, and a mark where each station lies on it. */
export const AxisLine = memo(function AxisLine(props: Props) {
  const { axis, drawn, stations, view, panes } = props
  const start = toScreen(view, panes, pointOnAxis(axis, drawn[0]))
  const end = toScreen(view, panes, pointOnAxis(axis, drawn[1]))
  const names = axisNames(props)
  const length = axisLength(axis)
  return (
    <g>
      <path className={styles['axis']} d={`M${start[0]} ${start[1]}L${end[0]} ${end[1]}`} />
      {stations.map(([sM]) => {
        const [x, y] = toScreen(view, panes, pointOnAxis(axis, sM))
        return sM < -1e-9 || sM > length + 1e-9 ? null : (
          <circle key={sM} className={styles['station']} cx={x} cy={y} r={2.4} />
        )
      })}
      <AxisName at={names.a} name="A" />
      <AxisName at={names.b} name="A′" />
    </g>
  )
})

function AxisName({ at, name }: { readonly at: Point; readonly name: string }) {
  return (
    <g transform={`translate(${at[0]} ${at[1]})`}>
      <circle className={styles['axisRing']} r={10.5} />
      <text className={styles['axisName']}>{name}</text>
    </g>
  )
}

interface ProjectionProps {
  /** Pairs of a place in the plan and the same place in the section [px]. */
  readonly lines: readonly { readonly from: Point; readonly to: Point }[]
}

/** Dashed lines that carry the stations and ends from the plan down to the section. */
export const Projections = memo(function Projections({ lines }: ProjectionProps) {
  return (
    <path
      className={styles['projection']}
      d={lines.map(({ from, to }) => `M${from[0]} ${from[1]}L${to[0]} ${to[1]}`).join('')}
    />
  )
})
