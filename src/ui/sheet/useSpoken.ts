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

/** What was said is taken away with the next step, which then says its own: a reader that comes by must not find it. */
export function useSpoken(local: LocalStore): void {
  const app = useAppStore()
  useEffect(
    () =>
      app.subscribe((now, before) => {
        if (isOver(now, before)) local.setState({ spoken: '' })
      }),
    [app, local],
  )
}
