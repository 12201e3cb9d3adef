import { useState } from 'react'
import type { ReadingSet } from '../../../document/index.ts'
import { CONSTANT_SETS, metalsAdvice, readingFromPeople, trapsFor } from '../../../water/index.ts'
import { useApp, useAppStore, useCanEdit, useUnits } from '../../context.tsx'
import { Button, ProblemNote } from '../../fields/index.ts'
import { Section } from '../basin/Section.tsx'
import { dateOf } from '../opening/schedule.ts'
import { Metals } from './Metals.tsx'
import { methodWords } from './methods.ts'
import type { NumberedProps } from './Readings.tsx'
import { ReadingsForm } from './ReadingsForm.tsx'
import { ReadingTable } from './ReadingTable.tsx'
import { lettered, readingLines } from './reading-lines.ts'
import { unknownWords } from './reading-words.ts'
import styles from './water.module.css'

const DRAFT = 'fill'

/** The water that the pool is filled and topped up with. */
export function FillWater({ system, number }: NumberedProps) {
  const store = useAppStore()
  const canEdit = useCanEdit()
  const nowMs = useApp((state) => state.nowMs)
  const [isEditing, setEditing] = useState(() => store.getState().drafts[DRAFT] !== undefined)
  const { fill, readings } = system.water
  const isNewest = fill !== undefined && readings.every((set) => Date.parse(set.at) < Date.parse(fill.at))
  const setFill = (set: ReadingSet | undefined) =>
    store.getState().dispatch({ id: 'setFill', args: { systemId: system.id, set } })
  /**
   * The readings keep the moment they were taken: filling makes them no fresher. They go in as a supplier's, whatever
   * the fill was measured with: nobody measured them in the pool, and only what was measured there clears bathing.
   */
  const startFromFill = () => {
    if (!fill) return
    const by = fill.method === 'supplier' ? undefined : methodWords(fill.method)
    const note = `Fill water, as the pool was filled${by ? ` (measured with: ${by})` : ''}`
    store
      .getState()
      .dispatch({ id: 'addReadings', args: { systemId: system.id, set: { ...fill, method: 'supplier', note } } })
  }
  return (
    <Section number={number} title="Fill water">
      {fill ? (
        <p className={styles['intro']}>
          From {dateOf(Date.parse(fill.at), nowMs)}
          {methodWords(fill.method) && `, ${methodWords(fill.method)}`}. It tops up what evaporates, and replaces what
          is drained.
        </p>
      ) : (
        <p className={styles['intro']}>
          The tap or well water, from a test or the supplier’s report. It tops up what evaporates; a pool that is filled
          with it starts from it.
        </p>
      )}
      {fill && !isEditing && <Fill set={fill} />}
      {fill && readings.length === 0 && !isEditing && (
        <p className={styles['note']}>
          The pool has no readings of its own, so the plan starts from this water, as if the pool were filled with it
          now.
        </p>
      )}
      {canEdit && !isEditing && (
        <div className={styles['buttons']}>
          <Button onPress={() => setEditing(true)}>{fill ? 'Change the fill water' : 'Enter the fill water'}</Button>
          {isNewest && <Button onPress={startFromFill}>The pool is filled with this water now</Button>}
          {fill && (
            <Button tone="quiet" onPress={() => setFill(undefined)}>
              Remove
            </Button>
          )}
        </div>
      )}
      {canEdit && isEditing && (
        <ReadingsForm
          draftKey={DRAFT}
          start={fill}
          saveLabel="Save fill water"
          onSave={(set) => {
            const problem = setFill(set)
            if (!problem) setEditing(false)
            return problem
          }}
          onCancel={() => setEditing(false)}
        />
      )}
    </Section>
  )
}

function Fill({ set }: { readonly set: ReadingSet }) {
  const units = useUnits()
  const taken = readingFromPeople(set.values, set.method, CONSTANT_SETS.default)
  const metals = metalsAdvice(set.values)
  return (
    <>
      <ReadingTable
        lines={readingLines(set.values, set.method, taken, {})}
        notes={lettered(trapsFor(set.values, set.method))}
        unknown={unknownWords(
          set.values,
          units,
          taken.told.map(({ key }) => key),
        )}
        hasScales={false}
      />
      {taken.problems.map((problem) => (
        <ProblemNote key={problem.code} problem={problem} />
      ))}
      <Metals advice={metals} />
    </>
  )
}
