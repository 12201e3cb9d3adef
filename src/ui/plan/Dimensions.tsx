import { memo } from 'react'
import type { Bounds } from '../../basin/index.ts'
import { formatQuantity, type UnitSystem } from '../../units/index.ts'
import { classes } from '../fields/index.ts'
import { boundsInSheet, isNarrow, type Panes, type View } from '../sheet/view.ts'
import styles from './plan.module.css'

interface Props {
  readonly bounds: Bounds
  readonly view: View
  readonly panes: Panes
  readonly units: UnitSystem
  /** One standard deviation of a sketch's scale, as a fraction; 0 of a drawing. */
  readonly scaleSigma: number
  readonly canEdit: boolean
  readonly selected: 'x' | 'y' | undefined
  readonly onPress: (axis: 'x' | 'y') => void
}

const AWAY_PX = 30
const EDGE_PX = 26

/** Height on the screen of the line that the overall length stands on, over an outline's uppermost place [px]. */
export function acrossLineY(topPx: number): number {
  return Math.max(EDGE_PX, topPx - AWAY_PX)
}

/** Overall length and width, written on the drawing; pressed, they are typed. */
export const Dimensions = memo(function Dimensions(props: Props) {
  const { bounds, view, panes, units, scaleSigma, canEdit, selected, onPress } = props
  const box = boundsInSheet(bounds, view.turn)
  const x = (u: number) => panes.width / 2 + (u - view.u) * view.scale
  const y = (v: number) => panes.planHeight / 2 - (v - view.v) * view.scale
  const [left, right, top, bottom] = [x(box.minX), x(box.maxX), y(box.maxY), y(box.minY)]
  const isTurned = view.turn % 2 === 1
  const lineY = acrossLineY(top)
  const lineX = Math.min(panes.width - 14, right + AWAY_PX + (isNarrow(panes) ? 14 : 30))
  const middleX = Math.min(panes.width - 60, Math.max(60, (left + right) / 2))
  const middleY = Math.min(panes.planHeight - 40, Math.max(lineY + 34, (top + bottom) / 2))
  const write = (m: number) =>
    formatQuantity('length', m, units, { style: 'long', ...(scaleSigma > 0 ? { sigma: scaleSigma * m } : {}) })
  const across = write(box.maxX - box.minX)
  const upright = write(box.maxY - box.minY)
  // A line whose ends are out of sight would lie across the drawing and measure nothing.
  const isAcrossSeen = left > 0 && right < panes.width && top - AWAY_PX > 4
  const isUprightSeen = top > 0 && bottom < panes.planHeight + 4 && right + AWAY_PX < panes.width
  return (
    <>
      {isAcrossSeen ? (
        <Dimension
          axis={isTurned ? 'y' : 'x'}
          name="Overall length"
          text={across}
          at={[middleX, lineY]}
          angle={0}
          line={`M${left} ${lineY - 7}V${lineY + 7}M${right} ${lineY - 7}V${lineY + 7}M${left} ${lineY}H${right}`}
          {...{ canEdit, selected, onPress }}
        />
      ) : null}
      {isUprightSeen ? (
        <Dimension
          axis={isTurned ? 'x' : 'y'}
          name="Overall width"
          text={upright}
          at={[lineX, middleY]}
          angle={-90}
          line={`M${lineX - 7} ${top}H${lineX + 7}M${lineX - 7} ${bottom}H${lineX + 7}M${lineX} ${top}V${bottom}`}
          {...{ canEdit, selected, onPress }}
        />
      ) : null}
    </>
  )
})

interface DimensionProps extends Pick<Props, 'canEdit' | 'selected' | 'onPress'> {
  readonly axis: 'x' | 'y'
  readonly name: string
  readonly text: string
  readonly at: readonly [number, number]
  readonly angle: number
  readonly line: string
}

function Dimension({ axis, name, text, at, angle, line, canEdit, selected, onPress }: DimensionProps) {
  const half = text.length * 3.6 + 10
  const button = canEdit
    ? {
        role: 'button',
        tabIndex: 0,
        'data-item': `dimension-${axis}`,
        'aria-label': `${name} ${text}. Press to type it.`,
        onClick: () => onPress(axis),
      }
    : { role: 'img', 'aria-label': `${name} ${text}` }
  return (
    <>
      <path className={styles['dimensionLine']} d={line} />
      <g
        className={classes(styles['dimension'], selected === axis && styles['dimensionSelected'])}
        transform={`translate(${at[0]} ${at[1]}) rotate(${angle})`}
        {...button}
      >
        <rect className={styles['dimensionPlate']} x={-half} y={-13} width={2 * half} height={26} rx={3} />
        <text className={styles['dimensionText']}>{text}</text>
      </g>
    </>
  )
}
