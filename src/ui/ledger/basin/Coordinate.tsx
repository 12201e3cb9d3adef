import type { Point } from '../../../basin/index.ts'
import { type Answer, coordinateRange, QuantityField } from '../../fields/index.ts'

interface Props {
  /** What lies there, as it is said before the axis. */
  readonly of: string
  readonly axis: 0 | 1
  readonly at: Point
  readonly onMove: (to: Point) => Answer
  readonly isCompact?: boolean
}

/** One coordinate of a place, x (0) or y, that can be typed; the other stays. */
export function Coordinate({ of, axis, at, onMove, isCompact = false }: Props) {
  return (
    <QuantityField
      isCompact={isCompact}
      hideLabel={!isCompact}
      isRequired
      label={`${of}, ${axis === 0 ? 'x' : 'y'}`}
      quantity="length"
      value={at[axis]}
      {...coordinateRange(at[axis])}
      onChange={(to) => (to === undefined ? undefined : onMove(axis === 0 ? [to, at[1]] : [at[0], to]))}
    />
  )
}

/** Both coordinates of a place, as two cells of its row. */
export function CoordinateCells(props: Pick<Props, 'of' | 'at' | 'onMove'>) {
  return (
    <>
      <td>
        <Coordinate axis={0} {...props} />
      </td>
      <td>
        <Coordinate axis={1} {...props} />
      </td>
    </>
  )
}
