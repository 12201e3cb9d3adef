import { type ComponentType, use } from 'react'

/** A part of the screen whose program may not be there yet. */
export interface Part {
  /** The part, once it is there. */
  readonly now: () => ComponentType | undefined
  /** Fetches it; ahead of its first use, so that from then on it is there at once, as paper needs it. */
  readonly load: () => Promise<void>
}

/** A part that is fetched only when it is wanted. */
export function deferred(fetchPart: () => Promise<ComponentType>): Part {
  let part: ComponentType | undefined
  let coming: Promise<void> | undefined
  const load = () => {
    coming ??= fetchPart().then((fetched) => {
      part = fetched
    })
    return coming
  }
  return { now: () => part, load }
}

/** A part that came with the page. */
export function present(part: ComponentType): Part {
  return { now: () => part, load: () => Promise.resolve() }
}

/** The part itself; inside a Suspense, which waits while it is fetched. */
export function Deferred({ part }: { readonly part: Part }) {
  if (!part.now()) use(part.load())
  const Present = part.now()
  return Present ? <Present /> : null
}
