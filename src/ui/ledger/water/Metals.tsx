import { formatQuantity } from '../../../units/index.ts'
import type { MetalsAdvice } from '../../../water/index.ts'
import { useUnits } from '../../context.tsx'
import styles from './water.module.css'

/** Metals above their limits: what they do, and the order in which they are dealt with. Nothing where none is too high. */
export function Metals({ advice }: { readonly advice: MetalsAdvice }) {
  const units = useUnits()
  const high = advice.findings.filter(({ isTooHigh }) => isTooHigh)
  if (high.length === 0) return null
  const mgPerL = (value: number) => formatQuantity('concentration', value, units, { digits: 2 })
  return (
    <>
      <table className={styles['rows']}>
        <tbody>
          {high.map(({ metal, mgPerL: value }) => (
            <tr key={metal.id}>
              <th scope="row">
                {metal.name}
                <span className={styles['under']}>
                  {metal.does} Limit {mgPerL(metal.limitMgPerL)} ({metal.source}; {metal.status}).
                </span>
              </th>
              <td>{mgPerL(value)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <ol className={styles['steps']} aria-label="What to do about metals">
        {advice.steps.map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
      <p className={styles['faint']}>The order is {advice.status}.</p>
    </>
  )
}
