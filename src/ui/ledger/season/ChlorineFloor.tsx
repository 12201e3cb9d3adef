import type { Upkeep } from '../../../plan/index.ts'
import { formatQuantity } from '../../../units/index.ts'
import { useUnits } from '../../context.tsx'
import { spanWords } from '../opening/schedule.ts'
import styles from './season.module.css'

const ASSUMED = 'Assumed, since it was not given'

/** The chlorine below which nobody bathes, whatever helps; whether it is held, and by how much it fails. */
export function ChlorineFloor({ upkeep }: { readonly upkeep: Upkeep }) {
  const units = useUnits()
  const { floor, contactTimes, helperNotes } = upkeep
  const mgPerL = (value: number) => formatQuantity('concentration', value, units, { digits: 1 })
  // what is blocked stands above the amounts
  const isSaid = (warning: string) => warning.startsWith(ASSUMED) || upkeep.blocked?.includes(warning)
  const warnings = upkeep.warnings.filter((warning) => !isSaid(warning))
  return (
    <section className={styles['section']}>
      <h2>Chlorine floor {mgPerL(floor.mgPerL)}</h2>
      <p>{floor.reason}</p>
      <p className={styles['note']} role="note">
        <span>
          {floor.isHeld ? (
            <>This way of keeping the water holds it.</>
          ) : (
            <>
              <strong>
                {floor.lackingMgPerL < 0.05
                  ? 'It is not sure to be held.'
                  : `It is not held: at its least the residual lacks ${mgPerL(floor.lackingMgPerL)}.`}
              </strong>{' '}
              Nobody bathes below the floor.
            </>
          )}
        </span>
      </p>
      {floor.adviceMgPerL !== undefined && (
        <p className={styles['faint']}>
          As advice: a twentieth of the stabiliser, {mgPerL(floor.adviceMgPerL)}, keeps the active chlorine up.
        </p>
      )}
      {helperNotes.length > 0 && (
        <ul className={styles['list']} aria-label="Helping devices">
          {helperNotes.map((note) => (
            <li key={note}>{note}</li>
          ))}
        </ul>
      )}
      {warnings.length > 0 && (
        <ul className={styles['list']} aria-label="Warnings">
          {warnings.map((warning) => (
            <li key={warning}>{warning}</li>
          ))}
        </ul>
      )}
      {contactTimes && contactTimes.length > 0 && (
        <table className={styles['table']}>
          <caption className={styles['faint']}>
            How long this chlorine needs, without stabiliser, with nobody adding more germs
          </caption>
          <thead>
            <tr>
              <th scope="col">Germ</th>
              <th scope="col">time</th>
            </tr>
          </thead>
          <tbody>
            {contactTimes.map((row) => (
              <tr key={row.organism}>
                <th scope="row">
                  {row.organism}
                  <br />
                  <span className={styles['faint']}>{row.source}</span>
                </th>
                <td>{spanWords(row.minutes / 60, units)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  )
}
