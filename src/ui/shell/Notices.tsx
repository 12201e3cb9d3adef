import { Button } from 'react-aria-components'
import { useApp, useAppStore, useUnits } from '../context.tsx'
import { inOwnUnits } from '../fields/index.ts'
import styles from './Notices.module.css'

/** What the app has to say about its own doings; stays until closed or replaced. */
export function NoticeBar() {
  const store = useAppStore()
  const notice = useApp((state) => state.notice)
  const units = useUnits()
  return (
    <div role={notice?.tone === 'problem' ? 'alert' : 'status'} data-screen-only>
      {notice ? (
        <div className={styles['bar']} data-tone={notice.tone}>
          <p>
            {inOwnUnits(notice.text, units)}
            {notice.hint ? <span className={styles['hint']}> {inOwnUnits(notice.hint, units)}</span> : null}
          </p>
          <Button className={styles['button'] ?? ''} onPress={() => store.getState().notify(undefined)}>
            Close
          </Button>
        </div>
      ) : null}
    </div>
  )
}

/** Says that the plan is somebody's, how old it is, and how to make it one's own. */
export function LinkedBanner() {
  const store = useAppStore()
  const isLinked = useApp((state) => state.standing === 'link')
  if (!isLinked) return null
  return (
    <div className={styles['bar']} data-tone="linked">
      <p>
        <strong>You are looking at a plan that came by a link.</strong> Nothing here changes until you make it yours.
        Its doses belong to the day it was sent: take fresh readings before you follow them.
      </p>
      <Button className={styles['main'] ?? ''} onPress={() => store.getState().makeMine()}>
        Make it mine
      </Button>
      <Button className={styles['button'] ?? ''} onPress={() => store.getState().openPrevious()}>
        Back to my plan
      </Button>
    </div>
  )
}
