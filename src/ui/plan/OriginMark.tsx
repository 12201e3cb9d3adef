import { memo } from 'react'
import type { Point } from '../../basin/index.ts'
import { useApp } from '../context.tsx'
import { type Panes, toScreen, type View } from '../sheet/view.ts'
import styles from './plan.module.css'

interface Props {
  readonly view: View
  readonly panes: Panes
  readonly hasBody: boolean
}

/** Length of an arm of the mark; how far its letters stand from its middle, along their axis and off it; the rim of the paper [px]. */
const [ARM_PX, LETTER_PX, OFF_PX, RIM_PX] = [11, 20, 9, 18]

/** Where x and y are counted from, lightly: a cross with the two letters on their sides, or at the paper's edge the way to it. */
export const OriginMark = memo(function OriginMark({ view, panes, hasBody }: Props) {
  const isAtRest = useApp((state) => state.tool === 'select')
  // A blank sheet has nothing to count until points are placed on it.
  if (!hasBody && isAtRest) return null
  const { at, isInSight, x, y } = originOnSheet(view, panes)
  const on = (alongX: number, alongY: number): Point => [alongX * x[0] + alongY * y[0], alongX * x[1] + alongY * y[1]]
  const letter = (text: string, [px, py]: Point) => (
    <text className={styles['originName']} x={px} y={py}>
      {text}
    </text>
  )
  return (
    <g data-shape="origin" data-in-sight={isInSight || undefined} transform={`translate(${at[0]} ${at[1]})`}>
      {isInSight ? (
        <>
          <path className={styles['origin']} d={`M${-ARM_PX} 0H${ARM_PX}M0 ${-ARM_PX}V${ARM_PX}`} />
          {letter('0', on(-OFF_PX, -OFF_PX))}
          {letter('x', on(LETTER_PX, -OFF_PX))}
          {letter('y', on(-OFF_PX, LETTER_PX))}
        </>
      ) : (
        letter(`${wayTo(view, panes)} 0`, [0, 0])
      )}
    </g>
  )
})

/** From the right by eighths of a turn, counter-clockwise. */
const WAYS = ['→', '↗', '↑', '↖', '←', '↙', '↓', '↘'] as const

/** The way from the nearest place of the paper to where it isn't in sight. */
function wayTo(view: View, panes: Panes): string {
  const { at } = originOnSheet(view, panes)
  const [px, py] = toScreen(view, panes, [0, 0])
  const eighth = Math.round(Math.atan2(at[1] - py, px - at[0]) / (Math.PI / 4))
  return WAYS[(eighth + 8) % 8] ?? ''
}

interface OriginOnSheet {
  /** On the screen, or the place of the plan's pane that is nearest to it [px]. */
  readonly at: Point
  readonly isInSight: boolean
  /** Which way x and y grow on the screen, each of length 1. */
  readonly x: Point
  readonly y: Point
}

export function originOnSheet(view: View, panes: Panes): OriginOnSheet {
  const [px, py] = toScreen(view, panes, [0, 0])
  const way = (unit: Point): Point => {
    const [tx, ty] = toScreen(view, panes, unit)
    return [(tx - px) / view.scale, (ty - py) / view.scale]
  }
  const inside = (at: number, end: number) => Math.min(end - RIM_PX, Math.max(RIM_PX, at))
  const at: Point = [inside(px, panes.width), inside(py, panes.planHeight)]
  const isInSight = px >= 0 && px <= panes.width && py >= 0 && py <= panes.planHeight
  return { at: isInSight ? [px, py] : at, isInSight, x: way([1, 0]), y: way([0, 1]) }
}
