import { useEffect, useState } from 'react'
import { flushSync } from 'react-dom'

/** True while the page is printed or previewed, so that what the screen leaves out can be set on paper. */
export function usePrinting(): boolean {
  const [isPrinting, setPrinting] = useState(false)
  useEffect(() => {
    const media = window.matchMedia('print')
    // The browser lays the paper out as soon as the event is over: the page must be ready by then.
    const start = () => flushSync(() => setPrinting(true))
    const end = () => setPrinting(media.matches)
    const change = () => (media.matches ? start() : end())
    window.addEventListener('beforeprint', start)
    window.addEventListener('afterprint', end)
    media.addEventListener('change', change)
    return () => {
      window.removeEventListener('beforeprint', start)
      window.removeEventListener('afterprint', end)
      media.removeEventListener('change', change)
    }
  }, [])
  return isPrinting
}
