import { type RefObject, useEffect } from 'react'

const HOMES = 'section, [role="tabpanel"]'

/**
 * When a form goes with the focus in it, the focus goes to the heading of what the form stood in, and that into sight: the
 * page is shorter then, and would else be left past what was just saved.
 */
export function useFocusHome(form: RefObject<HTMLElement | null>): void {
  useEffect(() => {
    const left = form.current
    const homes: Element[] = []
    for (let home = left?.closest(HOMES); home; home = home.parentElement?.closest(HOMES)) homes.push(home)
    return () => {
      if (left?.isConnected || document.activeElement !== document.body) return
      const heading = homes.find((home) => home.isConnected)?.querySelector<HTMLElement>('h2, h3, h4')
      if (!heading) return
      heading.tabIndex = -1
      heading.focus({ preventScroll: true })
      heading.scrollIntoView({ block: 'nearest' })
    }
  }, [form])
}
