import { type ReactNode, useId } from 'react'
import styles from './basin.module.css'

interface Props {
  readonly number: number
  readonly title: string
  /** Said at the right of the title. */
  readonly aside?: string | undefined
  readonly children: ReactNode
}

/** A numbered section of the chapter, between ruled lines. */
export function Section({ number, title, aside, children }: Props) {
  const id = useId()
  return (
    <section className={styles['section']} aria-labelledby={id}>
      <header className={styles['head']}>
        <span className={styles['number']} aria-hidden="true">
          {number}
        </span>
        <h3 id={id}>{title}</h3>
        {aside ? <span className={styles['aside']}>{aside}</span> : null}
      </header>
      <div className={styles['inside']}>{children}</div>
    </section>
  )
}

interface FigureProps {
  readonly label: string
  readonly value: string
  readonly note?: string | undefined
  readonly isPart?: boolean | undefined
}

/** A line of the account: what, and how much, the figure at the right. */
export function Figure({ label, value, note, isPart = false }: FigureProps) {
  return (
    <div className={isPart ? styles['part'] : styles['figure']}>
      <dt>{label}</dt>
      <dd>
        {value}
        {note ? <span className={styles['remark']}>{note}</span> : null}
      </dd>
    </div>
  )
}
