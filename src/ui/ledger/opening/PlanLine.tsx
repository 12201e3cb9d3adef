import { useState } from 'react'
import type { DoseEntry } from '../../../document/index.ts'
import type { Movement, OpeningLine } from '../../../plan/index.ts'
import { formatQuantity } from '../../../units/index.ts'
import { useAppStore, useCanEdit, useUnits } from '../../context.tsx'
import { Button, Disclosure } from '../../fields/index.ts'
import { type Domain, InkScale } from '../scale/index.ts'
import { splitStrength } from './amounts.ts'
import { DoseFigures, doseAmount } from './DoseFigures.tsx'
import { GivenDoses } from './GivenDoses.tsx'
import { TickForm } from './LineTick.tsx'
import styles from './opening.module.css'
import { dayAndTime, waitWords } from './schedule.ts'
import { TickBox } from './TickBox.tsx'

export interface PlanLineProps {
  readonly line: OpeningLine
  readonly number: number
  readonly systemId: string
  readonly startMs: number
  readonly domains: ReadonlyMap<Movement['key'], Domain>
  readonly measured: ReadonlySet<Movement['key']> | undefined
  /** What was written down for this line. */
  readonly entries: readonly DoseEntry[]
}

/** One line of the opening: what, how much, when, how, and the readings it should leave behind. */
export function PlanLine(props: PlanLineProps) {
  const { line, number, systemId, startMs, domains, measured, entries } = props
  const units = useUnits()
  const canEdit = useCanEdit()
  const store = useAppStore()
  const [isOpen, setOpen] = useState(false)
  const { name, strength } = splitStrength(line.title)
  const isDone = line.state === 'done'
  const wait = waitWords(line.waitHours, units)
  return (
    <li className={`${styles['line']} ${isDone ? styles['done'] : ''}`}>
      <div className={styles['margin']}>
        <span className={styles['number']}>{number}</span>
        {line.kind === 'dose' && (
          <TickBox
            isTicked={isDone}
            isOpen={isOpen}
            isDisabled={!canEdit || isDone}
            label={isDone ? `Line ${number} is done` : `Line ${number}, ${line.title}: write down what was given`}
            onPress={() => setOpen(!isOpen)}
          />
        )}
      </div>
      <div className={styles['body']}>
        <div className={styles['head']}>
          <h3>
            {name} {strength && <span className={styles['strength']}>{strength}</span>}
          </h3>
          <span className={styles['amount']}>{amountOf(line, units)}</span>
        </div>
        <p className={styles['how']}>
          <span className={styles['when']}>{dayAndTime(startMs, line.startHours)}</span> · {line.how}
          {wait && `; ${wait}`}
        </p>
        {line.kind === 'dose' && <DoseFigures line={line} startMs={startMs} />}
        {line.cautions.length > 0 && (
          <ul className={styles['cautions']} aria-label="Cautions">
            {line.cautions.map((caution) => (
              <li key={caution}>{caution}</li>
            ))}
          </ul>
        )}
        {line.movements.length > 0 && (
          <div className={styles['scales']}>
            {line.movements.map((movement) => {
              const domain = domains.get(movement.key)
              return domain ? (
                <InkScale
                  key={movement.key}
                  scaleKey={movement.key}
                  domain={domain}
                  band={movement.band}
                  before={movement.before}
                  isBeforeMeasured={measured?.has(movement.key) ?? false}
                  after={movement.after}
                />
              ) : null
            })}
          </div>
        )}
        <GivenDoses entries={entries} systemId={systemId} />
        {line.kind === 'measure' && canEdit && (
          <div className={styles['buttons']}>
            <Button onPress={() => store.getState().openChapter('water')}>Enter readings</Button>
          </div>
        )}
        {isOpen && !isDone && line.kind === 'dose' && (
          <TickForm line={line} systemId={systemId} onClose={() => setOpen(false)} />
        )}
        {line.why && (
          <Disclosure title="Why">
            <p>{line.why}</p>
          </Disclosure>
        )}
      </div>
    </li>
  )
}

function amountOf(line: OpeningLine, units: Parameters<typeof doseAmount>[1]): string | undefined {
  if (line.kind === 'dose') return doseAmount(line, units)
  if (line.kind === 'exchange') return formatQuantity('volume', line.volumeM3, units, { sigma: line.volumeM3 * 0.02 })
  return undefined
}
