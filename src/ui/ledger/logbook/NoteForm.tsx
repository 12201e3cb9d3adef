import { useRef, useState } from 'react'
import type { NoteEntry } from '../../../document/index.ts'
import { Button, DateTimeField, finishTyping, SaveButton, TextField, useFormFocus } from '../../fields/index.ts'
import styles from './logbook.module.css'

export interface NoteDraft {
  readonly at: string
  readonly text: string
}

interface Props {
  readonly start: Pick<NoteEntry, 'at' | 'text'>
  readonly doneLabel: string
  /** Answers whether it was taken. */
  readonly onDone: (note: NoteDraft) => boolean
  readonly onCancel: () => void
}

/** A note to write or to mend. */
export function NoteForm({ start, doneLabel, onDone, onCancel }: Props) {
  const [at, setAt] = useState(start.at)
  const [text, setText] = useState(start.text)
  // What was put in last: the press takes up the open field in the same breath, before the next rendering.
  const newestAt = useRef(start.at)
  const form = useRef<HTMLDivElement>(null)
  useFormFocus(form, true)
  const finish = () => {
    if (finishTyping(form.current) && onDone({ at: newestAt.current, text: text.trim() })) onCancel()
  }
  return (
    <div ref={form} className={styles['form']}>
      <DateTimeField
        label="When"
        value={at}
        onChange={(iso) => {
          newestAt.current = iso
          setAt(iso)
        }}
      />
      <TextField label="Note" value={text} onChange={setText} isMultiline isLive placeholder="What was seen or done" />
      <div className={styles['buttons']}>
        <SaveButton isDisabled={text.trim() === ''} onPress={finish}>
          {doneLabel}
        </SaveButton>
        <Button tone="quiet" onPress={onCancel}>
          Leave it
        </Button>
      </div>
    </div>
  )
}
