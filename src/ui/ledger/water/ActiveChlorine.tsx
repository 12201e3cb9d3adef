import { type ActiveChlorineAccount, sigmaFromTests } from '../../../derive/index.ts'
import type { ReadingMethod, ReadingValues, System } from '../../../document/index.ts'
import { formatQuantity } from '../../../units/index.ts'
import { CONSTANT_SETS, type Equilibrium, NO_STABILISER_MG_PER_L, type Totals } from '../../../water/index.ts'
import { useAppStore, useUnits } from '../../context.tsx'
import { SegmentedField } from '../../fields/index.ts'
import { PartBar } from '../scale/index.ts'
import {
  CHLORINE_CONSTANTS,
  chlorineParts,
  halfLifeWords,
  halfWidthWords,
  shareWords,
  smallMgPerL,
  spreadWords,
  sunLines,
} from './chlorine-words.ts'
import { Off } from './Off.tsx'
import { PartRows } from './PartRows.tsx'
import styles from './water.module.css'

interface ActiveChlorineProps {
  readonly system: System
  readonly account: ActiveChlorineAccount
  readonly solved: { readonly totals: Totals; readonly equilibrium: Equilibrium }
  readonly known: ReadingValues
  readonly method: ReadingMethod
}

/** Free chlorine taken apart: active, weak, held in store; by both sets of constants; and how the sun takes it. */
export function ActiveChlorine({ system, account, solved, known, method }: ActiveChlorineProps) {
  const store = useAppStore()
  const units = useUnits()
  const { equilibrium, totals } = solved
  const parts = chlorineParts(equilibrium)
  const free = parts.reduce((sum, { value }) => sum + value, 0)
  const stabiliser = known.cya_mg_per_L ?? 0
  const isStabilised = stabiliser >= NO_STABILISER_MG_PER_L
  const share = (value: number) => shareWords(value, free, units)
  const constants = CONSTANT_SETS[account.chosen === 'wahman' ? 'wahman' : 'default']
  const sigma = sigmaFromTests(known, method, constants, ({ activeChlorineMgPerL }) => activeChlorineMgPerL)
  const halfWidth = sigma === undefined ? 0 : 1.96 * sigma
  const label = (id: string) => CHLORINE_CONSTANTS.find((set) => set.id === id)?.label
  const otherMgPerL = account.chosen === 'wahman' ? account.mgPerL : account.wahmanMgPerL
  const otherId = account.chosen === 'wahman' ? 'obrien' : 'wahman'
  return (
    <>
      <dl className={isStabilised ? styles['pair'] : styles['single']}>
        <div>
          <dt>Active chlorine{isStabilised && `, ${label(account.chosen)}`}</dt>
          <dd>
            {smallMgPerL(account.chosenMgPerL, units, halfWidth)}
            {halfWidth > 0 && halfWidth < account.chosenMgPerL && (
              <Off half={halfWidthWords(halfWidth, account.chosenMgPerL, units)} />
            )}
            {halfWidth >= account.chosenMgPerL && (
              <span className={styles['off']}>, at most {smallMgPerL(account.chosenMgPerL + halfWidth, units)}</span>
            )}
          </dd>
          <dd className={styles['remark']}>{share(account.chosenMgPerL)} of the free chlorine works at once</dd>
        </div>
        {isStabilised && (
          <div>
            <dt>By {label(otherId)}</dt>
            <dd>{smallMgPerL(otherMgPerL, units, halfWidth)}</dd>
            <dd className={styles['remark']}>{share(otherMgPerL)} of the free chlorine</dd>
          </div>
        )}
      </dl>
      {isStabilised && (
        <>
          <p className={styles['faint']}>{spreadWords(account)}</p>
          <SegmentedField
            label="Reckon with"
            value={account.chosen}
            options={CHLORINE_CONSTANTS}
            onChange={(chlorineConstants) =>
              store.getState().dispatch({ id: 'setRegime', args: { systemId: system.id, chlorineConstants } })
            }
          />
        </>
      )}
      <PartBar
        parts={parts}
        quantity="concentration"
        words={`Free chlorine by what it is: ${parts.map((part) => `${part.label} ${share(part.value)}`).join(', ')}`}
      />
      <table className={styles['rows']}>
        <tbody>
          <PartRows
            total={{ label: 'Free chlorine', value: formatQuantity('concentration', free, units, { digits: 1 }) }}
            parts={parts}
            format={(value) => `${smallMgPerL(value, units, halfWidth)}, ${share(value)}`}
          />
        </tbody>
      </table>
      <table className={styles['rows']}>
        <caption className={styles['caption']}>In clear summer noon sun half of it is gone after</caption>
        <tbody>
          {sunLines(account, totals, equilibrium.pH, stabiliser).map((line) => (
            <tr key={line.id}>
              <th scope="row">{line.label}</th>
              <td>{halfLifeWords(line.minutes, units)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className={styles['faint']}>
        From one measurement, in summer at 47° north and at the surface of the water; this pool’s own latitude counts in
        Season. Deeper water and a cover keep it longer. Nowell &amp; Hoigné 1992 (abstract): within a fifth without
        stabiliser, and a rough guide with it.
      </p>
    </>
  )
}
