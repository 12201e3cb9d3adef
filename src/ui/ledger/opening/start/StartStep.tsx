import type { StartStepToday } from '../../../../derive/index.ts'
import type { System } from '../../../../document/index.ts'
import type { StartSchedule } from '../../../../plan/index.ts'
import { useCanEdit, useUnits } from '../../../context.tsx'
import { classes, Disclosure, inOwnUnits } from '../../../fields/index.ts'
import { sourceWords } from '../../water/source-words.ts'
import { Cautions } from '../Cautions.tsx'
import styles from '../opening.module.css'
import { TickBox } from '../TickBox.tsx'
import { useTick } from '../useTick.ts'
import { conditionWords, figureWords, numberedParts, tickText } from './start-words.ts'

interface StartStepProps {
  readonly step: StartStepToday
  readonly day: number
  readonly system: System
  readonly schedule: StartSchedule
}

/** One thing to do today: what, how and why, with its figures and cautions, and a box to tick. */
export function StartStep({ step, day, system, schedule }: StartStepProps) {
  const units = useUnits()
  const canEdit = useCanEdit()
  const tick = useTick(system)
  const { title, isDone, often } = step
  const figures = schedule.figures.filter(({ key }) => step.figures?.includes(key))
  const condition = conditionWords(step)
  return (
    <li className={classes(styles['line'], isDone && styles['done'])}>
      <div className={styles['margin']}>
        <TickBox
          isTicked={isDone}
          isDisabled={!canEdit}
          label={isDone ? `${title}: done, take it back` : `${title}: done`}
          onPress={() => (isDone ? tick.takeBack(step.line) : tick.done(step.line, tickText(day, title)))}
        />
      </div>
      <div className={styles['body']}>
        <div className={styles['head']}>
          <h4>{title}</h4>
          {often && <span className={styles['faint']}>{often}</span>}
        </div>
        <p>{inOwnUnits(step.what, units)}</p>
        {!isDone && (
          <>
            {condition && <p className={styles['interval']}>{inOwnUnits(condition, units)}</p>}
            <How how={inOwnUnits(step.how, units)} />
            {figures.map((figure) => {
              const { best, range } = figureWords(figure, units)
              return (
                <p key={figure.key} className={styles['interval']}>
                  {inOwnUnits(figure.label, units)}: <strong>{best}</strong>
                  {range && `, ${range}`}
                </p>
              )
            })}
            <Cautions cautions={step.cautions} isNext={false} />
            <div className={styles['why']}>
              <Disclosure title="Why">
                <p>
                  {inOwnUnits(step.why, units)} <span className={styles['faint']}>{sourceWords(step)}</span>
                </p>
              </Disclosure>
            </div>
          </>
        )}
      </div>
    </li>
  )
}

/** How it is done; what is numbered as a list. */
function How({ how }: { readonly how: string }) {
  const parts = numberedParts(how)
  if (!parts) return <p className={styles['how']}>{how}</p>
  return (
    <ol className={styles['numbered']}>
      {parts.map((part) => (
        <li key={part}>{part}</li>
      ))}
    </ol>
  )
}
