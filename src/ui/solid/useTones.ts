import { useEffect, useState } from 'react'
import { type Tones, tonesFrom } from './tones.ts'

function read(): Tones {
  const style = getComputedStyle(document.documentElement)
  return tonesFrom((token) => style.getPropertyValue(token))
}

/** The theme's colours, read again when the theme changes and when the page goes to paper. */
export function useTones(): Tones {
  const [tones, setTones] = useState(read)
  useEffect(() => {
    const again = () => setTones(read())
    const theme = new MutationObserver(again)
    theme.observe(document.documentElement, { attributes: true, attributeFilter: ['data-theme', 'class', 'style'] })
    const queries = [matchMedia('print'), matchMedia('(prefers-color-scheme: dark)')]
    for (const query of queries) query.addEventListener('change', again)
    return () => {
      theme.disconnect()
      for (const query of queries) query.removeEventListener('change', again)
    }
  }, [])
  return tones
}
