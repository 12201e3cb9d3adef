import type { ReactNode } from 'react'
import type { Upkeep, UpkeepInput } from '../../../plan/index.ts'
import { formatQuantity } from '../../../units/index.ts'
import { MG_CACO3_PER_EQ } from '../../../water/index.ts'
import { useUnits } from '../../context.tsx'
import { piecesWords, productLabel, productOf, splitStrength } from '../opening/amounts.ts'
import { spanWords } from '../opening/schedule.ts'
import { formatReading } from '../scale/index.ts'
import { andList, inSentence } from '../water/reading-words.ts'
import styles from './season.module.css'
import { TermTable } from './TermTable.tsx'
import { estimateWords, rangeWords } from './upkeep-words.ts'

/** Two figures are all that a demand known to a factor of two deserves. */
const digitsOf = (value: number) => (Math.abs(value) < 1 ? 2 : 1)

/** Alkalinity is told as people measure it, in mg/L as CaCO3. */
const MG_PER_L_PER_MEQ = MG_CACO3_PER_EQ / 1000

/** The ongoing doses and the make-up water, a line each. */
export function UpkeepLines({ upkeep, input }: { readonly upkeep: Upkeep; readonly input: UpkeepInput }) {
  return (
    <ol className={styles['lines']}>
      <ChlorineLine upkeep={upkeep} productId={input.chlorineProductId} />
      <AcidLine upkeep={upkeep} productId={input.acidProductId} />
      <WaterLine upkeep={upkeep} input={input} />
    </ol>
  )
}

interface LineProps {
  readonly number: number
  readonly title: string
  readonly amount: string
  readonly per: string
  readonly children: ReactNode
}

function Line({ number, title, amount, per, children }: LineProps) {
  const { name, strength } = splitStrength(title)
  return (
    <li className={styles['line']}>
      <span className={styles['number']}>{number}</span>
      <div className={styles['body']}>
        <div className={styles['head']}>
          <h3>
            {name} {strength && <span className={styles['strength']}>{strength}</span>}
          </h3>
          <span className={styles['amount']}>
            {amount} <span className={styles['per']}>{per}</span>
          </span>
        </div>
        {children}
      </div>
    </li>
  )
}

function ChlorineLine({ upkeep, productId }: { readonly upkeep: Upkeep; readonly productId: string }) {
  const units = useUnits()
  const format = (g: number) => estimateWords(productId, g, units)
  const mgPerL = (value: number) => formatQuantity('concentration', value, units, { digits: digitsOf(value) })
  const brings = upkeep.bringsPerWeek
    .filter(({ key, mgPerL: amount }) => formatReading(key, amount, units) !== formatReading(key, 0, units))
    .map(({ key, label, mgPerL: amount }) => `${formatReading(key, amount, units)} of ${inSentence(label)}`)
  const { productGPerDay, productGPerWeek, productLowGPerDay: lowG, productHighGPerDay: highG } = upkeep
  const tablets = productGPerWeek === undefined ? undefined : piecesWords(productId, productGPerWeek, units)
  const perDay = productGPerDay === undefined ? rangeWords(format(lowG), format(highG)) : format(productGPerDay)
  return (
    <Line number={1} title={productLabel(productId)} amount={tablets ?? perDay} per={tablets ? 'a week' : 'a day'}>
      <p className={styles['intro']}>
        {productGPerWeek === undefined
          ? 'Too wide to dose by: measure stabiliser.'
          : `${format(productGPerWeek)} a week, likely ${rangeWords(format(7 * lowG), format(7 * highG))}.`}{' '}
        {productOf(productId)?.how}
      </p>
      {brings.length > 0 && <p className={styles['faint']}>A week of it brings along {andList(brings)}.</p>}
      <TermTable
        title="What uses the chlorine up"
        unitWords="a day"
        terms={upkeep.chlorineTerms}
        total={{
          value: upkeep.chlorineMgPerLDay,
          low: upkeep.chlorineLowMgPerLDay,
          high: upkeep.chlorineHighMgPerLDay,
        }}
        format={mgPerL}
      />
    </Line>
  )
}

function AcidLine({ upkeep, productId }: { readonly upkeep: Upkeep; readonly productId: string }) {
  const units = useUnits()
  const format = (g: number) => estimateWords(productId, g, units)
  const isNeeded = upkeep.acidGPerFortnight > 0
  return (
    <Line
      number={2}
      title={productLabel(productId)}
      amount={isNeeded ? format(upkeep.acidGPerFortnight) : 'none'}
      per={isNeeded ? 'a fortnight' : ''}
    >
      <p className={styles['intro']}>
        {isNeeded
          ? `Likely ${rangeWords(format(Math.max(0, upkeep.acidLowGPerFortnight)), format(upkeep.acidHighGPerFortnight))}, to take up the rise of pH. Measure pH first; acid into water, never water into acid.`
          : 'Nothing lifts pH for certain: measure it, and dose only what the reading asks for.'}
        {upkeep.pHDriftDays !== undefined &&
          ` Left alone, pH leaves its band in about ${spanWords(upkeep.pHDriftDays * 24, units)}.`}
      </p>
      <TermTable
        title="What the acid takes up, as alkalinity"
        unitWords="a day"
        terms={upkeep.acidTerms}
        total={{ value: upkeep.acidTerms.reduce((sum, term) => sum + term.value, 0) }}
        format={(value) =>
          formatQuantity('concentration', value * MG_PER_L_PER_MEQ, units, {
            digits: digitsOf(value * MG_PER_L_PER_MEQ),
          })
        }
      />
    </Line>
  )
}

function WaterLine({ upkeep, input }: { readonly upkeep: Upkeep; readonly input: UpkeepInput }) {
  const units = useUnits()
  const share = (100 * upkeep.evaporationM3PerWeek) / input.volumeM3
  const { evaporationMmPerDay: mm, evaporationLowMmPerDay: low, evaporationHighMmPerDay: high } = upkeep
  const rate = (value: number) => formatQuantity('areaRate', value, units)
  return (
    <Line
      number={3}
      title="Make-up water"
      amount={formatQuantity('volume', upkeep.evaporationM3PerWeek, units, {
        sigma: (upkeep.evaporationM3PerWeek * (high - low)) / (2 * mm),
      })}
      per="a week"
    >
      <p className={styles['intro']}>
        Evaporation takes {rate(mm)} (likely {rangeWords(rate(low), rate(high))}), which is{' '}
        {formatQuantity('percent', share, units, { digits: 1 })} of the water a week. What was dissolved in it stays
        behind.
      </p>
    </Line>
  )
}
