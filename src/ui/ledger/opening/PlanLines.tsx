import { useState } from 'react'
import type { DoseEntry, System } from '../../../document/index.ts'
import type { OpeningPlan } from '../../../plan/index.ts'
import { useApp, useCanEdit } from '../../context.tsx'
import { Button, DateTimeField, isoFromMs } from '../../fields/index.ts'
import { domainsOf } from '../scale/index.ts'
import { measuredStarts } from './lines.ts'
import styles from './opening.module.css'
import { PlanLine } from './PlanLine.tsx'
import { nextFullHour } from './schedule.ts'

/** The numbered lines, counted in days and hours from a start that the owner can set. */
export function PlanLines({ plan, system }: { readonly plan: OpeningPlan; readonly system: System }) {
  const nowMs = useApp((state) => state.nowMs)
  const canEdit = useCanEdit()
  const [chosenStart, setChosenStart] = useState<number | undefined>()
  const startMs = chosenStart ?? nextFullHour(nowMs)
  const domains = domainsOf(plan.lines)
  const starts = measuredStarts(plan.lines)
  const doses = system.log.filter((entry): entry is DoseEntry => entry.kind === 'dose')
  return (
    <section className={styles['section']} aria-label="The lines">
      {canEdit && (
        <div className={styles['start']}>
          <DateTimeField
            label="Day 1 starts"
            value={isoFromMs(startMs)}
            onChange={(iso) => setChosenStart(Date.parse(iso))}
            isCompact
          />
          {chosenStart !== undefined && (
            <Button tone="quiet" onPress={() => setChosenStart(undefined)}>
              Start at the next full hour
            </Button>
          )}
        </div>
      )}
      {plan.lines.length === 0 ? (
        <p>Every reading that was measured lies inside its band: nothing to add.</p>
      ) : (
        <ol className={styles['lines']}>
          {plan.lines.map((line, index) => (
            <PlanLine
              key={line.key}
              line={line}
              number={index + 1}
              systemId={system.id}
              startMs={startMs}
              domains={domains}
              measured={starts.get(line.key)}
              entries={doses.filter((entry) => entry.line === line.key)}
            />
          ))}
        </ol>
      )}
    </section>
  )
}
