import type { Result } from '../../../base/index.ts'
import { deriveWater } from '../../../derive/index.ts'
import type { System } from '../../../document/index.ts'
import { formatQuantity } from '../../../units/index.ts'
import type { CombinedChlorine, MetalsAdvice, Superchlorination, WaterLimits } from '../../../water/index.ts'
import { useApp, useUnits } from '../../context.tsx'
import { ProblemNote } from '../../fields/index.ts'
import { readingRow, toleranceWords } from '../scale/index.ts'
import { Breakpoint } from './Breakpoint.tsx'
import styles from './water.module.css'

/** Chlorine that is used up but still in the water, and what to do about it. */
export function Combined({ system }: { readonly system: System }) {
  const spec = useApp((state) => state.spec)
  const nowMs = useApp((state) => state.nowMs)
  const { sanitation, from, known } = deriveWater(spec, system.id, nowMs)
  const { combined, limits, superchlorination, metals } = sanitation
  if (from !== 'readings') return null
  const isRead = known.tc_mg_per_L_as_Cl2 !== undefined || known.cc_mg_per_L_as_Cl2 !== undefined
  return (
    <div className={styles['sub']}>
      <h4>Combined chlorine</h4>
      {combined ? (
        <Measured combined={combined} limits={limits} />
      ) : (
        <p className={styles['faint']}>
          {isRead
            ? 'The chlorine readings clash, or free chlorine is missing: it can’t be told.'
            : 'Neither total nor combined chlorine is measured, so it can’t be told. Stinging eyes and a strong smell are signs of it.'}
        </p>
      )}
      {combined && combined.combinedMgPerL > limits.combinedHighMgPerL && superchlorination && (
        <Remedy system={system} advice={superchlorination} metals={metals} />
      )}
    </div>
  )
}

interface RemedyProps {
  readonly system: System
  readonly advice: Result<Superchlorination>
  readonly metals: MetalsAdvice
}

/** The dose, or why none may be given. */
function Remedy({ system, advice, metals }: RemedyProps) {
  if (metals.holdBack.includes('oxidiser'))
    return (
      <div className={styles['note']} role="note">
        <p>
          <strong>Metals come first.</strong> So much chlorine would turn them into stains: deal with them as said
          above, and keep only the chlorine that bathing asks for.
        </p>
      </div>
    )
  return advice.ok ? <Breakpoint system={system} advice={advice.value} /> : <ProblemNote problem={advice.problem} />
}

interface MeasuredProps {
  readonly combined: CombinedChlorine
  readonly limits: WaterLimits
}

function Measured({ combined, limits }: MeasuredProps) {
  const units = useUnits()
  const row = readingRow('cc_mg_per_L_as_Cl2')
  const mgPerL = (value: number) => formatQuantity('concentration', value, units, { digits: 1 })
  const { combinedMgPerL, sigmaMgPerL, isWithinScatter } = combined
  const span = row && sigmaMgPerL > 0 ? toleranceWords(row, combinedMgPerL, sigmaMgPerL, 1, units) : ''
  const off = span.startsWith('±') ? ` ${span}` : span && `, ${span}`
  const isOver = combinedMgPerL > limits.combinedHighMgPerL
  return (
    <>
      <p>
        {mgPerL(combinedMgPerL)}
        {off}; the rules allow {mgPerL(limits.combinedHighMgPerL)}.
        {isOver ? ' It is too much.' : ' Nothing has to be broken down.'}
      </p>
      {isWithinScatter && (
        <p className={styles['faint']}>
          It is less than the tests scatter, so it may as well be none: read it again before acting on it.
        </p>
      )}
    </>
  )
}
