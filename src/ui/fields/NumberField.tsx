import { formatForEntry, formatQuantity } from '../../units/index.ts'
import { type Answer, readNumber } from './reading.ts'
import { type FieldLook, TypedField } from './TypedField.tsx'
import { useDraft } from './useDraft.ts'

export interface NumberFieldProps extends FieldLook {
  readonly value: number | undefined
  readonly onChange: (value: number | undefined) => Answer
  /** Written after the number; the number alone is typed. */
  readonly unitLabel?: string | undefined
  readonly min?: number | undefined
  readonly max?: number | undefined
  /** Decimals shown; with 0 only whole numbers are kept. */
  readonly digits?: number | undefined
  readonly isRequired?: boolean | undefined
}

function shown(value: number, digits: number | undefined): string {
  return digits === undefined
    ? formatForEntry('number', value, 'metric')
    : formatQuantity('number', value, 'metric', { digits })
}

/** A plain number: a count, or one whose unit does not depend on the units chosen. */
export function NumberField(props: NumberFieldProps) {
  const { value, onChange, unitLabel, min, max, digits, isRequired = false, ...look } = props
  const draft = useDraft<number | undefined>({
    shown: value === undefined ? '' : shown(value, digits),
    read: (text) => readNumber(text, { min, max }, digits),
    onCommit: (n) => (n === undefined && isRequired ? undefined : onChange(n)),
  })
  return <TypedField {...look} draft={draft} suffix={unitLabel} inputMode="decimal" />
}
