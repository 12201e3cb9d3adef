import styles from './basin.module.css'

/** What is to be looked at in the row above it; nothing where there is nothing. */
export function HintRow({ columns, text }: { readonly columns: number; readonly text: string | undefined }) {
  if (!text) return null
  return (
    <tr className={styles['between']}>
      <td />
      <td colSpan={columns - 1}>
        <span className={styles['hint']}>{text}</span>
      </td>
    </tr>
  )
}
