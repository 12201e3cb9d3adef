import { deriveWater, sigmaFromTests, type UnknownPart, unknownParts } from '../../../derive/index.ts'
import { formatQuantity } from '../../../units/index.ts'
import { CONSTANT_SETS, type Equilibrium } from '../../../water/index.ts'
import { useApp, useUnits } from '../../context.tsx'
import { inOwnUnits, ProblemNote } from '../../fields/index.ts'
import { Section } from '../basin/Section.tsx'
import { PartBar } from '../scale/index.ts'
import { shareWords } from './chlorine-words.ts'
import { Indices } from './Indices.tsx'
import { PartRows } from './PartRows.tsx'
import type { NumberedProps } from './Readings.tsx'
import { OF_FILL_WATER } from './reading-words.ts'
import { alkalinityParts, alkalinityWords, carbonDioxideWords, unreadWords } from './state-words.ts'
import styles from './water.module.css'

/** Whether the water takes from its walls or leaves scale on them, what its alkalinity is made of, and its carbon dioxide. */
export function Balance({ system, number }: NumberedProps) {
  const spec = useApp((state) => state.spec)
  const nowMs = useApp((state) => state.nowMs)
  const units = useUnits()
  const water = deriveWater(spec, system.id, nowMs)
  const { solved, told } = water
  const constants = CONSTANT_SETS[system.regime.chlorineConstants === 'wahman' ? 'wahman' : 'default']
  const sigma =
    water.latest && sigmaFromTests(water.known, water.latest.method, constants, ({ calciteSI }) => calciteSI)
  // What others tell stands at the readings already.
  const toldWords = told.map(({ words }) => words)
  return (
    <Section number={number} title="Balance">
      {water.from === 'fill' && <p className={styles['intro']}>{OF_FILL_WATER}</p>}
      {!solved ? (
        <p className={styles['intro']}>It takes at least pH and total alkalinity to work that out.</p>
      ) : solved.ok ? (
        <>
          <Indices
            equilibrium={solved.value.equilibrium}
            tableIndex={water.tableIndex}
            indices={water.indices}
            known={water.known}
            sigma={sigma}
          />
          <Alkalinity equilibrium={solved.value.equilibrium} unknown={unknownParts(water, constants)} />
        </>
      ) : (
        <ProblemNote problem={solved.problem} />
      )}
      {water.assumptions
        .filter((words) => !toldWords.includes(words))
        .map((words) => (
          <p key={words} className={styles['faint']}>
            {inOwnUnits(words, units)}
          </p>
        ))}
    </Section>
  )
}

interface AlkalinityProps {
  readonly equilibrium: Equilibrium
  readonly unknown: readonly UnknownPart[]
}

/** Total alkalinity by what holds it, and the carbon dioxide beside it. */
function Alkalinity({ equilibrium, unknown }: AlkalinityProps) {
  const units = useUnits()
  const mgPerL = (value: number, digits: number) => formatQuantity('alkalinity', value, units, { digits })
  const { total } = equilibrium.alkalinity
  const parts = alkalinityParts(equilibrium, unknown)
  const share = (value: number) => shareWords(value, total, units)
  const atMost = (id: string, words: string) => (unknown.length > 0 && id === 'carbonate' ? `at most ${words}` : words)
  return (
    <div className={styles['sub']}>
      <h4>Alkalinity by what holds it</h4>
      <PartBar
        parts={parts}
        quantity="alkalinity"
        words={`Total alkalinity: ${parts.map((part) => `${part.label} ${part.isUnknown ? 'not measured' : atMost(part.id, share(part.value))}`).join(', ')}`}
      />
      <table className={styles['rows']}>
        <tbody>
          <PartRows
            total={{ label: 'Total alkalinity, as CaCO₃', value: mgPerL(total, 0) }}
            parts={parts}
            format={(value, id) => atMost(id, `${mgPerL(value, 1)}, ${share(value)}`)}
          />
          <tr>
            <td colSpan={2} className={styles['words']}>
              {alkalinityWords(equilibrium, unknown.length > 0)}{' '}
              {unreadWords(
                unknown,
                (value) => mgPerL(value, 0),
                (value) => formatQuantity('number', value, units, { digits: 2 }),
              )}
            </td>
          </tr>
          <tr className={styles['total']}>
            <th scope="row">Carbon dioxide</th>
            <td>{formatQuantity('concentration', equilibrium.co2MgPerL, units, { digits: 1 })}</td>
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
    </div>
  )
}
