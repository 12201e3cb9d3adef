import { useState } from 'react'
import type { LogEntry, ReadingSet } from '../../../document/index.ts'
import { useCanEdit, useUnits } from '../../context.tsx'
import { Button } from '../../fields/index.ts'
import { useEdit } from '../basin/useBasin.ts'
import { formatAmount, productLabel } from '../opening/amounts.ts'
import { useProducts } from '../opening/useProducts.ts'
import { formatReading, READING_ROWS } from '../scale/index.ts'
import { ReadingsForm } from '../water/ReadingsForm.tsx'
import { type DoseDraft, DoseForm } from './DoseForm.tsx'
import { type LogRow, timeOf } from './entries.ts'
import styles from './logbook.module.css'
import { METHOD_WORDS } from './methods.ts'
import { type NoteDraft, NoteForm } from './NoteForm.tsx'

interface Props {
  readonly systemId: string
  readonly row: LogRow
}

/** One line: when, what, and what can be done about it. */
export function EntryRow({ systemId, row }: Props) {
  const edit = useEdit()
  const canEdit = useCanEdit()
  const [isOpen, setOpen] = useState(false)
  const time = timeOf(row.at)
  const what = row.kind === 'entry' ? (row.entry.kind === 'dose' ? 'dose' : 'note') : 'readings'
  const remove = () =>
    row.kind === 'entry'
      ? edit('removeLog', { systemId, id: row.entry.id })
      : row.kind === 'readings'
        ? edit('removeReadings', { systemId, index: row.index })
        : edit('setFill', { systemId })
  const close = () => setOpen(false)
  const saveSet = (set: ReadingSet) => {
    const refused =
      row.kind === 'readings'
        ? edit('updateReadings', { systemId, index: row.index, set })
        : edit('setFill', { systemId, set })
    if (!refused) close()
    return refused
  }
  if (isOpen && canEdit) {
    return (
      <li className={styles['row']}>
        <time className={styles['time']}>{time}</time>
        {row.kind === 'entry' ? (
          <EntryForm
            entry={row.entry}
            onDone={(changes) => edit('setLog', { systemId, id: row.entry.id, entry: changes }) === undefined}
            onCancel={close}
          />
        ) : (
          <ReadingsForm start={row.set} saveLabel="Keep" onSave={saveSet} onCancel={close} />
        )}
      </li>
    )
  }
  return (
    <li className={styles['row']}>
      <time className={styles['time']} dateTime={row.at}>
        {time}
      </time>
      <div className={styles['what']}>
        {row.kind === 'entry' ? (
          <EntryText entry={row.entry} />
        ) : (
          <ReadingsText set={row.set} isFill={row.kind === 'fill'} />
        )}
        {canEdit ? (
          <div className={styles['tools']}>
            <Button tone="quiet" label={`Edit the ${what} of ${time}`} onPress={() => setOpen(true)}>
              Edit
            </Button>
            <Button tone="quiet" label={`Delete the ${what} of ${time}`} onPress={remove}>
              Delete
            </Button>
          </div>
        ) : null}
      </div>
    </li>
  )
}

function EntryText({ entry }: { readonly entry: LogEntry }) {
  const units = useUnits()
  const list = useProducts()
  if (entry.kind === 'note') return <p className={styles['note']}>{entry.text}</p>
  return (
    <p className={styles['dose']}>
      <span>{productLabel(entry.product, list)}</span>
      <span className={styles['amount']}>{formatAmount(entry.product, entry.amountG, units, list)}</span>
    </p>
  )
}

function ReadingsText({ set, isFill }: { readonly set: ReadingSet; readonly isFill: boolean }) {
  const units = useUnits()
  const known = READING_ROWS.filter((row) => set.values[row.key] !== undefined)
  return (
    <div>
      <p>
        {isFill ? 'Fill water' : 'Readings'} <span className={styles['faint']}>{METHOD_WORDS[set.method]}</span>
      </p>
      <dl className={styles['readings']} aria-label={isFill ? 'Fill water' : 'Readings'}>
        {known.map((row) => (
          <div key={row.key}>
            <dt>{row.short}</dt>
            <dd>{formatReading(row.key, set.values[row.key] ?? Number.NaN, units)}</dd>
          </div>
        ))}
      </dl>
      {set.note ? <p className={styles['note']}>{set.note}</p> : null}
    </div>
  )
}

interface FormProps {
  readonly entry: LogEntry
  readonly onDone: (changes: NoteDraft | DoseDraft) => boolean
  readonly onCancel: () => void
}

function EntryForm({ entry, onDone, onCancel }: FormProps) {
  return entry.kind === 'note' ? (
    <NoteForm start={entry} doneLabel="Keep" onDone={onDone} onCancel={onCancel} />
  ) : (
    <DoseForm start={entry} doneLabel="Keep" onDone={onDone} onCancel={onCancel} />
  )
}
