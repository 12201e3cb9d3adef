import type { Band } from '../../../plan/index.ts'
import { useUnits } from '../../context.tsx'
import { formatReading, readingLabel, type ScaleKey } from './readings.ts'
import { ScaleDrawing } from './ScaleDrawing.tsx'
import styles from './scale.module.css'
import { type Domain, isWithin } from './scale-map.ts'
import { scaleWords, shortValue } from './scale-words.ts'

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
  const units = useUnits()
  const isInside = after === undefined ? undefined : (props.isInside ?? isWithin(after, band))
  const format = (value: number) => formatReading(scaleKey, value, units)
  return (
    <div className={styles['row']}>
      <span className={styles['label']} aria-hidden="true">
        {readingLabel(scaleKey)}
      </span>
      <ScaleDrawing
        domain={domain}
        band={band}
        before={before}
        isBeforeMeasured={isBeforeMeasured}
        after={after}
        isInside={isInside}
        words={scaleWords({ key: scaleKey, band, before, isBeforeMeasured, after, isInside }, format)}
      />
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
