import type { Ports } from '../state/index.ts'

/** Saves to and opens from the person's own files. */
export function browserFiles(): Ports['files'] {
  return {
    download: (name, text, type) => {
      const url = URL.createObjectURL(new Blob([text], { type }))
      const anchor = document.createElement('a')
      anchor.href = url
      anchor.download = name
      anchor.click()
      // The download has its own hold on the data by the next turn of the event loop.
      setTimeout(() => URL.revokeObjectURL(url), 0)
    },
    pick: (accept) =>
      new Promise((resolve, reject) => {
        const input = document.createElement('input')
        input.type = 'file'
        input.accept = accept
        input.addEventListener('change', () => {
          const file = input.files?.[0]
          if (file) file.text().then(resolve, reject)
          else resolve(undefined)
        })
        input.addEventListener('cancel', () => resolve(undefined))
        input.click()
      }),
  }
}
