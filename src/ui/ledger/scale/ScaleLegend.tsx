import { useId } from 'react'
import styles from './scale.module.css'

/** The key to the marks of doses, once above the lines that use them. */
export function ScaleLegend() {
  return (
    <p className={styles['legend']}>
      <span>
        <Mark>
          <line x1="7" x2="7" y1="1.5" y2="14.5" className={styles['tick']} />
        </Mark>
        measured
      </span>
      <span>
        <Mark>
          <circle cx="7" cy="8" r="4" className={styles['filled']} />
        </Mark>
        <em>expected</em>
      </span>
      <span>
        <Mark>
          <circle cx="7" cy="8" r="3.6" className={styles['open']} />
        </Mark>
        <span>
          <em>expected</em>, outside the band
        </span>
      </span>
    </p>
  )
}

/** The key to the marks of readings. */
export function ReadingLegend({ hasReckoned }: { readonly hasReckoned: boolean }) {
  const hatch = useId()
  return (
    <p className={styles['legend']} aria-hidden="true">
      <span>
        <Mark width={26}>
          <path d="M2 8H24M2 5V11M24 5V11" className={styles['bracket']} />
          <line x1="13" x2="13" y1="1.5" y2="14.5" className={styles['tick']} />
        </Mark>
        measured, 19 times in 20 within the bracket
      </span>
      {hasReckoned && (
        <span>
          <Mark>
            <line x1="7" x2="7" y1="1.5" y2="14.5" className={styles['faintTick']} />
          </Mark>
          <em>reckoned</em>
        </span>
      )}
      <span>
        <Mark width={20}>
          <defs>
            <pattern id={hatch} width="4" height="4" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
              <line x1="0" y1="0" x2="0" y2="4" className={styles['hatch']} />
            </pattern>
          </defs>
          <rect x="1" width="18" y="2.5" height="11" fill={`url(#${hatch})`} className={styles['band']} />
        </Mark>
        where it should be
      </span>
    </p>
  )
}

function Mark({ children, width = 14 }: { readonly children: React.ReactNode; readonly width?: number }) {
  return (
    <svg viewBox={`0 0 ${width} 16`} width={width} height="16" aria-hidden="true">
      {children}
    </svg>
  )
}
