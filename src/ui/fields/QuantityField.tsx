import { type KeyboardEvent, useEffect } from 'react'
import { displayStep, formatForEntry, type Quantity, unitLabel } from '../../units/index.ts'
import { useUnits } from '../context.tsx'
import { type Answer, readQuantity } from './reading.ts'
import { type FieldLook, TypedField } from './TypedField.tsx'
import { useDraft } from './useDraft.ts'

export interface QuantityFieldProps extends FieldLook {
  readonly quantity: Quantity
  /** In the canonical unit; undefined where it is not known. */
  readonly value: number | undefined
  /** Called with undefined when the field was emptied. A returned problem is shown and the typed text stays. */
  readonly onChange: (si: number | undefined) => Answer
  /** In the canonical unit. */
  readonly min?: number | undefined
  readonly max?: number | undefined
  readonly isExact?: boolean | undefined
  /** An emptied field brings its value back instead of becoming unknown. */
  readonly isRequired?: boolean | undefined
  /** Told when typing begins, and when it is taken up or given up: until then the value is not what stands there. */
  readonly onPending?: ((isPending: boolean) => void) | undefined
}

/** A number with a unit, typed the way people type it; arrow keys step it. */
export function QuantityField(props: QuantityFieldProps) {
  const { quantity, value, onChange, min, max, isExact, isRequired = false, onPending, ...look } = props
  const system = useUnits()
  const draft = useDraft<number | undefined>({
    shown: value === undefined ? '' : formatForEntry(quantity, value, system),
    read: (text) => readQuantity(quantity, text, system, { min, max, isExact }),
    onCommit: (si) => (si === undefined && isRequired ? undefined : onChange(si)),
  })
  const { isPending } = draft
  useEffect(() => onPending?.(isPending), [onPending, isPending])
  const step = (event: KeyboardEvent) => {
    const direction = event.key === 'ArrowUp' ? 1 : event.key === 'ArrowDown' ? -1 : 0
    // What is being typed is not stepped over.
    if (direction === 0 || value === undefined || draft.isPending || event.altKey) return
    event.preventDefault()
    const next = value + direction * (event.shiftKey ? 10 : 1) * displayStep(quantity, system)
    onChange(Math.min(max ?? Number.POSITIVE_INFINITY, Math.max(min ?? Number.NEGATIVE_INFINITY, next)))
  }
  return (
    <TypedField
      {...look}
      placeholder={look.placeholder ?? unitLabel(quantity, system)}
      draft={draft}
      onKeyDown={step}
    />
  )
}
