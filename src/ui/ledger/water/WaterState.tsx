import { deriveWater } from '../../../derive/index.ts'
import type { KnownReading } from '../../../plan/index.ts'
import { formatQuantity } from '../../../units/index.ts'
import type { Equilibrium } from '../../../water/index.ts'
import { useApp, useUnits } from '../../context.tsx'
import { ProblemNote } from '../../fields/index.ts'
import { Section } from '../basin/Section.tsx'
import { formatSigned } from '../scale/index.ts'
import type { NumberedProps } from './Readings.tsx'
import {
  alkalinityShares,
  carbonDioxideWords,
  chlorineShares,
  saturationWords,
  whyIndicesDiffer,
} from './state-words.ts'
import styles from './water.module.css'

/** What the readings say about the water: active chlorine, balance, alkalinity, carbon dioxide. */
export function WaterState({ system, number }: NumberedProps) {
  const spec = useApp((state) => state.spec)
  const nowMs = useApp((state) => state.nowMs)
  const water = deriveWater(spec, system.id, nowMs)
  return (
    <Section number={number} title="What the water is">
      {!water.solved ? (
        <p className={styles['intro']}>It takes at least pH and total alkalinity to work that out.</p>
      ) : water.solved.ok ? (
        <Solved equilibrium={water.solved.value.equilibrium} known={water.known} tableIndex={water.tableIndex} />
      ) : (
        <ProblemNote problem={water.solved.problem} />
      )}
      {water.assumptions.map((words) => (
        <p key={words} className={styles['faint']}>
          {words}
        </p>
      ))}
    </Section>
  )
}

interface SolvedProps {
  readonly equilibrium: Equilibrium
  readonly known: KnownReading
  readonly tableIndex: number | undefined
}

function Solved({ equilibrium, known, tableIndex }: SolvedProps) {
  const units = useUnits()
  const mgPerL = (value: number, digits: number) => formatQuantity('concentration', value, units, { digits })
  const free = known.fc_mg_per_L_as_Cl2
  return (
    <>
      <Indices equilibrium={equilibrium} known={known} tableIndex={tableIndex} />
      <table className={styles['rows']}>
        <tbody>
          {free !== undefined && free > 0 && (
            <>
              <tr className={styles['total']}>
                <th scope="row">Free chlorine</th>
                <td>{mgPerL(free, 1)}</td>
              </tr>
              {known.cya_mg_per_L === undefined ? (
                <tr className={styles['part']}>
                  <td colSpan={2} className={styles['words']}>
                    How much of it is active can’t be told: stabiliser is not measured, and with it most chlorine is
                    held in store.
                  </td>
                </tr>
              ) : null}
              {(known.cya_mg_per_L === undefined ? [] : chlorineShares(equilibrium)).map((share) => (
                <tr key={share.id} className={styles['part']}>
                  <th scope="row">{share.label}</th>
                  <td>
                    {mgPerL(share.value, 2)},{' '}
                    {formatQuantity('percent', (100 * share.value) / free, units, { digits: 0 })}
                  </td>
                </tr>
              ))}
            </>
          )}
          <tr className={styles['total']}>
            <th scope="row">Total alkalinity</th>
            <td>{mgPerL(equilibrium.alkalinity.total, 0)}</td>
          </tr>
          {alkalinityShares(equilibrium).map((share) => (
            <tr key={share.id} className={styles['part']}>
              <th scope="row">{share.label}</th>
              <td>{mgPerL(share.value, 1)}</td>
            </tr>
          ))}
          <tr className={styles['total']}>
            <th scope="row">Carbon dioxide</th>
            <td>{mgPerL(equilibrium.co2MgPerL, 1)}</td>
          </tr>
          <tr>
            <td colSpan={2} className={styles['words']}>
              {carbonDioxideWords(equilibrium.log10PCO2Atm, (factor) =>
                formatQuantity('number', factor, units, { digits: factor < 2 ? 1 : 0 }),
              )}
            </td>
          </tr>
        </tbody>
      </table>
    </>
  )
}

function Indices({ equilibrium, known, tableIndex }: SolvedProps) {
  const units = useUnits()
  const si = equilibrium.calciteSI
  return (
    <>
      <dl className={styles['pair']}>
        <div>
          <dt>Calcite SI</dt>
          <dd>{Number.isFinite(si) ? formatSigned(si, units) : 'none'}</dd>
          <dd className={styles['remark']}>{saturationWords(si)}</dd>
        </div>
        <div>
          <dt>Table index</dt>
          <dd>{tableIndex === undefined ? 'not known' : formatSigned(tableIndex, units)}</dd>
          <dd className={styles['remark']}>
            {tableIndex === undefined ? 'needs calcium and temperature' : 'as an operator’s table gives it'}
          </dd>
        </div>
      </dl>
      {tableIndex !== undefined && Number.isFinite(si) && (
        <p className={styles['faint']}>
          {whyIndicesDiffer(known, equilibrium.temperatureC)} Act on the calcite SI; the table index is for an
          inspector’s sheet.
        </p>
      )}
    </>
  )
}
