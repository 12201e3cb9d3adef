import { useApp, useAppStore } from '../../context.tsx'
import { Button } from '../../fields/index.ts'
import { keepingWords } from './keeping.ts'
import styles from './logbook.module.css'

/** Where the plan is kept, and how it gets to a file and back. */
export function Keeping() {
  const store = useAppStore()
  const standing = useApp((state) => state.standing)
  const saveState = useApp((state) => state.saveState)
  const previousName = useApp((state) => state.previousName)
  return (
    <section className={styles['section']} aria-labelledby="keeping">
      <h3 id="keeping">Where this is kept</h3>
      <p>
        In this browser on this device, and nowhere else. Clearing the browser’s data takes it away; a file or a spec
        link holds the whole plan, logbook included.
      </p>
      <p className={saveState === 'failed' ? styles['failed'] : styles['faint']}>{keepingWords(standing, saveState)}</p>
      <div className={styles['buttons']}>
        <Button onPress={() => store.getState().exportFile()}>Save a file</Button>
        <Button onPress={() => store.getState().importFile()}>Open a file</Button>
        {previousName === undefined ? null : (
          <Button tone="quiet" onPress={() => store.getState().openPrevious()}>
            Go back to {previousName === '' ? 'the plan before' : previousName}
          </Button>
        )}
      </div>
    </section>
  )
}
