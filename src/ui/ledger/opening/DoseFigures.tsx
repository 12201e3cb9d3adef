import type { DoseLine } from '../../../plan/index.ts'
import type { UnitSystem } from '../../../units/index.ts'
import { useUnits } from '../../context.tsx'
import { formatAmount, piecesWords } from './amounts.ts'
import { intervalWords, packageWords } from './dose-words.ts'
import styles from './opening.module.css'
import { dayAndTime } from './schedule.ts'

/** The amount at the right of a dose's line, and what it comes to in tablets. */
export function doseAmount(line: DoseLine, units: UnitSystem): string {
  return formatAmount(line.productId, line.amountG, units)
}

/** What stands under a dose: how the volume's uncertainty widens it, its pours, its packages. */
export function DoseFigures({ line, startMs }: { readonly line: DoseLine; readonly startMs: number }) {
  const units = useUnits()
  const format = (amountG: number) => formatAmount(line.productId, amountG, units)
  const remarks = [
    intervalWords(format(line.lowG), format(line.highG)),
    piecesWords(line.productId, line.amountG, units),
    packageWords(line, format),
  ].filter((words) => words !== undefined)
  return (
    <>
      {remarks.length > 0 && <p className={styles['interval']}>{remarks.join('. ')}.</p>}
      {line.pours.length > 1 && (
        <ol className={styles['pours']} aria-label="Pours">
          {line.pours.map((pour) => (
            <li key={pour.index}>
              <span>
                Pour {pour.index} of {line.pours.length}, {dayAndTime(startMs, pour.hoursAfterStart)}
              </span>
              <span>{format(pour.amountG)}</span>
            </li>
          ))}
        </ol>
      )}
    </>
  )
}
