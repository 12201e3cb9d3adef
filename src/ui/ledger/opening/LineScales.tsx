import type { Movement } from '../../../plan/index.ts'
import { useUnits } from '../../context.tsx'
import { type Domain, formatReading, InkScale } from '../scale/index.ts'
import { visibleMovements } from './lines.ts'
import styles from './opening.module.css'

interface LineScalesProps {
  readonly movements: readonly Movement[]
  readonly domains: ReadonlyMap<Movement['key'], Domain>
  readonly measured: ReadonlySet<Movement['key']> | undefined
}

/** The readings that a line moves, a scale each. */
export function LineScales({ movements, domains, measured }: LineScalesProps) {
  const units = useUnits()
  const visible = visibleMovements(movements, (key, value) => formatReading(key, value, units))
  if (visible.length === 0) return null
  return (
    <div className={styles['scales']}>
      {visible.map((movement) => {
        const domain = domains.get(movement.key)
        return domain ? (
          <InkScale
            key={movement.key}
            scaleKey={movement.key}
            domain={domain}
            band={movement.band}
            before={movement.before}
            isBeforeMeasured={measured?.has(movement.key) ?? false}
            after={movement.after}
            isInside={movement.inBand}
          />
        ) : null
      })}
    </div>
  )
}
