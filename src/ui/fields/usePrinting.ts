import { useSyncExternalStore } from 'react'
import { flushSync } from 'react-dom'

let isPrinting = false
/** Kept, since a listener is taken off from the object that it was put on. */
let paper: MediaQueryList | undefined
const listeners = new Set<() => void>()

function become(next: boolean) {
  if (next === isPrinting) return
  isPrinting = next
  // The browser lays the paper out as soon as the event is over: the page must be ready by then.
  flushSync(() => {
    for (const listener of listeners) listener()
  })
}

const start = () => become(true)
const end = () => become(paper?.matches ?? false)

function subscribe(listener: () => void): () => void {
  if (listeners.size === 0) {
    window.addEventListener('beforeprint', start)
    window.addEventListener('afterprint', end)
    paper = window.matchMedia('print')
    paper.addEventListener('change', end)
  }
  listeners.add(listener)
  return () => {
    listeners.delete(listener)
    if (listeners.size > 0) return
    window.removeEventListener('beforeprint', start)
    window.removeEventListener('afterprint', end)
    paper?.removeEventListener('change', end)
    paper = undefined
  }
}

/** True while the page is printed or previewed, so that what the screen leaves out can be set on paper. */
export function usePrinting(): boolean {
  return useSyncExternalStore(
    subscribe,
    () => isPrinting,
    () => false,
  )
}
