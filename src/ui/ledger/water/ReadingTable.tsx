import { useId } from 'react'
import { useUnits } from '../../context.tsx'
import { Disclosure, inOwnUnits } from '../../fields/index.ts'
import {
  domainOf,
  formatMeasured,
  formatReading,
  measuredDigits,
  ReadingLegend,
  ScaleDrawing,
  toleranceWords,
} from '../scale/index.ts'
import type { ReadingLine, TestNote } from './reading-lines.ts'
import { whereWords } from './reading-words.ts'
import { sourceWords } from './source-words.ts'
import styles from './water.module.css'

interface ReadingTableProps {
  readonly lines: readonly ReadingLine[]
  readonly notes: readonly TestNote[]
  /** Where no band holds, as for fill water, the figures stand alone. */
  readonly hasScales: boolean
  readonly unknown: string | undefined
}

/** One set of readings as a ruled table: figure, how far off it may be, its place by the band, and what to mind. */
export function ReadingTable({ lines, notes, hasScales, unknown }: ReadingTableProps) {
  const id = useId()
  return (
    <>
      {hasScales && <ReadingLegend hasReckoned={lines.some(({ isReckoned }) => isReckoned)} />}
      <table className={styles['readings']}>
        <tbody>
          {lines.map((line) => (
            <Line
              key={line.row.key}
              line={line}
              hasScale={hasScales}
              marks={notes.filter(({ concerns }) => concerns.includes(line.row.key)).map(({ mark }) => mark)}
              id={id}
            />
          ))}
        </tbody>
      </table>
      <Notes notes={notes.filter(({ trap }) => !trap.isAlways)} id={id} label="What to mind with these readings" />
      {notes.some(({ trap }) => trap.isAlways) && (
        <Disclosure title="What to mind with these tests">
          <Notes notes={notes.filter(({ trap }) => trap.isAlways)} id={id} label="What to mind with these tests" />
        </Disclosure>
      )}
      {unknown && <p className={styles['faint']}>{unknown}</p>}
    </>
  )
}

interface NotesProps {
  readonly notes: readonly TestNote[]
  readonly id: string
  readonly label: string
}

function Notes({ notes, id, label }: NotesProps) {
  const units = useUnits()
  if (notes.length === 0) return null
  return (
    <ul className={styles['notes']} aria-label={label}>
      {notes.map(({ trap, mark }) => (
        <li key={mark} id={`${id}${mark}`}>
          <span className={styles['mark']}>{mark}</span>
          <span>
            {inOwnUnits(trap.text, units)} <span className={styles['source']}>{sourceWords(trap)}</span>
          </span>
        </li>
      ))}
    </ul>
  )
}

interface LineProps {
  readonly line: ReadingLine
  readonly hasScale: boolean
  readonly marks: readonly string[]
  readonly id: string
}

function Line({ line, hasScale, marks, id }: LineProps) {
  const units = useUnits()
  const { row, value, sigma, band, tolerance, isReckoned } = line
  const digits = isReckoned ? row.digits : measuredDigits(row, value)
  const where = hasScale && band ? whereWords(value, band, (v) => formatReading(row.key, v, units)) : undefined
  return (
    <>
      <tr className={line.words ? styles['hasWords'] : undefined}>
        <th scope="row" colSpan={hasScale && !band ? 2 : 1}>
          {row.label}
          {marks.length > 0 && <sup aria-hidden="true">{marks.join('\u00a0')}</sup>}
        </th>
        {hasScale && band && (
          <td className={styles['scaleCell']} aria-hidden="true">
            <ScaleDrawing
              domain={domainOf(row.key, [
                { before: value, band },
                { before: tolerance?.high, after: tolerance?.low },
              ])}
              band={band}
              before={value}
              isBeforeMeasured={!isReckoned}
              tolerance={tolerance}
            />
          </td>
        )}
        <td
          className={isReckoned ? styles['reckoned'] : undefined}
          {...(marks.length > 0 ? { 'aria-describedby': marks.map((mark) => `${id}${mark}`).join(' ') } : {})}
        >
          {isReckoned ? formatReading(row.key, value, units) : formatMeasured(row.key, value, units)}
        </td>
        <td className={styles['plusMinus']}>
          {sigma !== undefined && sigma > 0 && row.quantity !== 'temperature'
            ? toleranceWords(row, value, sigma, digits, units, tolerance?.high)
            : null}
          {where && <span className="visually-hidden"> {where}</span>}
        </td>
      </tr>
      {line.words && (
        <tr>
          <td colSpan={hasScale ? 4 : 3} className={styles['words']}>
            {line.words}
          </td>
        </tr>
      )}
    </>
  )
}
