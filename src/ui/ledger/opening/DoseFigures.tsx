import type { DoseLine } from '../../../plan/index.ts'
import { useUnits } from '../../context.tsx'
import { formatAmount, formatParts, piecesWords } from './amounts.ts'
import type { LineTimes } from './calendar.ts'
import { intervalWords, packageWords, safeFirstWords } from './dose-words.ts'
import styles from './opening.module.css'
import { dayAndTime } from './schedule.ts'
import { useProducts } from './useProducts.ts'

interface DoseFiguresProps {
  readonly line: DoseLine
  readonly originMs: number
  readonly times: LineTimes
}

/** What stands under a dose: how sure it is, what to give first, its packages, its pours. */
export function DoseFigures({ line, originMs, times }: DoseFiguresProps) {
  const units = useUnits()
  const list = useProducts()
  const format = (amountG: number) => formatAmount(line.productId, amountG, units, list)
  const first = safeFirstWords(line, format)
  const pours = formatParts(
    line.productId,
    line.pours.map(({ amountG }) => amountG),
    units,
    list,
  )
  const remarks = [
    intervalWords(format(line.lowG), format(line.highG)),
    piecesWords(line.productId, line.amountG, units, list),
    packageWords(line, format),
  ].filter((words) => words !== undefined)
  return (
    <>
      {first && (
        <p>
          <strong>{first}.</strong>
        </p>
      )}
      {remarks.length > 0 && <p className={styles['interval']}>{remarks.join('. ')}.</p>}
      {line.pours.length > 1 && (
        <ol className={styles['pours']} aria-label="Pours">
          {line.pours.map((pour, index) => (
            <li key={pour.index}>
              <span>
                Pour {pour.index} of {line.pours.length}, {dayAndTime(originMs, times.poursMs[index] ?? times.startMs)}
              </span>
              <span>{pours[index]}</span>
            </li>
          ))}
        </ol>
      )}
    </>
  )
}
