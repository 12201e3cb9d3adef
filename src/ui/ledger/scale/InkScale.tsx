import { useId } from 'react'
import type { Band } from '../../../plan/index.ts'
import { useUnits } from '../../context.tsx'
import { formatReading, readingLabel, type ScaleKey } from './readings.ts'
import styles from './scale.module.css'
import { type Domain, isWithin, placeOn } from './scale-map.ts'
import { scaleWords, shortValue } from './scale-words.ts'

const LENGTH = 132
const HEIGHT = 20
const MID = HEIGHT / 2
const EDGE = 7

interface InkScaleProps {
  readonly scaleKey: ScaleKey
  readonly domain: Domain
  readonly band?: Band | undefined
  /** Where it stands before; absent where only one value is shown. */
  readonly before?: number | undefined
  /** Whether `before` is a reading, or itself only expected from an earlier line. */
  readonly isBeforeMeasured?: boolean | undefined
  /** What is expected after. */
  readonly after?: number | undefined
  /** Whether `after` is where it should be; without it the band says so. */
  readonly isInside?: boolean | undefined
}

/**
 * A reading on a small scale in ink: the band hatched, a tick where it was measured, a filled mark where it is expected
 * inside the band, an open one where that falls outside. Readable without colour; the same in words for a screen reader.
 */
export function InkScale({ scaleKey, domain, band, before, isBeforeMeasured = true, after, ...props }: InkScaleProps) {
  const hatch = useId()
  const units = useUnits()
  const place = (value: number) => EDGE + placeOn(domain, value, LENGTH - 2 * EDGE)
  const from = before === undefined ? undefined : place(before)
  const to = after === undefined ? undefined : place(after)
  const isInside = after === undefined ? undefined : (props.isInside ?? isWithin(after, band))
  const format = (value: number) => formatReading(scaleKey, value, units)
  return (
    <div className={styles['row']}>
      <span className={styles['label']} aria-hidden="true">
        {readingLabel(scaleKey)}
      </span>
      <svg
        className={styles['scale']}
        viewBox={`0 0 ${LENGTH} ${HEIGHT}`}
        role="img"
        aria-label={scaleWords({ key: scaleKey, band, before, isBeforeMeasured, after, isInside }, format)}
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
        {from !== undefined && to !== undefined && (
          <line x1={from} x2={to} y1={MID} y2={MID} className={styles['way']} />
        )}
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
          <circle
            cx={to}
            cy={MID}
            r={isInside === false ? 3.6 : 4}
            className={isInside === false ? styles['open'] : styles['filled']}
          />
        )}
      </svg>
      <span className={styles['figures']} aria-hidden="true">
        {before !== undefined && (
          <span className={isBeforeMeasured ? undefined : styles['expected']}>
            {after === undefined ? format(before) : shortValue(format(before), format(after))}
          </span>
        )}
        {before !== undefined && after !== undefined && ' → '}
        {after !== undefined && <span className={styles['expected']}>{format(after)}</span>}
      </span>
    </div>
  )
}
