import { useState } from 'react'
import type { Problem } from '../../../base/index.ts'
import type { ReadingKey, ReadingMethod, ReadingSet, ReadingValues } from '../../../document/index.ts'
import { useApp } from '../../context.tsx'
import {
  Button,
  ChoiceField,
  DateTimeField,
  Disclosure,
  isoFromMs,
  ProblemNote,
  QuantityField,
} from '../../fields/index.ts'
import { READING_ROWS, type ReadingRow } from '../scale/index.ts'
import { METHODS } from './methods.ts'
import { unknownWords } from './reading-words.ts'
import styles from './water.module.css'

interface ReadingsFormProps {
  /** What the form starts from; empty for new readings. */
  readonly start?: ReadingSet | undefined
  readonly saveLabel: string
  readonly onSave: (set: ReadingSet) => Problem | undefined
  readonly onCancel?: (() => void) | undefined
}

/** One moment's readings. An empty field stays unknown, and the form says what that means. */
export function ReadingsForm({ start, saveLabel, onSave, onCancel }: ReadingsFormProps) {
  const nowMs = useApp((state) => state.nowMs)
  const [values, setValues] = useState<ReadingValues>(start?.values ?? {})
  const [method, setMethod] = useState<ReadingMethod>(start?.method ?? 'drop-kit')
  const [at, setAt] = useState(() => start?.at ?? isoFromMs(nowMs))
  const [problem, setProblem] = useState<Problem | undefined>()
  const put = (key: ReadingKey, value: number | undefined) => {
    setProblem(undefined)
    setValues((before) => withValue(before, key, value))
  }
  const field = (row: ReadingRow) => (
    <QuantityField
      key={row.key}
      label={row.label}
      quantity={row.quantity}
      value={values[row.key]}
      onChange={(si) => put(row.key, si)}
      min={row.min}
      max={row.max}
      placeholder="not measured"
    />
  )
  const unknown = unknownWords(values)
  return (
    <form className={styles['section']} onSubmit={(event) => event.preventDefault()}>
      <div className={styles['form']}>
        {READING_ROWS.filter((row) => !row.isMore).map(field)}
        <ChoiceField label="Measured with" value={method} options={METHODS} onChange={setMethod} />
        <DateTimeField label="When" value={at} onChange={setAt} />
      </div>
      <Disclosure title="More readings">{READING_ROWS.filter((row) => row.isMore).map(field)}</Disclosure>
      {unknown && <p className={styles['faint']}>{unknown}</p>}
      {problem && <ProblemNote problem={problem} />}
      <div className={styles['buttons']}>
        <Button
          tone="main"
          onPress={() => setProblem(onSave({ at, method, values, ...(start?.note ? { note: start.note } : {}) }))}
        >
          {saveLabel}
        </Button>
        {onCancel && (
          <Button tone="quiet" onPress={onCancel}>
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
