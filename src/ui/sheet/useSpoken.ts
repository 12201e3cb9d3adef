import { useEffect } from 'react'
import type { AppStoreState } from '../../state/index.ts'
import { useAppStore } from '../context.tsx'
import type { LocalStore } from './local.ts'

type Seen = Pick<AppStoreState, 'spec' | 'tool' | 'selection'>

/** Whether what was said of the drawing is over: it was edited, or something else is in hand. */
export function isOver(now: Seen, before: Seen): boolean {
  return (
    now.spec !== before.spec ||
    now.tool !== before.tool ||
    JSON.stringify(now.selection) !== JSON.stringify(before.selection)
  )
}

/** What an edit says comes beside other changes that it makes (a tool laid down, a thing selected): it stands so long [ms]. */
const FRESH_MS = 1000

/** What was said is taken away with the next step, which then says its own: a reader that comes by must not find it. */
export function useSpoken(local: LocalStore): void {
  const app = useAppStore()
  useEffect(() => {
    let saidAt = Number.NEGATIVE_INFINITY
    const endLocal = local.subscribe((now, before) => {
      if (now.spoken !== before.spoken) saidAt = performance.now()
    })
    const endApp = app.subscribe((now, before) => {
      if (isOver(now, before) && performance.now() - saidAt > FRESH_MS) local.setState({ spoken: '' })
    })
    return () => {
      endLocal()
      endApp()
    }
  }, [app, local])
}
