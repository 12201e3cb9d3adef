import { formatQuantity } from '../../../units/index.ts'
import { useUnits } from '../../context.tsx'
import { Disclosure } from '../../fields/index.ts'
import styles from './opening.module.css'

interface CautionsProps {
  readonly cautions: readonly string[]
  /** What comes next shows them in full; what comes later behind their title, and on paper all in full. */
  readonly isNext: boolean
}

/** The cautions of one line, at the line. */
export function Cautions({ cautions, isNext }: CautionsProps) {
  const units = useUnits()
  if (cautions.length === 0) return null
  const list = (
    <ul className={styles['cautions']} aria-label="Cautions">
      {cautions.map((caution) => (
        <li key={caution}>{caution}</li>
      ))}
    </ul>
  )
  if (isNext) return list
  return (
    <div className={styles['why']}>
      <Disclosure title="Cautions" aside={formatQuantity('number', cautions.length, units, { digits: 0 })}>
        {list}
      </Disclosure>
    </div>
  )
}
