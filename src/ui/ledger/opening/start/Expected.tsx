import type { ExpectedReading } from '../../../../plan/index.ts'
import { useUnits } from '../../../context.tsx'
import { formatReading, readingRow } from '../../scale/index.ts'
import { rangeWords } from '../../water/reading-words.ts'
import styles from '../opening.module.css'

/** What the readings should show after what happened: to be measured, not to be dosed on. */
export function Expected({ expected }: { readonly expected: readonly ExpectedReading[] }) {
  const units = useUnits()
  if (expected.length === 0) return null
  return (
    <table className={styles['table']}>
      <caption>What the readings should show. Measure them: nothing is dosed on an expectation</caption>
      <thead>
        <tr>
          <th scope="col">reading</th>
          <th scope="col">before</th>
          <th scope="col">expected</th>
        </tr>
      </thead>
      <tbody>
        {expected.map(({ key, before, value, low, high }) => {
          const say = (each: number) => formatReading(key, each, units)
          const range = rangeWords(say(low), say(high))
          return (
            <tr key={key}>
              <th scope="row">{readingRow(key)?.label ?? key}</th>
              <td>{say(before)}</td>
              <td>
                <em className={styles['expected']}>{say(value)}</em>
                {range !== say(value) && <span className={styles['needed']}>{range}</span>}
              </td>
            </tr>
          )
        })}
      </tbody>
    </table>
  )
}
