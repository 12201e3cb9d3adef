import { type ReactNode, useState } from 'react'
import type { ProductList } from '../../../chemicals/index.ts'
import type { DoseEntry, System } from '../../../document/index.ts'
import type { Movement, OpeningLine } from '../../../plan/index.ts'
import { formatQuantity, type UnitSystem } from '../../../units/index.ts'
import { useCanEdit, useUnits } from '../../context.tsx'
import { classes, Disclosure } from '../../fields/index.ts'
import type { Domain } from '../scale/index.ts'
import { AfterLine } from './AfterLine.tsx'
import { formatAmount, splitStrength } from './amounts.ts'
import { Cautions } from './Cautions.tsx'
import type { LineTimes } from './calendar.ts'
import { DoseFigures } from './DoseFigures.tsx'
import { headingOf, howWords } from './dose-words.ts'
import { Gear } from './Gear.tsx'
import { GivenDose } from './GivenDose.tsx'
import { LineScales } from './LineScales.tsx'
import { Measured } from './Measured.tsx'
import styles from './opening.module.css'
import { dayAndTime, waitWords } from './schedule.ts'
import { TickBox } from './TickBox.tsx'
import { TickForm } from './TickForm.tsx'
import { useProducts } from './useProducts.ts'
import { tickOf, useTick } from './useTick.ts'

export interface PlanLineProps {
  readonly line: OpeningLine
  readonly number: number
  readonly system: System
  readonly originMs: number
  readonly times: LineTimes
  readonly domains: ReadonlyMap<Movement['key'], Domain>
  readonly measured: ReadonlySet<Movement['key']> | undefined
  /** What was written down for this line, where it is done. */
  readonly entry: DoseEntry | undefined
}

/** One line of the opening: what, how much, when, how, and the readings it should leave behind. */
export function PlanLine(props: PlanLineProps) {
  const { line, number, system, originMs, times, domains, measured, entry } = props
  const units = useUnits()
  const canEdit = useCanEdit()
  const list = useProducts()
  const isDone = line.state === 'done'
  const { name, strength } = splitStrength(headingOf(line, list))
  const isDose = line.kind === 'dose'
  const [isOpen, setOpen] = useState(false)
  return (
    <li className={classes(styles['line'], isDone && styles['done'])}>
      <div className={styles['margin']}>
        <span className={styles['number']}>{number}</span>
        {isDose ? (
          <TickBox
            isTicked={isDone}
            isOpen={isOpen}
            isDisabled={!canEdit || isDone}
            label={isDone ? `Line ${number} is done` : `Line ${number}, ${name}: write down what was given`}
            onPress={() => setOpen(!isOpen)}
          />
        ) : (
          <StepTick line={line} number={number} system={system} />
        )}
      </div>
      <div className={styles['body']}>
        <div className={styles['head']}>
          <h3>
            {name} {strength && <span className={styles['strength']}>{strength}</span>}
          </h3>
          <span className={styles['amount']}>{amountOf(line, units, list)}</span>
        </div>
        {isDose && isDone && <GivenDose line={line} entry={entry} systemId={system.id} />}
        {!isDone && (
          <StillAhead line={line} originMs={originMs} times={times}>
            {isOpen && isDose && <TickForm line={line} systemId={system.id} onClose={() => setOpen(false)} />}
          </StillAhead>
        )}
        <LineScales movements={line.movements} domains={domains} measured={measured} />
        {!isDone && <Reasons line={line} />}
        {'after' in line && line.after && <AfterLine after={line.after} number={number} />}
        {canEdit && asksForReadings(line) && <Measured number={number} line={line.key} systemId={system.id} />}
      </div>
    </li>
  )
}

/** Where readings may be told: at lines that ask for them, and after what was given. */
function asksForReadings(line: OpeningLine): boolean {
  return (line.kind === 'measure' && line.state !== 'done') || (line.kind === 'dose' && line.state === 'done')
}

/** The box of a line that doses nothing. What is done by what came after it has no tick of its own to take back. */
function StepTick({ line, number, system }: Pick<PlanLineProps, 'line' | 'number' | 'system'>) {
  const canEdit = useCanEdit()
  const tick = useTick(system)
  const isDone = line.state === 'done'
  const isTicked = tickOf(system, line.key) !== undefined
  return (
    <TickBox
      isTicked={isDone}
      isDisabled={!canEdit || (isDone && !isTicked)}
      label={`Line ${number}, ${line.title}: ${isDone ? (isTicked ? 'done, take it back' : 'done') : 'tick it off'}`}
      onPress={() => (isDone ? tick.takeBack(line.key) : tick.done(line.key, `${line.title}.`))}
    />
  )
}

interface StillAheadProps extends Pick<PlanLineProps, 'line' | 'originMs' | 'times'> {
  /** Stands before the cautions, which may be long: next to the box that opened it. */
  readonly children?: ReactNode
}

function StillAhead({ line, originMs, times, children }: StillAheadProps) {
  const units = useUnits()
  const list = useProducts()
  const wait = waitWords(line.waitHours, units)
  return (
    <>
      {line.exception && (
        <p className={styles['exception']}>
          <strong>Out of the usual order.</strong> {line.exception}
        </p>
      )}
      <p className={styles['how']}>
        <span className={styles['when']}>{dayAndTime(originMs, times.startMs)}</span>
        {' · '}
        {line.isOptional && 'May be left out. '}
        {howWords(line, (id, amountG) => formatAmount(id, amountG, units, list), list)}
        {wait && `; ${wait}`}.
      </p>
      {line.kind === 'dose' && <DoseFigures line={line} originMs={originMs} times={times} />}
      {line.kind === 'dose' && <Gear productId={line.productId} list={list} />}
      {children}
      <Cautions cautions={line.cautions} isNext={line.state === 'next'} />
    </>
  )
}

function Reasons({ line }: { readonly line: OpeningLine }) {
  return (
    <div className={styles['why']}>
      <Disclosure title="Why">
        <p>{line.why}</p>
      </Disclosure>
    </div>
  )
}

function amountOf(line: OpeningLine, units: UnitSystem, list: ProductList | undefined): string | undefined {
  if (line.kind === 'dose') return formatAmount(line.productId, line.amountG, units, list)
  if (line.kind !== 'exchange') return undefined
  const each = formatQuantity('volume', line.volumeM3, units, { sigma: line.volumeM3 * 0.02 })
  return line.rounds > 1 ? `${line.rounds} × ${each}` : each
}
