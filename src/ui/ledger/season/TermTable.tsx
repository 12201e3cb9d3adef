import type { DemandTerm } from '../../../plan/index.ts'
import { useUnits } from '../../context.tsx'
import { Disclosure, inOwnUnits } from '../../fields/index.ts'
import styles from './season.module.css'
import { countingTerms, rangeWords } from './upkeep-words.ts'

interface TermTableProps {
  readonly title: string
  readonly unitWords: string
  readonly terms: readonly DemandTerm[]
  readonly total: DemandTotal
  readonly format: (value: number) => string
}

interface DemandTotal {
  readonly value: number
  readonly low?: number | undefined
  readonly high?: number | undefined
}

/** What a demand is made of: value and range of each term, and under it how it was reckoned and from where. */
export function TermTable({ title, unitWords, terms, total, format }: TermTableProps) {
  const units = useUnits()
  const counting = countingTerms(terms)
  if (counting.length === 0) return null
  return (
    <Disclosure title={title} isOpenAtFirst>
      <table className={styles['table']}>
        <thead>
          <tr>
            <th scope="col">Cause</th>
            <th scope="col">{unitWords}</th>
            <th scope="col">likely range</th>
          </tr>
        </thead>
        <tbody>
          {counting.map((term) => (
            <tr key={term.id}>
              <th scope="row">{term.label}</th>
              <td>{format(term.value)}</td>
              <td>{rangeWords(format(term.low), format(term.high))}</td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">Together</th>
            <td>{format(total.value)}</td>
            <td>
              {total.low !== undefined && total.high !== undefined && rangeWords(format(total.low), format(total.high))}
            </td>
          </tr>
        </tfoot>
      </table>
      <Disclosure title="How each is reckoned, and from where">
        {counting.map((term) => (
          <p key={term.id} className={styles['term']}>
            <span>
              <strong>{term.label}.</strong> {inOwnUnits(term.how, units)}
            </span>
            <span className={styles['faint']}>{term.source}</span>
          </p>
        ))}
      </Disclosure>
    </Disclosure>
  )
}
