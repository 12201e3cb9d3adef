import styles from './water.module.css'

/** Half of the span in which a figure lies 19 times in 20, after it: how far the tests may be off. */
export function Off({ half }: { readonly half: string }) {
  return <span className={styles['off']}> ± {half}</span>
}
