import { type DerivedStart, deriveStart } from '../../../../derive/index.ts'
import type { Start, System } from '../../../../document/index.ts'
import { START_MODES } from '../../../../plan/index.ts'
import { useApp, useAppStore, useCanEdit, useUnits } from '../../../context.tsx'
import {
  Button,
  ChoiceField,
  DateTimeField,
  Disclosure,
  inOwnUnits,
  isoFromMs,
  ProblemNote,
} from '../../../fields/index.ts'
import styles from '../opening.module.css'
import { Expected } from './Expected.tsx'
import { StartFigures } from './StartFigures.tsx'
import { StartInputs } from './StartInputs.tsx'
import { StartStep } from './StartStep.tsx'
import { daysWords, dayWords } from './start-words.ts'
import { Withheld } from './Withheld.tsx'

/** Which start is under way, what it needs to know, and what today asks for. */
export function StartSection({ system }: { readonly system: System }) {
  const store = useAppStore()
  const canEdit = useCanEdit()
  const nowMs = useApp((state) => state.nowMs)
  const units = useUnits()
  const { start } = system
  const mode = START_MODES.get(start?.mode ?? '')
  const systemId = system.id
  const choose = (id: string, at: string) =>
    store.getState().dispatch({ id: 'setStart', args: { systemId, mode: id, at } })
  return (
    // Where no start is chosen there is nothing to read on paper.
    <section className={styles['section']} aria-label="How it starts" {...(start ? {} : { 'data-screen-only': true })}>
      <h2>How it starts</h2>
      <div className={styles['fields']}>
        <ChoiceField
          label="Start"
          value={mode?.id}
          options={START_MODES.rows.map(({ id, label, when }) => ({ id, label, note: inOwnUnits(when, units) }))}
          onChange={(id) => choose(id, isoFromMs(nowMs))}
          placeholder="choose one: the days follow from it"
          description={mode && inOwnUnits(mode.when, units)}
          isCompact
        />
        {start && mode && (
          <DateTimeField
            label={`Day 1, ${mode.dayOne}`}
            value={start.at}
            onChange={(at) => choose(start.mode, at)}
            isCompact
          />
        )}
      </div>
      {start && <StartBody start={start} system={system} />}
      {start && canEdit && (
        <div className={styles['buttons']}>
          <Button tone="quiet" onPress={() => store.getState().dispatch({ id: 'clearStart', args: { systemId } })}>
            No start any more: keep to the plan below
          </Button>
        </div>
      )}
    </section>
  )
}

function StartBody({ start, system }: { readonly start: Start; readonly system: System }) {
  const spec = useApp((state) => state.spec)
  const nowMs = useApp((state) => state.nowMs)
  const derived = deriveStart(spec, system.id, nowMs)
  if (!derived) return null
  return (
    <>
      <StartInputs start={start} systemId={system.id} />
      {derived.ok ? <UnderWay start={derived.value} system={system} /> : <ProblemNote problem={derived.problem} />}
    </>
  )
}

interface UnderWayProps {
  readonly start: DerivedStart
  readonly system: System
}

function UnderWay({ start, system }: UnderWayProps) {
  const units = useUnits()
  const { schedule, day, steps, assumed } = start
  const today = steps.filter(({ isToday }) => isToday)
  return (
    <>
      <h3>{dayWords(day, schedule.mode.lastDay)}</h3>
      {schedule.warnings.length > 0 && (
        <ul className={styles['cautions']} aria-label="Warnings of this start">
          {schedule.warnings.map((warning) => (
            <li key={warning}>{inOwnUnits(warning, units)}</li>
          ))}
        </ul>
      )}
      {today.length > 0 ? (
        <ol className={styles['lines']} aria-label="Today">
          {today.map((step) => (
            <StartStep key={step.key} step={step} day={day} system={system} schedule={schedule} />
          ))}
        </ol>
      ) : (
        <p>Nothing of this start falls on today.</p>
      )}
      <Withheld phases={schedule.targetPhases} day={day} />
      <StartFigures figures={schedule.figures} missing={schedule.missing} assumed={assumed} />
      <Expected expected={schedule.expected} />
      <div className={styles['note']} role="note">
        <p>
          <strong>Bathing.</strong> {schedule.bathing}
        </p>
      </div>
      <Disclosure title="All days" aside={`day 1 to ${schedule.mode.lastDay}`} level={3} isLazy>
        <ol className={styles['days']}>
          {steps.map((step) => (
            <li key={step.key}>
              <span className={styles['faint']}>{daysWords(step)}</span>
              <span>
                <strong>{step.title}.</strong> {inOwnUnits(step.what, units)}
                {step.condition && (
                  <span className={styles['faint']}> {inOwnUnits(sentence(step.condition.words), units)}</span>
                )}
                {step.doneDays.length > 0 && (
                  <span className={styles['faint']}> Ticked on day {step.doneDays.join(', ')}.</span>
                )}
              </span>
            </li>
          ))}
        </ol>
      </Disclosure>
      <Disclosure title="Notes" level={3}>
        <ul className={styles['cautions']}>
          {schedule.notes.map((note) => (
            <li key={note}>{inOwnUnits(note, units)}</li>
          ))}
        </ul>
      </Disclosure>
    </>
  )
}

/** Words as a sentence of their own. */
function sentence(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}.`
}
