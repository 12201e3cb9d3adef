import type { DoseEntry } from '../../../document/index.ts'
import { useApp, useAppStore, useCanEdit, useUnits } from '../../context.tsx'
import { Button } from '../../fields/index.ts'
import { formatAmount } from './amounts.ts'
import styles from './opening.module.css'
import { dateAndTimeOf } from './schedule.ts'

/** What was written down for a line, each with its way back. */
export function GivenDoses({
  entries,
  systemId,
}: {
  readonly entries: readonly DoseEntry[]
  readonly systemId: string
}) {
  const store = useAppStore()
  const units = useUnits()
  const canEdit = useCanEdit()
  const nowMs = useApp((state) => state.nowMs)
  if (entries.length === 0) return null
  return (
    <ul className={styles['given']} aria-label="Written down">
      {entries.map((entry) => (
        <li key={entry.id}>
          <span>
            Given {dateAndTimeOf(Date.parse(entry.at), nowMs)}:{' '}
            <strong>{formatAmount(entry.product, entry.amountG, units)}</strong>
          </span>
          {canEdit && (
            <Button
              tone="quiet"
              onPress={() => store.getState().dispatch({ id: 'removeLog', args: { systemId, id: entry.id } })}
            >
              Take back
            </Button>
          )}
        </li>
      ))}
    </ul>
  )
}
