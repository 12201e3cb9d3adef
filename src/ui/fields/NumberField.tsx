import { formatForEntry, formatQuantity, type UnitSystem } from '../../units/index.ts'
import { useUnits } from '../context.tsx'
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

function shown(value: number, digits: number | undefined, system: UnitSystem): string {
  return digits === undefined
    ? formatForEntry('number', value, system)
    : formatQuantity('number', value, system, { digits })
}

/** A plain number: a count, or one whose unit does not depend on the units chosen; only how its thousands are parted does. */
export function NumberField(props: NumberFieldProps) {
  const { value, onChange, unitLabel, min, max, digits, isRequired = false, ...look } = props
  const system = useUnits()
  const draft = useDraft<number | undefined>({
    shown: value === undefined ? '' : shown(value, digits, system),
    read: (text) => readNumber(text, system, { min, max }, digits),
    onCommit: (n) => (n === undefined && isRequired ? undefined : onChange(n)),
  })
  return <TypedField {...look} draft={draft} suffix={unitLabel} inputMode="decimal" />
}
