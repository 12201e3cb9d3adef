import type { Ports } from '../state/index.ts'

/** The spec travels in the part of the address after #, which browsers never send to a server. */
export function browserLink(): Ports['link'] {
  const bare = () => window.location.href.split('#')[0] ?? ''
  return {
    opened: () => (window.location.hash.length > 1 ? window.location.href : undefined),
    baseUrl: bare,
    copy: async (text) => {
      await navigator.clipboard.writeText(text)
    },
    forget: () => window.history.replaceState(null, '', bare()),
  }
}
