import { useMemo, useState } from 'react'
import { useApp, useCanEdit } from '../../context.tsx'
import { Button, isoFromMs } from '../../fields/index.ts'
import { systemOf, useEdit } from '../basin/useBasin.ts'
import { DoseForm } from './DoseForm.tsx'
import { EntryRow } from './EntryRow.tsx'
import { daysOf, rowsOf } from './entries.ts'
import { Keeping } from './Keeping.tsx'
import styles from './logbook.module.css'
import { NoteForm } from './NoteForm.tsx'

/** The last chapter: what was measured, given and seen, the newest first; and where it is all kept. */
export function Logbook() {
  const system = useApp((state) => systemOf(state.spec))
  const canEdit = useCanEdit()
  const days = useMemo(() => (system ? daysOf(rowsOf(system)) : []), [system])
  return (
    <div className={styles['chapter']}>
      <h2>Logbook</h2>
      {system && canEdit ? <Writing systemId={system.id} /> : null}
      {days.length === 0 ? (
        <p className={styles['empty']}>
          Nothing is written here yet. Readings from Water, doses ticked in Opening, and what you write yourself come
          together in this list, the newest first.
        </p>
      ) : (
        days.map((day) => (
          <section key={day.label} className={styles['day']} aria-label={day.label}>
            <h3>{day.label}</h3>
            <ol>{system ? day.rows.map((row) => <EntryRow key={row.key} systemId={system.id} row={row} />) : null}</ol>
          </section>
        ))
      )}
      <Keeping />
    </div>
  )
}

function Writing({ systemId }: { readonly systemId: string }) {
  const edit = useEdit()
  const nowMs = useApp((state) => state.nowMs)
  const [form, setForm] = useState<'note' | 'dose' | undefined>()
  const close = () => setForm(undefined)
  const at = isoFromMs(nowMs)
  if (form === 'note') {
    return (
      <NoteForm
        start={{ at, text: '' }}
        doneLabel="Write it down"
        onDone={(note) => edit('addNote', { systemId, ...note }) === undefined}
        onCancel={close}
      />
    )
  }
  if (form === 'dose') {
    return (
      <DoseForm
        start={{ at, product: undefined, amountG: undefined }}
        doneLabel="Write it down"
        onDone={(dose) => edit('logDose', { systemId, ...dose }) === undefined}
        onCancel={close}
      />
    )
  }
  return (
    <div className={styles['buttons']}>
      <Button onPress={() => setForm('note')}>Write a note</Button>
      <Button onPress={() => setForm('dose')}>Enter a dose given</Button>
    </div>
  )
}
