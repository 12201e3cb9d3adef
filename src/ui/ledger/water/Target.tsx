import type { Problem } from '../../../base/index.ts'
import type { TargetBand, TargetKey } from '../../../document/index.ts'
import { REGIMES, type SourcedBand } from '../../../plan/index.ts'
import { formatQuantity } from '../../../units/index.ts'
import { useAppStore, useCanEdit, useUnits } from '../../context.tsx'
import { Button, NumberField } from '../../fields/index.ts'
import type { ReadingRow } from '../scale/index.ts'
import { inSentence } from './reading-words.ts'
import styles from './water.module.css'

interface TargetProps {
  readonly systemId: string
  readonly targetKey: TargetKey
  readonly row: ReadingRow
  readonly band: SourcedBand
  /** Where codes or makers say otherwise; said of an own band only, but for limits that leave no band at all. */
  readonly warnings: readonly Problem[]
}

const ENDS = [
  { id: 'low', label: 'from' },
  { id: 'aim', label: 'aim' },
  { id: 'high', label: 'to' },
] as const

/** One band: three numbers to type, where they come from, and a word where codes say otherwise. */
export function Target({ systemId, targetKey, row, band, warnings }: TargetProps) {
  const store = useAppStore()
  const canEdit = useCanEdit()
  const shown = warnings.filter(({ code }) => band.isOwn || code === 'floor-above-ceiling')
  const set = (end: 'low' | 'aim' | 'high', value: number | undefined) => {
    if (value === undefined) return undefined
    const { low, aim, high } = band
    const next = { low, aim, high, [end]: value }
    return store.getState().dispatch({ id: 'setTarget', args: { systemId, key: targetKey, band: next } })
  }
  return (
    <div className={styles['target']}>
      <div className={styles['targetRow']}>
        <h4>{row.label}</h4>
        {ENDS.map((end) => (
          <NumberField
            key={end.id}
            label={`${row.label}, ${end.label}`}
            value={band[end.id]}
            digits={row.digits}
            onChange={(value) => set(end.id, value)}
            min={row.min}
            max={row.max}
            hideLabel
            isRequired
          />
        ))}
      </div>
      <p className={styles['faint']}>
        {band.source}
        {band.isOwn && canEdit && (
          <>
            {' '}
            <Button
              tone="quiet"
              label={`${row.label}: back to the usual band`}
              onPress={() => store.getState().dispatch({ id: 'resetTarget', args: { systemId, key: targetKey } })}
            >
              Back to the usual
            </Button>
          </>
        )}
      </p>
      {shown.map(({ code, what, why, hint }) => (
        <p key={code} className={styles['note']} role="note">
          {what} {why} {hint}
        </p>
      ))}
    </div>
  )
}

/** A reading that has no band in this regime: nothing is dosed for it until there is one. */
export function NoTarget({ systemId, targetKey, row }: Omit<TargetProps, 'band' | 'warnings'>) {
  const store = useAppStore()
  const units = useUnits()
  const canEdit = useCanEdit()
  const usual = usualBand(targetKey)
  const shown = (value: number) => formatQuantity(row.quantity, value, units, { digits: row.digits })
  return (
    <div className={styles['target']}>
      <h4>{row.label}</h4>
      <p className={styles['faint']}>
        No target in this regime: nothing is dosed for it.
        {usual && ` Where it is used, ${shown(usual.low)} to ${shown(usual.high)}.`}{' '}
        {canEdit && usual && (
          <Button
            tone="quiet"
            label={`Set a band for ${inSentence(row.label)}`}
            onPress={() =>
              store.getState().dispatch({ id: 'setTarget', args: { systemId, key: targetKey, band: usual } })
            }
          >
            Set a band
          </Button>
        )}
      </p>
    </div>
  )
}

/** The band of the first regime that has one. */
function usualBand(key: TargetKey): TargetBand | undefined {
  const band = REGIMES.rows.map((regime) => regime.bands[key]).find((found) => found !== undefined)
  return band && { low: band.low, aim: band.aim, high: band.high }
}
