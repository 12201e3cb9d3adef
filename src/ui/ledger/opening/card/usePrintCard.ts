import { useEffect, useState } from 'react'
import { flushSync } from 'react-dom'
import { useAppStore } from '../../../context.tsx'

/** Prints the card and nothing else: while `isPrinting` the page itself stays off the paper. */
export function usePrintCard() {
  const store = useAppStore()
  const [isPrinting, setPrinting] = useState(false)
  useEffect(() => {
    if (!isPrinting) return undefined
    const end = () => setPrinting(false)
    window.addEventListener('afterprint', end)
    // Where a browser does not say that printing is over, the next thing done on the page does.
    window.addEventListener('pointerdown', end)
    window.addEventListener('keydown', end)
    return () => {
      window.removeEventListener('afterprint', end)
      window.removeEventListener('pointerdown', end)
      window.removeEventListener('keydown', end)
      delete document.documentElement.dataset['print']
    }
  }, [isPrinting])
  const print = () => {
    // The browser lays the paper out at once: the card must be there by then.
    flushSync(() => setPrinting(true))
    document.documentElement.dataset['print'] = 'card'
    store.getState().print()
  }
  return { isPrinting, print }
}
