import { momentMs } from './moment.ts'

/** In the order of their moments, the newest last; those of one moment keep their order. */
export function byMoment<T extends { readonly at: string }>(items: readonly T[]): readonly T[] {
  return [...items].sort((a, b) => momentMs(a.at) - momentMs(b.at))
}

/** An id that no entry has yet. */
export function freshId(entries: readonly { readonly id: string }[]): string {
  const taken = new Set(entries.map(({ id }) => id))
  let n = entries.length + 1
  while (taken.has(`entry-${n}`)) n++
  return `entry-${n}`
}
