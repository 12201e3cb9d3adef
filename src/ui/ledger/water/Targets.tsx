import { deriveTargets, deriveWater } from '../../../derive/index.ts'
import type { System, TargetBand, TargetKey } from '../../../document/index.ts'
import { REGIMES, type SourcedBand, TARGET_KEYS } from '../../../plan/index.ts'
import { formatQuantity, unitLabel } from '../../../units/index.ts'
import { useApp, useAppStore, useCanEdit, useUnits } from '../../context.tsx'
import { Button, NumberField } from '../../fields/index.ts'
import { type ReadingRow, readingRow } from '../scale/index.ts'
import { codeWarning } from './code-limits.ts'
import { inSentence } from './reading-words.ts'
import styles from './water.module.css'

/** The bands to work to, each with its source; the owner's own rule. */
export function Targets({ system }: { readonly system: System }) {
  const spec = useApp((state) => state.spec)
  const nowMs = useApp((state) => state.nowMs)
  const targets = deriveTargets(spec, system.id)
  const stabiliser = deriveWater(spec, system.id, nowMs).known.cya_mg_per_L
  return (
    <section className={styles['section']}>
      <h2>Targets</h2>
      <p className={styles['intro']}>
        Bands, not points: a reading inside its band gets no line in the plan. A line that has to be written aims for
        the middle number.
      </p>
      <div className={styles['targets']}>
        {TARGET_KEYS.map((key) => {
          const row = readingRow(key)
          if (!row) return null
          const band = targets[key]
          return band ? (
            <Target key={key} systemId={system.id} targetKey={key} row={row} band={band} stabiliser={stabiliser} />
          ) : (
            <NoTarget key={key} systemId={system.id} targetKey={key} row={row} />
          )
        })}
      </div>
    </section>
  )
}

interface TargetProps {
  readonly systemId: string
  readonly targetKey: TargetKey
  readonly row: ReadingRow
  readonly band: SourcedBand
  readonly stabiliser: number | undefined
}

const ENDS = ['low', 'aim', 'high'] as const
const END_LABELS = { low: 'from', aim: 'aim for', high: 'to' } as const

function Target({ systemId, targetKey, row, band, stabiliser }: TargetProps) {
  const store = useAppStore()
  const units = useUnits()
  const canEdit = useCanEdit()
  const warning = band.isOwn ? codeWarning(targetKey, band, stabiliser) : undefined
  const set = (end: (typeof ENDS)[number], value: number | undefined) => {
    if (value === undefined) return undefined
    const { low, aim, high } = band
    return store
      .getState()
      .dispatch({ id: 'setTarget', args: { systemId, key: targetKey, band: { low, aim, high, [end]: value } } })
  }
  const unit = unitLabel(row.quantity, units)
  return (
    <div className={styles['target']}>
      <div className={styles['targetHead']}>
        <h3>
          {row.label}
          {unit && <span className={styles['faint']}> {unit}</span>}
        </h3>
        {band.isOwn && canEdit && (
          <Button
            tone="quiet"
            label={`${row.label}: back to the usual band`}
            onPress={() => store.getState().dispatch({ id: 'resetTarget', args: { systemId, key: targetKey } })}
          >
            Back to the usual band
          </Button>
        )}
      </div>
      <div className={styles['triple']}>
        {ENDS.map((end) => (
          <NumberField
            key={end}
            label={END_LABELS[end]}
            value={band[end]}
            digits={row.digits}
            onChange={(value) => set(end, value)}
            min={row.min}
            max={row.max}
            isCompact
            isRequired
          />
        ))}
      </div>
      <p className={styles['faint']}>{band.source}</p>
      {warning && (
        <p className={styles['note']} role="note">
          {warning}
        </p>
      )}
    </div>
  )
}

function NoTarget({ systemId, targetKey, row }: Omit<TargetProps, 'band' | 'stabiliser'>) {
  const store = useAppStore()
  const units = useUnits()
  const canEdit = useCanEdit()
  const usual = usualBand(targetKey)
  return (
    <div className={styles['target']}>
      <div className={styles['targetHead']}>
        <h3>{row.label}</h3>
        {canEdit && usual && (
          <Button
            tone="quiet"
            onPress={() =>
              store.getState().dispatch({ id: 'setTarget', args: { systemId, key: targetKey, band: usual } })
            }
          >
            Set a band for {inSentence(row.label)}
          </Button>
        )}
      </div>
      <p className={styles['faint']}>
        No target in this regime: nothing is dosed for it.
        {usual &&
          ` Where it is used: ${formatQuantity(row.quantity, usual.low, units, { digits: row.digits })} to ${formatQuantity(row.quantity, usual.high, units, { digits: row.digits })}.`}
      </p>
    </div>
  )
}

/** The band of the first regime that has one. */
function usualBand(key: TargetKey): TargetBand | undefined {
  const band = REGIMES.rows.map((regime) => regime.bands[key]).find((found) => found !== undefined)
  return band && { low: band.low, aim: band.aim, high: band.high }
}
