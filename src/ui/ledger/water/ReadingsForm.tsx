import { useRef, useState } from 'react'
import type { Problem } from '../../../base/index.ts'
import type { ReadingKey, ReadingMethod, ReadingSet, ReadingValues } from '../../../document/index.ts'
import { trapsFor } from '../../../water/index.ts'
import { useApp, useAppStore, useUnits } from '../../context.tsx'
import {
  type Answer,
  Button,
  ChoiceField,
  DateTimeField,
  Disclosure,
  finishTyping,
  inOwnUnits,
  isoFromMs,
  notYet,
  ProblemNote,
  QuantityField,
  SaveButton,
  useFormFocus,
} from '../../fields/index.ts'
import { READING_ROWS, type ReadingGroup, type ReadingRow } from '../scale/index.ts'
import { clashesOf } from './clashes.ts'
import { METHODS } from './methods.ts'
import { unitsWords, unknownWords } from './reading-words.ts'
import styles from './water.module.css'

interface ReadingsFormProps {
  /** Under this name what is typed is kept while another chapter is looked at; without it, it goes with the form. */
  readonly draftKey?: string | undefined
  /** What the form starts from; empty for new readings. */
  readonly start?: ReadingSet | undefined
  readonly saveLabel: string
  readonly onSave: (set: ReadingSet) => Answer
  readonly onCancel?: (() => void) | undefined
}

const NOTHING: Problem = {
  code: 'no-readings',
  path: '',
  what: 'There is nothing to save yet.',
  why: 'Every field is empty.',
  hint: 'Type at least one reading.',
}

const GROUPS: readonly { readonly id: ReadingGroup; readonly label: string; readonly note: string }[] = [
  { id: 'chlorine', label: 'Chlorine', note: 'One of the two tells the other: combined is total less free.' },
  { id: 'hardness', label: 'Hardness', note: 'A strip’s hardness is total hardness; calcium is reckoned from it.' },
  { id: 'salts', label: 'Salts', note: 'Where salt is not measured, a meter tells it.' },
  { id: 'metals', label: 'Metals', note: 'From wells, old pipes, heaters and mineral cartridges.' },
]

/** One moment's readings. An empty field stays unknown, and the form says what that means. */
export function ReadingsForm({ draftKey, start: given, saveLabel, onSave, onCancel }: ReadingsFormProps) {
  const store = useAppStore()
  const nowMs = useApp((state) => state.nowMs)
  const units = useUnits()
  const [start] = useState(() => (draftKey && store.getState().drafts[draftKey]) || given)
  const [values, setValues] = useState<ReadingValues>(start?.values ?? {})
  const [method, setMethod] = useState<ReadingMethod>(start?.method ?? 'drop-kit')
  const [at, setAt] = useState(() => start?.at ?? isoFromMs(nowMs))
  const [problem, setProblem] = useState<Problem | undefined>()
  const form = useRef<HTMLFormElement>(null)
  useFormFocus(form, onCancel !== undefined)
  // What was put in last: a press of Save takes up the open field in the same breath, before the next rendering.
  const newest = useRef({ values, at, method })
  const keep = (change: Partial<ReadingSet>) => {
    newest.current = { ...newest.current, ...change }
    if (draftKey) store.getState().keepDraft(draftKey, typed())
  }
  const typed = (): ReadingSet => ({ ...newest.current, ...(start?.note ? { note: start.note } : {}) })
  const forget = () => draftKey && store.getState().keepDraft(draftKey, undefined)
  const put = (key: ReadingKey, value: number | undefined) => {
    setProblem(undefined)
    keep({ values: withValue(newest.current.values, key, value) })
    setValues(newest.current.values)
  }
  const putMoment = (iso: string) => {
    keep({ at: iso })
    setAt(iso)
  }
  const putMethod = (next: ReadingMethod) => {
    keep({ method: next })
    setMethod(next)
  }
  const giveUp = () => {
    forget()
    onCancel?.()
  }
  const save = () => {
    if (!finishTyping(form.current)) return
    const set = typed()
    const isEmpty = Object.keys(set.values).length === 0
    // A moment that stood there at first was not typed, so its field has not judged it.
    const refused = isEmpty ? NOTHING : (notYet(set.at, store.getState().nowMs) ?? onSave(set))
    setProblem(refused ?? undefined)
    if (!refused) forget()
  }
  const traps = trapsFor(values, method)
  const field = (row: ReadingRow) => (
    <QuantityField
      key={row.key}
      label={row.label}
      quantity={row.quantity}
      value={values[row.key]}
      onChange={(si) => put(row.key, si === undefined ? undefined : asSaved(row, si))}
      min={row.min}
      max={row.max}
      placeholder="not measured"
      // What spoils several readings is said at the first of them.
      description={traps
        .filter(({ trap, concerns }) => !trap.isAlways && concerns[0] === row.key)
        .map(({ trap }) => inOwnUnits(trap.text, units))
        .join(' ')}
    />
  )
  const unknown = unknownWords(values, units)
  return (
    <form ref={form} className={styles['section']} onSubmit={(event) => event.preventDefault()}>
      <div className={styles['form']}>
        {READING_ROWS.filter((row) => !row.isMore).map(field)}
        <ChoiceField label="Measured with" value={method} options={METHODS} onChange={putMethod} />
        <DateTimeField label="When" value={at} onChange={putMoment} isPast />
      </div>
      <Disclosure title="More readings" aside="chlorine, hardness, salts, metals" isScreenOnly>
        {GROUPS.map((group) => (
          <fieldset key={group.id} className={styles['group']}>
            <legend>{group.label}</legend>
            <p className={styles['faint']}>{group.note}</p>
            {READING_ROWS.filter((row) => row.group === group.id).map(field)}
          </fieldset>
        ))}
      </Disclosure>
      <p className={styles['faint']}>{unitsWords(units)}</p>
      {unknown && <p className={styles['faint']}>{unknown}</p>}
      {clashesOf(values, method).map((clash) => (
        <ProblemNote key={clash.code} problem={clash} />
      ))}
      {problem && <ProblemNote problem={problem} />}
      <div className={styles['buttons']}>
        <SaveButton onPress={save}>{saveLabel}</SaveButton>
        {onCancel && (
          <Button tone="quiet" onPress={giveUp}>
            Cancel
          </Button>
        )}
      </div>
    </form>
  )
}

/** Emptied fields leave the set altogether: an absent reading is unknown. */
function withValue(values: ReadingValues, key: ReadingKey, value: number | undefined): ReadingValues {
  const { [key]: _, ...rest } = values
  return value === undefined ? rest : { ...rest, [key]: value }
}

/** What is shown is what is saved: hardness and alkalinity out of other units come to a tenth, finer than any test reads. */
function asSaved(row: ReadingRow, si: number): number {
  return row.quantity === 'hardness' || row.quantity === 'alkalinity' ? Math.round(si * 10) / 10 : si
}
