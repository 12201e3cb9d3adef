import { useApp } from '../context.tsx'
import { isoFromMs, sayMoment } from '../fields/index.ts'
import styles from './PrintedHead.module.css'

/** The head of the printed spec sheet: whose pool, and of what day the sheet is. */
export function PrintedHead() {
  const name = useApp((state) => state.spec.name)
  const nowMs = useApp((state) => state.nowMs)
  return (
    <header className={styles['head']} data-print-only>
      <h1>{name === '' ? 'Unnamed pool' : name}</h1>
      <p>
        Spec sheet made with Shoalbook, {sayMoment(isoFromMs(nowMs))}. Measured numbers age: take fresh readings before
        dosing.
      </p>
    </header>
  )
}
