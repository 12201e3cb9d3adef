import styles from './basin.module.css'

/** Said where coordinates are typed: the place that they are counted from is marked on the plan. */
export function FromOrigin() {
  return <p className={styles['remark']}>Counted from the mark 0 on the plan.</p>
}
