import { useState } from 'react'
import { type DerivedWater, deriveWater } from '../../../derive/index.ts'
import type { ReadingMethod, ReadingSet, System } from '../../../document/index.ts'
import { useApp, useAppStore, useCanEdit, useUnits } from '../../context.tsx'
import { Button, ProblemNote } from '../../fields/index.ts'
import { Section } from '../basin/Section.tsx'
import { ageWords, dateAndTimeOf } from '../opening/schedule.ts'
import { methodWords } from './methods.ts'
import { OlderReadings } from './OlderReadings.tsx'
import { ReadingsForm } from './ReadingsForm.tsx'
import { ReadingTable } from './ReadingTable.tsx'
import { lettered, limitBands, readingLines } from './reading-lines.ts'
import { unknownWords } from './reading-words.ts'
import styles from './water.module.css'

export interface NumberedProps {
  readonly system: System
  readonly number: number
}

const DRAFT = 'readings'

/** The newest readings with their age, the form for newer ones, and the older ones. */
export function Readings({ system, number }: NumberedProps) {
  const store = useAppStore()
  const canEdit = useCanEdit()
  const spec = useApp((state) => state.spec)
  const nowMs = useApp((state) => state.nowMs)
  const water = deriveWater(spec, system.id, nowMs)
  const latest = water.from === 'readings' ? water.latest : undefined
  const [isAdding, setAdding] = useState(() => store.getState().drafts[DRAFT] !== undefined)
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
      {latest && !isAdding && <Newest set={latest} water={water} />}
      {canEdit && latest && !isAdding && (
        <div className={styles['buttons']}>
          <Button tone="main" onPress={() => setAdding(true)}>
            Enter new readings
          </Button>
        </div>
      )}
      {showsForm && (
        <ReadingsForm
          draftKey={DRAFT}
          saveLabel="Save readings"
          onSave={save}
          onCancel={latest ? () => setAdding(false) : undefined}
        />
      )}
      <OlderReadings system={system} latest={latest} />
    </Section>
  )
}

interface AgeProps {
  readonly ageHours: number | undefined
  readonly at: string
  readonly method: ReadingMethod
  readonly nowMs: number
}

function Age({ ageHours, at, method, nowMs }: AgeProps) {
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

/** The newest set by its bands, with what was reckoned from it and what clashes in it. */
function Newest({ set, water }: { readonly set: ReadingSet; readonly water: DerivedWater }) {
  const units = useUnits()
  const { told, clashes, sanitation, targets } = water
  const { combined, limits } = sanitation
  const bands = { ...limitBands(limits.combinedHighMgPerL), ...targets }
  return (
    <>
      <ReadingTable
        lines={readingLines(set.values, set.method, { told, combined }, bands)}
        notes={lettered(sanitation.traps)}
        unknown={unknownWords(
          set.values,
          units,
          told.map(({ key }) => key),
        )}
        hasScales
      />
      {clashes.map((problem) => (
        <ProblemNote key={problem.code} problem={problem} />
      ))}
    </>
  )
}
