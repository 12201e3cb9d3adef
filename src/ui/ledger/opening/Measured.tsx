import { useState } from 'react'
import type { ReadingSet } from '../../../document/index.ts'
import { useAppStore } from '../../context.tsx'
import { Button } from '../../fields/index.ts'
import { ReadingsForm } from '../water/ReadingsForm.tsx'
import styles from './opening.module.css'

interface MeasuredProps {
  readonly number: number
  /** The line's key, which stays where numbers change. */
  readonly line: string
  readonly systemId: string
}

/** What was measured after a line: the rest of the plan then counts on from it. */
export function Measured({ number, line, systemId }: MeasuredProps) {
  const store = useAppStore()
  const draft = `after-${line}`
  const [isOpen, setOpen] = useState(() => store.getState().drafts[draft] !== undefined)
  const save = (set: ReadingSet) => {
    const refused = store.getState().dispatch({ id: 'addReadings', args: { systemId, set } })
    if (!refused) setOpen(false)
    return refused
  }
  if (!isOpen)
    return (
      <div className={styles['buttons']}>
        <Button onPress={() => setOpen(true)}>Enter what you measured after line {number}</Button>
      </div>
    )
  return (
    <section className={styles['measured']} aria-label={`Measured after line ${number}`}>
      <p className={styles['faint']}>
        The plan is made anew from these readings. A reading that you leave out counts as not measured.
      </p>
      <ReadingsForm
        draftKey={draft}
        saveLabel="Save and plan on from here"
        onSave={save}
        onCancel={() => setOpen(false)}
      />
    </section>
  )
}
