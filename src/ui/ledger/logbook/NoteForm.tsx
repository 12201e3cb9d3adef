import { useState } from 'react'
import type { NoteEntry } from '../../../document/index.ts'
import { Button, DateTimeField, TextField } from '../../fields/index.ts'
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
  return (
    <div className={styles['form']}>
      <DateTimeField label="When" value={at} onChange={setAt} />
      <TextField label="Note" value={text} onChange={setText} isMultiline isLive placeholder="What was seen or done" />
      <div className={styles['buttons']}>
        <Button
          tone="main"
          isDisabled={text.trim() === ''}
          onPress={() => onDone({ at, text: text.trim() }) && onCancel()}
        >
          {doneLabel}
        </Button>
        <Button tone="quiet" onPress={onCancel}>
          Leave it
        </Button>
      </div>
    </div>
  )
}
