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
    const homes = homesOf(left)
    if (left && isOpenedByPress && isFocusLost()) {
      left.tabIndex = -1
      const isFinger = window.matchMedia('(pointer: coarse)').matches
      const target = isFinger ? left : (left.querySelector<HTMLElement>('input, textarea') ?? left)
      target.focus()
    }
    return () => {
      if (left?.isConnected || !isFocusLost()) return
      const heading = toHeading(homes)
      heading?.scrollIntoView({ block: 'nearest' })
    }
  }, [form, isOpenedByPress])
}

/**
 * For a press that may take its own button away, called before: if the focus is lost by it, it goes to the heading of what the
 * button stood in, not to the page's start.
 */
export function keepFocus(): void {
  const homes = homesOf(document.activeElement)
  requestAnimationFrame(() => {
    if (!isFocusLost()) return
    const heading = toHeading(homes)
    // Whoever goes by keys has to see it; under a pointer the page stays as it is.
    if (heading?.matches(':focus-visible')) heading.scrollIntoView({ block: 'nearest' })
  })
}

/** What something stands in, from the inside out. */
function homesOf(inner: Element | null): readonly Element[] {
  const homes: Element[] = []
  for (let home = inner?.closest(HOMES); home; home = home.parentElement?.closest(HOMES)) homes.push(home)
  return homes
}

/** Focuses the heading of the nearest home that is still there. */
function toHeading(homes: readonly Element[]): HTMLElement | undefined {
  const home = homes.find((each) => each.isConnected && each.querySelector(HEADINGS))
  const heading = home?.querySelector<HTMLElement>(HEADINGS) ?? undefined
  if (heading) {
    heading.tabIndex = -1
    heading.focus({ preventScroll: true })
  }
  return heading
}

/** What had the focus is gone, and it has fallen back to the page itself. */
function isFocusLost(): boolean {
  return document.activeElement === document.body
}
