import { type BarPart, PartSample } from '../scale/index.ts'
import styles from './water.module.css'

interface PartRowsProps {
  readonly total: { readonly label: string; readonly value: string }
  readonly parts: readonly (BarPart & { readonly isUnknown?: boolean })[]
  readonly format: (value: number, id: string) => string
}

/** The rows under a bar: the whole, and each part with the ink it is drawn in. */
export function PartRows({ total, parts, format }: PartRowsProps) {
  return (
    <>
      <tr className={styles['total']}>
        <th scope="row">{total.label}</th>
        <td>{total.value}</td>
      </tr>
      {parts.map((part) => (
        <tr key={part.id} className={styles['part']}>
          <th scope="row">
            <PartSample ink={part.ink} />
            {part.label}
          </th>
          <td>{part.isUnknown ? 'not measured' : part.value === 0 ? 'none' : format(part.value, part.id)}</td>
        </tr>
      ))}
    </>
  )
}
