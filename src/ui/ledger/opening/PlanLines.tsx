import { useRef } from 'react'
import { deriveTargetsAt } from '../../../derive/index.ts'
import type { DoseEntry, System } from '../../../document/index.ts'
import type { OpeningPlan } from '../../../plan/index.ts'
import { useApp, useAppStore, useCanEdit } from '../../context.tsx'
import { Button, DateTimeField, isoFromMs } from '../../fields/index.ts'
import { domainsOf, readingRow, ScaleLegend } from '../scale/index.ts'
import { andList, inSentence } from '../water/reading-words.ts'
import { calendarOf, isChlorineLate, keptStart } from './calendar.ts'
import { entryOf, measuredStarts, originOf } from './lines.ts'
import styles from './opening.module.css'
import { PlanLine } from './PlanLine.tsx'

/** The numbered lines, counted in days and hours from a start that the owner can set. */
export function PlanLines({ plan, system }: { readonly plan: OpeningPlan; readonly system: System }) {
  const nowMs = useApp((state) => state.nowMs)
  const spec = useApp((state) => state.spec)
  const canEdit = useCanEdit()
  const store = useAppStore()
  const chosen = system.planStartAt === undefined ? Number.NaN : Date.parse(system.planStartAt)
  const shown = useRef<number>(undefined)
  shown.current = keptStart(shown.current, nowMs)
  const originMs = originOf(plan, Number.isFinite(chosen) ? chosen : undefined, shown.current)
  const setStart = (at: string | undefined) =>
    store.getState().dispatch({ id: 'setPlanStart', args: { systemId: system.id, at } })
  const isUnderWay = plan.lines.some((line) => line.kind === 'dose' && line.given)
  const domains = domainsOf(plan.lines)
  const starts = measuredStarts(plan.lines)
  const calendar = calendarOf(plan.lines, originMs)
  const waiting = deriveTargetsAt(spec, system.id, nowMs)
    .phases.filter(({ change }) => change.kind === 'withheld')
    .map(({ key }) => inSentence(readingRow(key)?.label ?? key))
  const doses = system.log.filter((entry): entry is DoseEntry => entry.kind === 'dose')
  if (plan.lines.every((line) => line.kind === 'circulate'))
    return (
      <p>
        {waiting.length === 0
          ? 'Every reading that was measured lies inside its band: there is nothing to add.'
          : `There is nothing to add today. The start above waits with ${andList(waiting)}; the rest lies inside its band.`}
      </p>
    )
  return (
    <section className={styles['section']} aria-label="The lines">
      {canEdit && !isUnderWay && (
        <div className={styles['start']}>
          <DateTimeField
            label={system.start ? 'The doses below begin' : 'Day 1 starts'}
            value={isoFromMs(originMs)}
            onChange={setStart}
            description={
              system.start
                ? 'Their days count from here, those of the start above from its own day 1. Each line comes as early as the waits allow; nights are left out.'
                : 'Each line comes as early as the waits allow; nights are left out.'
            }
            isCompact
          />
          {system.planStartAt !== undefined && (
            <Button tone="quiet" onPress={() => setStart(undefined)}>
              As usual
            </Button>
          )}
        </div>
      )}
      {isChlorineLate(plan.lines, calendar, originMs) && (
        <p>
          By the clock the first chlorine comes only after a night. Start earlier in the day if you can; nobody bathes
          until it is in, and the pump keeps running.
        </p>
      )}
      {plan.lines.some((line) => line.movements.length > 0) && <ScaleLegend />}
      <ol className={styles['lines']}>
        {plan.lines.map((line, index) => (
          <PlanLine
            key={line.key}
            line={line}
            number={index + 1}
            system={system}
            originMs={originMs}
            times={calendar.get(line.key) ?? { startMs: originMs, poursMs: [] }}
            domains={domains}
            measured={starts.get(line.key)}
            entry={entryOf(line, doses)}
          />
        ))}
      </ol>
    </section>
  )
}
