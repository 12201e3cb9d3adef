import type { OpeningPlan } from '../../../plan/index.ts'
import { useAppStore, useCanEdit, useUnits } from '../../context.tsx'
import { Button, inOwnUnits, ProblemNote } from '../../fields/index.ts'
import styles from './opening.module.css'

/** What stands before the lines: stale readings, missing readings, targets outside a code or out of reach, warnings. */
export function PlanNotes({ plan, isMeasured }: { readonly plan: OpeningPlan; readonly isMeasured: boolean }) {
  const store = useAppStore()
  const canEdit = useCanEdit()
  const units = useUnits()
  const toWater = () => store.getState().openChapter('water')
  return (
    <>
      {!isMeasured && (
        <div className={styles['note']} role="note">
          <p>
            <strong>Measure the water first.</strong> At least pH and total alkalinity; what you leave out stays
            unknown, and nothing is dosed for it. {plan.lines[0]?.how}
          </p>
          {canEdit && (
            <Button tone="main" onPress={toWater}>
              Enter readings
            </Button>
          )}
        </div>
      )}
      {isMeasured && plan.measureAgain && (
        <div className={styles['note']} role="note">
          <p>
            <strong>Measure again first.</strong> {plan.lines.find(({ key }) => key === 'measure-first')?.why}
          </p>
        </div>
      )}
      {isMeasured && plan.missing.length > 0 && (
        <div className={styles['note']} role="note">
          <p>
            <strong>Not measured, so nothing is dosed for it:</strong>
          </p>
          <ul className={styles['missing']}>
            {plan.missing.map((item) => (
              <li key={item.key}>
                {item.label}. <span className={styles['faint']}>{item.why}</span>
              </li>
            ))}
          </ul>
          {canEdit && <Button onPress={toWater}>Measure it</Button>}
        </div>
      )}
      {[...plan.targetWarnings, ...plan.unreachable].map((problem) => (
        <ProblemNote key={`${problem.code}${problem.path}`} problem={problem} />
      ))}
      {isMeasured && plan.warnings.length > 0 && (
        <ul className={styles['cautions']} aria-label="Warnings">
          {plan.warnings.map((warning) => (
            <li key={warning}>{inOwnUnits(warning, units)}</li>
          ))}
        </ul>
      )}
    </>
  )
}
