import type { DoseEntry } from '../../../document/index.ts'
import type { DoseLine } from '../../../plan/index.ts'
import { useApp, useAppStore, useCanEdit } from '../../context.tsx'
import { Button } from '../../fields/index.ts'
import styles from './opening.module.css'
import { dateAndTimeOf } from './schedule.ts'

interface GivenDoseProps {
  readonly line: DoseLine
  readonly entry: DoseEntry | undefined
  readonly systemId: string
}

/** When a done line was done, and the way back. */
export function GivenDose({ line, entry, systemId }: GivenDoseProps) {
  const store = useAppStore()
  const canEdit = useCanEdit()
  const nowMs = useApp((state) => state.nowMs)
  return (
    <div className={styles['given']}>
      <span>{line.given ? `Given ${dateAndTimeOf(line.given.atMs, nowMs)}` : 'Done'}</span>
      {canEdit && entry && (
        <Button
          tone="quiet"
          onPress={() => store.getState().dispatch({ id: 'removeLog', args: { systemId, id: entry.id } })}
        >
          Take back
        </Button>
      )}
    </div>
  )
}
