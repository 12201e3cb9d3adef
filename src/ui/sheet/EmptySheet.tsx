import { Button } from 'react-aria-components'
import { useAppStore } from '../context.tsx'
import styles from './Sheet.module.css'

/** A blank sheet says how to begin; the last way needs no drawing at all. */
export function EmptySheet() {
  const store = useAppStore()
  const { setTool, openChapter } = store.getState()
  const toNumbers = () => {
    openChapter('basin')
    requestAnimationFrame(() => {
      const ledger = document.querySelector('[role="tabpanel"]')
      ledger?.scrollIntoView({ block: 'nearest' })
    })
  }
  const ways = [
    ['Draw a loop', 'Once around the pool with the pointer; its size is asked afterwards.', () => setTool('freehand')],
    ['Place points', 'Tap along the edge, or place them by keyboard; the grid gives lengths.', () => setTool('points')],
    ['Start from numbers', 'An outline that takes its form from a few lengths.', toNumbers],
    ['Type a volume instead', 'Known or guessed: dosing can begin, the drawing can follow.', toNumbers],
  ] as const
  return (
    <div className={styles['empty']}>
      <h2 className={styles['emptyTitle']}>A blank sheet</h2>
      <div className={styles['ways']}>
        {ways.map(([name, note, onPress], i) => (
          <Button key={name} className={styles['way'] ?? ''} onPress={onPress}>
            <span className={styles['wayNumber']}>{i + 1}</span>
            <span className={styles['wayName']}>{name}</span>
            <span className={styles['wayNote']}>{note}</span>
          </Button>
        ))}
      </div>
    </div>
  )
}
