import type { ReadingValues } from '../../../document/index.ts'
import { useUnits } from '../../context.tsx'
import { Disclosure, inOwnUnits } from '../../fields/index.ts'
import { spanWords } from '../opening/schedule.ts'
import { germsIn } from './germs.ts'
import styles from './water.module.css'

/** How long this chlorine needs for named germs, or why that can't be said of this water. */
export function Germs({ known }: { readonly known: ReadingValues }) {
  const units = useUnits()
  const { lines, problem } = germsIn(known)
  return (
    <Disclosure
      title="How long it needs for named germs"
      aside={lines.length > 0 ? undefined : known.cya_mg_per_L === undefined ? 'not known yet' : 'not in this water'}
    >
      {lines.length > 0 && (
        <table className={styles['rows']}>
          <tbody>
            {lines.map((line) => (
              <tr key={line.id}>
                <th scope="row">
                  {line.name}
                  <span className={styles['under']}>{line.source}</span>
                </th>
                <td>{spanWords(line.minutes / 60, units)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {problem ? (
        <div className={styles['note']} role="note">
          <p>{inOwnUnits(problem.what, units)}</p>
          <p className={styles['faint']}>{inOwnUnits(`${problem.why} ${problem.hint}`, units)}</p>
        </div>
      ) : (
        <p className={styles['faint']}>
          With the chlorine held all that time and nobody adding more germs. What your health authority lays down rules
          over these times.
        </p>
      )}
    </Disclosure>
  )
}
