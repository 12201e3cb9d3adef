import type { Page } from '@playwright/test'

/** What sticks out of the page to the right, where the page itself can be scrolled sideways. */
export function overflowing(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const root = document.scrollingElement ?? document.documentElement
    if (root.scrollWidth <= window.innerWidth) return []
    const wide = [...document.querySelectorAll('body *')].filter(
      (e) => e.getBoundingClientRect().right > innerWidth + 1,
    )
    return [`page ${root.scrollWidth} px`, ...wide.slice(0, 5).map((e) => e.outerHTML.slice(0, 90))]
  })
}

/** Text that its own box cuts off, or that a box around it hides; boxes with an ellipsis or a scroll bar are meant so. */
export function cutText(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const SLACK_PX = 1.5
    const cuts = (style: CSSStyleDeclaration, axis: 'X' | 'Y') =>
      ['hidden', 'clip'].includes(axis === 'X' ? style.overflowX : style.overflowY)
    const isMeant = (element: Element): boolean => {
      for (let e: Element | null = element; e; e = e.parentElement) {
        const style = getComputedStyle(e)
        if (style.textOverflow === 'ellipsis' || style.clipPath !== 'none') return true
      }
      return false
    }
    const found: string[] = []
    for (const element of document.querySelectorAll('body *')) {
      if (element instanceof SVGElement || !(element instanceof HTMLElement)) continue
      const own = [...element.childNodes].filter((n) => n.nodeType === Node.TEXT_NODE && n.nodeValue?.trim())
      if (own.length === 0 || !element.checkVisibility({ visibilityProperty: true }) || isMeant(element)) continue
      const range = document.createRange()
      const boxes = own.flatMap((node) => {
        range.selectNodeContents(node)
        return [...range.getClientRects()]
      })
      for (let around: HTMLElement | null = element; around; around = around.parentElement) {
        const style = getComputedStyle(around)
        const frame = around.getBoundingClientRect()
        const isCut = boxes.some(
          (box) =>
            (cuts(style, 'X') && (box.right > frame.right + SLACK_PX || box.left < frame.left - SLACK_PX)) ||
            (cuts(style, 'Y') && (box.bottom > frame.bottom + SLACK_PX || box.top < frame.top - SLACK_PX)),
        )
        // What has been scrolled out of sight isn't cut: its frame can be scrolled.
        if (isCut) {
          found.push(`“${element.textContent?.trim().slice(0, 60)}” in ${around.className || around.tagName}`)
          break
        }
        if (/(auto|scroll)/.test(style.overflowY + style.overflowX)) break
      }
    }
    for (const input of document.querySelectorAll('input')) {
      if (input.checkVisibility() && input.clientWidth > 0 && input.scrollWidth > input.clientWidth + SLACK_PX)
        found.push(`field “${input.value}” ${input.scrollWidth} in ${input.clientWidth} px`)
    }
    return found
  })
}

/** Buttons, boxes and fields too small for a finger [44 px]; links in a line of text are allowed. */
export function smallTargets(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const LEAST_PX = 44
    const ROUNDING_PX = 0.25
    const kinds =
      'button, [role="button"], [role="tab"], [role="menuitem"], [role="radio"], [role="option"], input, textarea, label:has(input[type="checkbox"]), label:has(input[type="radio"])'
    const found: string[] = []
    for (const element of document.querySelectorAll(kinds)) {
      // Marks in the drawing are taken hold of within a finger's reach around them, whatever their size.
      if (element instanceof SVGElement || !element.checkVisibility({ visibilityProperty: true })) continue
      if (element.matches('input') && element.closest('label')) continue
      // Only for screen readers: nothing to press with a finger.
      if (isHiddenToEyes(element)) continue
      const { width, height } = reachOf(element)
      // The ruled line under a field is a pixel of its row.
      const least = LEAST_PX - (element.matches('input, textarea') ? 1 : 0) - ROUNDING_PX
      if (width < least || height < least) {
        const name = element.getAttribute('aria-label') ?? element.textContent?.trim() ?? ''
        found.push(`${element.tagName} “${name.slice(0, 50)}” ${Math.round(width)} × ${Math.round(height)}`)
      }
    }
    return [...new Set(found)]

    function isHiddenToEyes(element: Element): boolean {
      for (let e: Element | null = element; e; e = e.parentElement) {
        const { clipPath, clip } = getComputedStyle(e)
        if (clipPath !== 'none' || clip !== 'auto') return true
      }
      return false
    }

    /** The element's box, with a before or after that widens where it can be pressed, or the field's row around it. */
    function reachOf(element: Element): { width: number; height: number } {
      const box = element.getBoundingClientRect()
      let { width, height } = box
      for (const pseudo of ['::before', '::after']) {
        const style = getComputedStyle(element, pseudo)
        if (style.content === 'none' || style.position !== 'absolute') continue
        width = Math.max(width, Number.parseFloat(style.width) || 0)
        height = Math.max(height, Number.parseFloat(style.height) || 0)
      }
      return { width, height }
    }
  })
}
