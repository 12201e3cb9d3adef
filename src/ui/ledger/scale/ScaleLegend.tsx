import styles from './scale.module.css'

/** The key to the marks, once above the lines that use them. */
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

function Mark({ children }: { readonly children: React.ReactNode }) {
  return (
    <svg viewBox="0 0 14 16" width="14" height="16" aria-hidden="true">
      {children}
    </svg>
  )
}
