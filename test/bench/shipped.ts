import { pathToFileURL } from 'node:url'
import { withBundle } from '../support/bundled.ts'

type Kernel = typeof import('./shipped-kernel.ts')

/** The kernel bundled as the page has it. */
export async function shippedKernel(): Promise<Kernel> {
  const entry = new URL('./shipped-kernel.ts', import.meta.url)
  return withBundle(entry, async (file) => (await import(pathToFileURL(file).href)) as Kernel)
}
