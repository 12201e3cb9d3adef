import type { ExpectedWater } from '../../../plan/index.ts'
import { useUnits } from '../../context.tsx'
import { Disclosure } from '../../fields/index.ts'
import { formatReading, formatSigned, READING_ROWS } from '../scale/index.ts'
import { activeWords } from '../water/chlorine-words.ts'
import styles from './opening.module.css'

/** All readings that a line should leave behind, also those that it doesn't move. */
export function AfterLine({ after, number }: { readonly after: ExpectedWater; readonly number: number }) {
  const units = useUnits()
  const { reading, equilibrium, unknown = [] } = after
  const rows = READING_ROWS.flatMap((row) => {
    const value = row.key in reading ? reading[row.key as keyof typeof reading] : undefined
    return value === undefined ? [] : [{ row, value }]
  })
  return (
    <div className={styles['why']}>
      <Disclosure title={`All readings after line ${number}`} isScreenOnly isLazy>
        <table className={styles['after']}>
          <caption>Expected, not measured</caption>
          <tbody>
            {rows.map(({ row, value }) => (
              <tr key={row.key}>
                <th scope="row">{row.label}</th>
                <td>
                  {unknown.some((key) => key === row.key) ? 'not measured' : formatReading(row.key, value, units)}
                </td>
              </tr>
            ))}
            <tr>
              <th scope="row">Calcite SI</th>
              <td>
                {unknown.includes('ch_mg_per_L_as_CaCO3')
                  ? 'can’t be told: calcium is not measured'
                  : Number.isFinite(equilibrium.calciteSI)
                    ? formatSigned(equilibrium.calciteSI, units)
                    : 'none'}
              </td>
            </tr>
            <tr>
              <th scope="row">Active chlorine</th>
              <td>{activeWords(after, units)}</td>
            </tr>
          </tbody>
        </table>
      </Disclosure>
    </div>
  )
}
