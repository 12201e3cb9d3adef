import { useState } from 'react'
import { deriveWater } from '../../../derive/index.ts'
import type { ReadingSet, System } from '../../../document/index.ts'
import { formatQuantity } from '../../../units/index.ts'
import { useApp, useAppStore, useCanEdit, useUnits } from '../../context.tsx'
import { Button, Disclosure } from '../../fields/index.ts'
import { Section } from '../basin/Section.tsx'
import { ageWords, dateAndTimeOf } from '../opening/schedule.ts'
import { formatMeasured, READING_ROWS } from '../scale/index.ts'
import { methodWords } from './methods.ts'
import { ReadingsForm } from './ReadingsForm.tsx'
import { setInOneLine, unknownWords } from './reading-words.ts'
import styles from './water.module.css'

export interface NumberedProps {
  readonly system: System
  readonly number: number
}

/** The newest readings with their age, the form for newer ones, and the older ones. */
export function Readings({ system, number }: NumberedProps) {
  const store = useAppStore()
  const canEdit = useCanEdit()
  const spec = useApp((state) => state.spec)
  const nowMs = useApp((state) => state.nowMs)
  const water = deriveWater(spec, system.id, nowMs)
  const latest = water.from === 'readings' ? water.latest : undefined
  const [isAdding, setAdding] = useState(false)
  const showsForm = canEdit && (isAdding || latest === undefined)
  const save = (set: ReadingSet) => {
    const problem = store.getState().dispatch({ id: 'addReadings', args: { systemId: system.id, set } })
    if (!problem) setAdding(false)
    return problem
  }
  return (
    <Section number={number} title={latest ? 'Readings' : 'First readings'}>
      {latest && <Age ageHours={water.ageHours} at={latest.at} method={latest.method} nowMs={nowMs} />}
      {!latest && (
        <p className={styles['intro']}>
          Measure the water and write down what you found. Leave empty what you did not measure: unknown is never taken
          for none.
        </p>
      )}
      {latest && !isAdding && <ReadingTable set={latest} />}
      {canEdit && latest && !isAdding && (
        <div className={styles['buttons']}>
          <Button tone="main" onPress={() => setAdding(true)}>
            Enter new readings
          </Button>
        </div>
      )}
      {showsForm && (
        <ReadingsForm saveLabel="Save readings" onSave={save} onCancel={latest ? () => setAdding(false) : undefined} />
      )}
      <OlderReadings system={system} latest={latest} />
    </Section>
  )
}

function Age(props: {
  readonly ageHours: number | undefined
  readonly at: string
  readonly method: ReadingSet['method']
  readonly nowMs: number
}) {
  const { ageHours, at, method, nowMs } = props
  const how = methodWords(method)
  const isOld = ageHours !== undefined && ageHours > 48
  return (
    <p className={styles['intro']}>
      {dateAndTimeOf(Date.parse(at), nowMs)}
      {how && `, ${how}`}
      {ageHours !== undefined && `; ${ageWords(ageHours)}`}. {isOld && <strong>Measure again first.</strong>}
    </p>
  )
}

/** One set as a ruled table, with what was not measured. */
export function ReadingTable({ set }: { readonly set: ReadingSet }) {
  const units = useUnits()
  const unknown = unknownWords(set.values)
  return (
    <>
      <table className={styles['rows']}>
        <tbody>
          {READING_ROWS.map((row) => {
            const value = set.values[row.key]
            if (value === undefined) return null
            return (
              <tr key={row.key}>
                <th scope="row">{row.label}</th>
                <td>{formatMeasured(row.key, value, units)}</td>
              </tr>
            )
          })}
        </tbody>
      </table>
      {unknown && <p className={styles['faint']}>{unknown}</p>}
    </>
  )
}

function OlderReadings({ system, latest }: { readonly system: System; readonly latest: ReadingSet | undefined }) {
  const store = useAppStore()
  const units = useUnits()
  const canEdit = useCanEdit()
  const nowMs = useApp((state) => state.nowMs)
  const older = system.water.readings.map((set, index) => ({ set, index })).filter(({ set }) => set !== latest)
  if (older.length === 0) return null
  const count = formatQuantity('number', older.length, units, { digits: 0 })
  return (
    <Disclosure title="Older readings" aside={count}>
      <ul className={styles['older']}>
        {older.reverse().map(({ set, index }) => (
          <li key={`${set.at}${index}`}>
            <span>
              {dateAndTimeOf(Date.parse(set.at), nowMs)}
              <br />
              <span className={styles['faint']}>{setInOneLine(set, units)}</span>
            </span>
            {canEdit && (
              <Button
                tone="quiet"
                label={`Remove the readings of ${dateAndTimeOf(Date.parse(set.at), nowMs)}`}
                onPress={() =>
                  store.getState().dispatch({ id: 'removeReadings', args: { systemId: system.id, index } })
                }
              >
                Remove
              </Button>
            )}
          </li>
        ))}
      </ul>
    </Disclosure>
  )
}
