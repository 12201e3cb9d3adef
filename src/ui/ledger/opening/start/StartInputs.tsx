import type { Start } from '../../../../document/index.ts'
import { START_MODES } from '../../../../plan/index.ts'
import { formatQuantity } from '../../../../units/index.ts'
import { useAppStore, useUnits } from '../../../context.tsx'
import { inOwnUnits, NumberField, QuantityField } from '../../../fields/index.ts'
import styles from '../opening.module.css'

/** What the start asks its owner, a field each; an empty one is unknown or as usual. */
export function StartInputs({ start, systemId }: { readonly start: Start; readonly systemId: string }) {
  const store = useAppStore()
  const units = useUnits()
  const inputs = START_MODES.get(start.mode)?.inputs ?? []
  if (inputs.length === 0) return null
  return (
    <div className={styles['fields']}>
      {inputs.map((input) => {
        const look = {
          label: input.label,
          value: start.values?.[input.key],
          onChange: (value: number | undefined) =>
            store.getState().dispatch({ id: 'setStartValue', args: { systemId, key: input.key, value } }),
          min: input.low,
          max: input.high,
          description: input.help === undefined ? undefined : inOwnUnits(input.help, units),
          placeholder:
            input.usual === undefined
              ? input.isNeeded
                ? 'needed'
                : 'unknown'
              : `usual: ${formatQuantity(input.quantity, input.usual, units)}`,
        }
        return input.quantity === 'number' ? (
          <NumberField key={input.key} {...look} />
        ) : (
          <QuantityField key={input.key} {...look} quantity={input.quantity} />
        )
      })}
    </div>
  )
}
