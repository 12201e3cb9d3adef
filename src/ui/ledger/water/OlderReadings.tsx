import type { ReadingSet, System } from '../../../document/index.ts'
import { formatQuantity } from '../../../units/index.ts'
import { useApp, useAppStore, useCanEdit, useUnits } from '../../context.tsx'
import { Button, Disclosure } from '../../fields/index.ts'
import { dateAndTimeOf } from '../opening/schedule.ts'
import { setInOneLine } from './reading-words.ts'
import styles from './water.module.css'

interface OlderReadingsProps {
  readonly system: System
  readonly latest: ReadingSet | undefined
}

/** All sets but the newest, a line each. */
export function OlderReadings({ system, latest }: OlderReadingsProps) {
  const store = useAppStore()
  const units = useUnits()
  const canEdit = useCanEdit()
  const nowMs = useApp((state) => state.nowMs)
  const older = system.water.readings.map((set, index) => ({ set, index })).filter(({ set }) => set !== latest)
  if (older.length === 0) return null
  const count = formatQuantity('number', older.length, units, { digits: 0 })
  return (
    <Disclosure title="Older readings" aside={count}>
      <ul className={styles['older']}>
        {older.reverse().map(({ set, index }) => (
          <li key={`${set.at}${index}`}>
            <span>
              {dateAndTimeOf(Date.parse(set.at), nowMs)}
              <br />
              <span className={styles['faint']}>{setInOneLine(set, units)}</span>
            </span>
            {canEdit && (
              <Button
                tone="quiet"
                label={`Remove the readings of ${dateAndTimeOf(Date.parse(set.at), nowMs)}`}
                onPress={() =>
                  store.getState().dispatch({ id: 'removeReadings', args: { systemId: system.id, index } })
                }
              >
                Remove
              </Button>
            )}
          </li>
        ))}
      </ul>
    </Disclosure>
  )
}
