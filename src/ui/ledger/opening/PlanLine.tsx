import { useState } from 'react'
import type { DoseEntry } from '../../../document/index.ts'
import type { Movement, OpeningLine } from '../../../plan/index.ts'
import { formatQuantity, type UnitSystem } from '../../../units/index.ts'
import { useAppStore, useCanEdit, useUnits } from '../../context.tsx'
import { Button, classes, Disclosure } from '../../fields/index.ts'
import type { Domain } from '../scale/index.ts'
import { formatAmount, splitStrength } from './amounts.ts'
import { Cautions } from './Cautions.tsx'
import type { LineTimes } from './calendar.ts'
import { DoseFigures } from './DoseFigures.tsx'
import { headingOf, howWords } from './dose-words.ts'
import { GivenDose } from './GivenDose.tsx'
import { LineScales } from './LineScales.tsx'
import styles from './opening.module.css'
import { dayAndTime, waitWords } from './schedule.ts'
import { TickBox } from './TickBox.tsx'
import { TickForm } from './TickForm.tsx'

export interface PlanLineProps {
  readonly line: OpeningLine
  readonly number: number
  readonly systemId: string
  readonly originMs: number
  readonly times: LineTimes
  readonly domains: ReadonlyMap<Movement['key'], Domain>
  readonly measured: ReadonlySet<Movement['key']> | undefined
  /** What was written down for this line, where it is done. */
  readonly entry: DoseEntry | undefined
}

/** One line of the opening: what, how much, when, how, and the readings it should leave behind. */
export function PlanLine(props: PlanLineProps) {
  const { line, number, systemId, originMs, times, domains, measured, entry } = props
  const units = useUnits()
  const canEdit = useCanEdit()
  const [isOpen, setOpen] = useState(false)
  const isDone = line.state === 'done'
  const { name, strength } = splitStrength(headingOf(line))
  return (
    <li className={classes(styles['line'], isDone && styles['done'])}>
      <div className={styles['margin']}>
        <span className={styles['number']}>{number}</span>
        {line.kind === 'dose' && (
          <TickBox
            isTicked={isDone}
            isOpen={isOpen}
            isDisabled={!canEdit || isDone}
            label={isDone ? `Line ${number} is done` : `Line ${number}, ${name}: write down what was given`}
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
        {line.kind === 'dose' && isDone && <GivenDose line={line} entry={entry} systemId={systemId} />}
        {!isDone && <StillAhead line={line} originMs={originMs} times={times} />}
        {isOpen && !isDone && line.kind === 'dose' && (
          <TickForm line={line} systemId={systemId} onClose={() => setOpen(false)} />
        )}
        <LineScales movements={line.movements} domains={domains} measured={measured} />
        {!isDone && <Reasons line={line} />}
      </div>
    </li>
  )
}

function StillAhead({ line, originMs, times }: Pick<PlanLineProps, 'line' | 'originMs' | 'times'>) {
  const units = useUnits()
  const store = useAppStore()
  const canEdit = useCanEdit()
  const wait = waitWords(line.waitHours, units)
  return (
    <>
      <p className={styles['how']}>
        <span className={styles['when']}>{dayAndTime(originMs, times.startMs)}</span>
        {' · '}
        {line.isOptional && 'May be left out. '}
        {howWords(line)}
        {wait && `; ${wait}`}.
      </p>
      {line.kind === 'dose' && <DoseFigures line={line} originMs={originMs} times={times} />}
      <Cautions cautions={line.cautions} isNext={line.state === 'next'} />
      {line.kind === 'measure' && canEdit && (
        <div className={styles['buttons']}>
          <Button onPress={() => store.getState().openChapter('water')}>Enter readings</Button>
        </div>
      )}
    </>
  )
}

function Reasons({ line }: { readonly line: OpeningLine }) {
  return (
    <div className={styles['why']}>
      <Disclosure title="Why">
        <p>{line.why}</p>
        {line.exception && <p>{line.exception}</p>}
      </Disclosure>
    </div>
  )
}

function amountOf(line: OpeningLine, units: UnitSystem): string | undefined {
  if (line.kind === 'dose') return formatAmount(line.productId, line.amountG, units)
  if (line.kind !== 'exchange') return undefined
  const each = formatQuantity('volume', line.volumeM3, units, { sigma: line.volumeM3 * 0.02 })
  return line.rounds > 1 ? `${line.rounds} × ${each}` : each
}
