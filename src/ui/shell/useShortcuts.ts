import { useEffect } from 'react'
import { useAppStore } from '../context.tsx'
import { stepBack, stepForward } from './steps-told.ts'

const isTyping = (target: EventTarget | null) =>
  target instanceof HTMLElement && (target.isContentEditable || /^(INPUT|TEXTAREA|SELECT)$/.test(target.tagName))

/** Undo and redo by keyboard anywhere but in a text field, which has its own. */
export function useShortcuts(): void {
  const store = useAppStore()
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey || isTyping(event.target)) return
      const key = event.key.toLowerCase()
      if (key === 'z') {
        event.preventDefault()
        if (event.shiftKey) stepForward(store)
        else stepBack(store)
      } else if (key === 'y') {
        event.preventDefault()
        stepForward(store)
      }
    }
    window.addEventListener('keydown', onKey)
    return () => window.removeEventListener('keydown', onKey)
  }, [store])
}
