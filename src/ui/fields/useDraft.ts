import { type KeyboardEvent, useState } from 'react'
import type { Result } from '../../base/index.ts'
import { useUnits } from '../context.tsx'
import { inOwnUnits } from './ownUnits.ts'
import type { Answer } from './reading.ts'

export interface DraftOptions<T> {
  /** The text of the stored value. */
  readonly shown: string
  readonly read: (text: string) => Result<T>
  readonly onCommit: (value: T) => Answer
  /** Enter makes a new line instead of committing. */
  readonly isMultiline?: boolean
}

export interface Draft {
  readonly text: string
  /** What is wrong with the text that was typed, with how to mend it. */
  readonly complaint: string | undefined
  /** Typed but not finished. */
  readonly isPending: boolean
  readonly type: (text: string) => void
  readonly commit: () => void
  readonly restore: () => void
  readonly onKeyDown: (event: KeyboardEvent) => void
}

/**
 * Text that is only looked at when it is finished (Enter, or leaving the field). Bad text stays as it was typed, with
 * its hint; Escape brings the stored value back; a stored value that changes meanwhile replaces the text.
 */
export function useDraft<T>({ shown, read, onCommit, isMultiline = false }: DraftOptions<T>): Draft {
  const [draft, setDraft] = useState<string | undefined>()
  const [complaint, setComplaint] = useState<string | undefined>()
  const [seen, setSeen] = useState(shown)
  const units = useUnits()
  if (seen !== shown) {
    setSeen(shown)
    setDraft(undefined)
    setComplaint(undefined)
  }

  const restore = () => {
    setDraft(undefined)
    setComplaint(undefined)
  }
  const commit = () => {
    if (draft === undefined || draft === shown) return restore()
    const result = read(draft)
    if (!result.ok) return setComplaint(`${result.problem.what} ${result.problem.hint}`.trim())
    const refused = onCommit(result.value)
    if (refused) return setComplaint(inOwnUnits(`${refused.what} ${refused.hint}`.trim(), units))
    restore()
  }
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === 'Enter' && !isMultiline) {
      event.preventDefault()
      commit()
    } else if (event.key === 'Escape' && draft !== undefined) {
      event.preventDefault()
      event.stopPropagation()
      restore()
    }
  }
  return {
    text: draft ?? shown,
    complaint,
    isPending: draft !== undefined,
    type: (text) => {
      setDraft(text)
      setComplaint(undefined)
    },
    commit,
    restore,
    onKeyDown,
  }
}
