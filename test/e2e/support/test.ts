import { type Browser, type BrowserContext, type BrowserContextOptions, test as base, expect } from '@playwright/test'

/** What the browser may say: the library of the solid announces the end of a class that its own bindings still use. */
const KNOWN = [/THREE\.Clock: This module has been deprecated/, /GPU stall due to ReadPixels/]

interface Watch {
  /** Errors and warnings that any page of a watched context has given so far. */
  readonly said: readonly string[]
  readonly listen: (context: BrowserContext) => void
}

interface Fixtures {
  readonly watch: Watch
  /** Somebody else's browser: nothing stored in it, nothing shared with the first one. */
  readonly otherBrowser: (options?: BrowserContextOptions) => Promise<BrowserContext>
}

/** Playwright's test, which also fails where the browser's console shows an error or a warning. */
export const test = base.extend<Fixtures>({
  watch: [
    async ({ context }, use) => {
      const said: string[] = []
      const note = (text: string) => {
        if (!KNOWN.some((known) => known.test(text))) said.push(text)
      }
      const listen = (watched: BrowserContext) => {
        watched.on('console', (message) => {
          if (message.type() === 'error' || message.type() === 'warning') note(`${message.type()}: ${message.text()}`)
        })
        watched.on('weberror', (error) => note(`uncaught: ${error.error().message}`))
      }
      listen(context)
      await use({ said, listen })
      expect(said, 'errors and warnings in the console').toEqual([])
    },
    { auto: true },
  ],
  otherBrowser: async ({ browser, watch, contextOptions }, use) => {
    const opened: BrowserContext[] = []
    await use(async (options) => {
      const context = await newContext(browser, { ...contextOptions, ...options })
      watch.listen(context)
      opened.push(context)
      return context
    })
    for (const context of opened) await context.close()
  },
})

function newContext(browser: Browser, options: BrowserContextOptions): Promise<BrowserContext> {
  return browser.newContext({ viewport: { width: 1440, height: 900 }, ...options })
}

export { expect } from '@playwright/test'
