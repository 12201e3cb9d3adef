import { flushSync } from 'react-dom'

/**
 * Takes up what is still being typed in a form, before it is saved. Answers whether all of it could be read; where not,
 * the field that complains is focused, out of a closed part too, so that nothing is saved as unknown by mistake.
 */
export function finishTyping(form: HTMLElement | null): boolean {
  const active = document.activeElement
  if (form && active instanceof HTMLElement && form.contains(active) && active.matches('input, textarea'))
    flushSync(() => active.blur())
  const wrong = form?.querySelector<HTMLElement>('[data-invalid] input, [data-invalid] textarea')
  openAround(wrong)
  wrong?.focus()
  return !wrong
}

/** A closed part hides its field and what is wrong with it: it is opened by its own button. */
function openAround(field: HTMLElement | null | undefined): void {
  const title = field?.closest('[hidden]')?.getAttribute('aria-labelledby')
  const opener = title ? document.getElementById(title) : null
  if (opener) flushSync(() => opener.click())
}
