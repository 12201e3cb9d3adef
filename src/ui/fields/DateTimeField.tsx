import { fail, ok } from '../../base/index.ts'
import { useApp } from '../context.tsx'
import { isoFromLocal, localFromIso } from './localTime.ts'
import { notYet } from './notYet.ts'
import type { Answer } from './reading.ts'
import { type FieldLook, TypedField } from './TypedField.tsx'
import { useDraft } from './useDraft.ts'

export interface DateTimeFieldProps extends FieldLook {
  /** ISO 8601 with offset or Z. */
  readonly value: string | undefined
  readonly onChange: (iso: string) => Answer
  /** Of something done or measured: a moment that is still to come is refused. */
  readonly isPast?: boolean | undefined
}

/** A moment on this device's clock, kept with its offset. */
export function DateTimeField({ value, onChange, isPast = false, ...look }: DateTimeFieldProps) {
  const nowMs = useApp((state) => state.nowMs)
  const draft = useDraft<string>({
    shown: localFromIso(value),
    read: (text) => {
      const iso = isoFromLocal(text)
      const early = isPast && iso !== undefined ? notYet(iso, nowMs) : undefined
      if (early) return fail(early)
      if (iso !== undefined) return ok(iso)
      return fail({
        code: 'field-not-a-moment',
        path: '',
        what: 'This is not a date and time.',
        why: 'The log is kept in order of time.',
        hint: 'Give day, month, year, hour and minute.',
      })
    },
    onCommit: onChange,
  })
  return <TypedField {...look} draft={draft} type="datetime-local" width="wide" />
}
