import { type RefObject, useEffect } from 'react'

const HOMES = 'li, section, [role="tabpanel"]'
const HEADINGS = 'h2, h3, h4'

/**
 * A form that takes the place of the button it was opened by takes its focus too: its first field, or with a finger the form
 * itself, since a field would bring up the keys over it. When the form goes with the focus in it, the focus goes to the
 * heading of what it stood in, and that into sight: the page is shorter then, and would else be left past what was saved.
 */
export function useFormFocus(form: RefObject<HTMLElement | null>, isOpenedByPress: boolean): void {
  useEffect(() => {
    const left = form.current
    const homes: Element[] = []
    for (let home = left?.closest(HOMES); home; home = home.parentElement?.closest(HOMES)) homes.push(home)
    if (left && isOpenedByPress && isFocusLost()) {
      left.tabIndex = -1
      const isFinger = window.matchMedia('(pointer: coarse)').matches
      const target = isFinger ? left : (left.querySelector<HTMLElement>('input, textarea') ?? left)
      target.focus()
    }
    return () => {
      if (left?.isConnected || !isFocusLost()) return
      const home = homes.find((each) => each.isConnected && each.querySelector(HEADINGS))
      const heading = home?.querySelector<HTMLElement>(HEADINGS)
      if (!heading) return
      heading.tabIndex = -1
      heading.focus({ preventScroll: true })
      heading.scrollIntoView({ block: 'nearest' })
    }
  }, [form, isOpenedByPress])
}

/** What had the focus is gone, and it has fallen back to the page itself. */
function isFocusLost(): boolean {
  return document.activeElement === document.body
}
