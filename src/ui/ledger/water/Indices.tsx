import type { ReadingValues } from '../../../document/index.ts'
import { formatQuantity } from '../../../units/index.ts'
import type { Equilibrium, IndexDifference } from '../../../water/index.ts'
import { useUnits } from '../../context.tsx'
import { Disclosure } from '../../fields/index.ts'
import { formatSigned } from '../scale/index.ts'
import { Off } from './Off.tsx'
import { INDEX_TERM_LABELS, indexLacksWords, saturationWords } from './state-words.ts'
import styles from './water.module.css'

interface IndicesProps {
  readonly equilibrium: Equilibrium
  readonly tableIndex: number | undefined
  readonly indices: IndexDifference | undefined
  readonly known: ReadingValues
  /** One standard deviation of calcite SI from the tests’ scatter. */
  readonly sigma: number | undefined
}

/** The two indices side by side, why they differ here and which to act on, term by term for who wants it. */
export function Indices({ equilibrium, tableIndex, indices, known, sigma }: IndicesProps) {
  const units = useUnits()
  const si = equilibrium.calciteSI
  return (
    <>
      <dl className={styles['pair']}>
        <div>
          <dt>Calcite SI</dt>
          <dd>
            {Number.isFinite(si) ? formatSigned(si, units) : 'none'}
            {sigma !== undefined && <Off half={formatQuantity('number', 1.96 * sigma, units, { digits: 2 })} />}
          </dd>
          <dd className={styles['remark']}>{saturationWords(si)}</dd>
        </div>
        <div>
          <dt>Table index</dt>
          <dd>{tableIndex === undefined ? 'not known' : formatSigned(tableIndex, units)}</dd>
          <dd className={styles['remark']}>
            {tableIndex === undefined ? indexLacksWords(known) : 'as an operator’s table gives it'}
          </dd>
        </div>
      </dl>
      {indices && (
        <>
          <p>{indices.sentence}</p>
          <Disclosure title="The difference, term by term" aside={formatSigned(indices.difference, units)}>
            <table className={styles['rows']}>
              <tbody>
                {indices.terms.map((term) => (
                  <tr key={term.id}>
                    <th scope="row">
                      {INDEX_TERM_LABELS[term.id]}
                      <span className={styles['under']}>{term.words}</span>
                    </th>
                    <td>{formatSigned(term.value, units)}</td>
                  </tr>
                ))}
                <tr className={styles['total']}>
                  <th scope="row">Table index less calcite SI</th>
                  <td>{formatSigned(indices.difference, units)}</td>
                </tr>
              </tbody>
            </table>
          </Disclosure>
        </>
      )}
    </>
  )
}
