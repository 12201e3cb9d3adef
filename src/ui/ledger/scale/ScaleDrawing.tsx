import { useId } from 'react'
import type { Band } from '../../../plan/index.ts'
import styles from './scale.module.css'
import { type Domain, placeOn } from './scale-map.ts'
import type { Tolerance } from './tolerance.ts'

const LENGTH = 132
const HEIGHT = 20
const MID = HEIGHT / 2
const EDGE = 7
const CAP = 3.2

interface ScaleDrawingProps {
  readonly domain: Domain
  readonly band?: Band | undefined
  readonly before?: number | undefined
  readonly isBeforeMeasured?: boolean | undefined
  readonly after?: number | undefined
  readonly isInside?: boolean | undefined
  /** How far a reading may be off. */
  readonly tolerance?: Tolerance | undefined
  /** What it shows, in words; without them the drawing is hidden from a screen reader, which has the figures beside it. */
  readonly words?: string | undefined
}

/** The marks of one reading in ink: hatched band, tick with its bracket, way, filled or open mark. */
export function ScaleDrawing({ domain, band, before, isBeforeMeasured = true, after, ...props }: ScaleDrawingProps) {
  const hatch = useId()
  const place = (value: number) => EDGE + placeOn(domain, value, LENGTH - 2 * EDGE)
  const from = before === undefined ? undefined : place(before)
  const to = after === undefined ? undefined : place(after)
  const isOutside = props.isInside === false
  return (
    <svg
      className={styles['scale']}
      viewBox={`0 0 ${LENGTH} ${HEIGHT}`}
      role="img"
      aria-label={props.words ?? ''}
      aria-hidden={props.words === undefined}
    >
      <defs>
        <pattern id={hatch} width="4" height="4" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <line x1="0" y1="0" x2="0" y2="4" className={styles['hatch']} />
        </pattern>
      </defs>
      <line x1="0" x2={LENGTH} y1={MID} y2={MID} className={styles['axis']} />
      {band && (
        <rect
          x={place(band.low)}
          width={Math.max(2, place(band.high) - place(band.low))}
          y={MID - 5.5}
          height="11"
          fill={`url(#${hatch})`}
          className={styles['band']}
        />
      )}
      {from !== undefined && to !== undefined && <line x1={from} x2={to} y1={MID} y2={MID} className={styles['way']} />}
      {props.tolerance && <Bracket tolerance={props.tolerance} place={place} />}
      {from !== undefined && (
        <line
          x1={from}
          x2={from}
          y1={MID - 6.5}
          y2={MID + 6.5}
          className={isBeforeMeasured ? styles['tick'] : styles['faintTick']}
        />
      )}
      {to !== undefined && (
        <circle cx={to} cy={MID} r={isOutside ? 3.6 : 4} className={isOutside ? styles['open'] : styles['filled']} />
      )}
    </svg>
  )
}

/** How far it may be off: a line with a cap at each end, or with a point where the test could not see further. */
function Bracket({ tolerance, place }: { readonly tolerance: Tolerance; readonly place: (value: number) => number }) {
  const [low, high] = [place(tolerance.low), place(tolerance.high)]
  const end = (x: number, outward: number, isOpen: boolean) =>
    isOpen
      ? `M${x - outward * CAP} ${MID - CAP}L${x} ${MID}L${x - outward * CAP} ${MID + CAP}`
      : `M${x} ${MID - CAP}V${MID + CAP}`
  const path = `M${low} ${MID}H${high}${end(low, -1, tolerance.openAt === 'low')}${end(high, 1, tolerance.openAt === 'high')}`
  return <path d={path} className={styles['bracket']} />
}
