import { flushSync } from 'react-dom'

/**
 * Takes up what is still being typed in a form, before it is saved. Answers whether all of it could be read; where not,
 * the field that complains is focused, so that nothing is saved as unknown by mistake.
 */
export function finishTyping(form: HTMLElement | null): boolean {
  const active = document.activeElement
  if (form && active instanceof HTMLElement && form.contains(active) && active.matches('input, textarea'))
    flushSync(() => active.blur())
  const wrong = form?.querySelector<HTMLElement>('[data-invalid] input, [data-invalid] textarea')
  wrong?.focus()
  return !wrong
}
