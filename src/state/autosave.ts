import type { SaveState } from './types.ts'

/** Saves the newest value, one write at a time; a value that arrives while writing is written next. */
export function createAutosave<T>(write: (value: T) => Promise<void>, report: (state: SaveState) => void) {
  let waiting: { readonly value: T } | undefined
  let isWriting = false

  const run = async () => {
    isWriting = true
    report('saving')
    let failed = false
    while (waiting) {
      const { value } = waiting
      waiting = undefined
      try {
        await write(value)
        failed = false
      } catch {
        failed = true // reported below; the next edit tries again
      }
    }
    isWriting = false
    report(failed ? 'failed' : 'saved')
  }

  return {
    save: (value: T) => {
      waiting = { value }
      if (!isWriting) void run()
    },
  }
}
