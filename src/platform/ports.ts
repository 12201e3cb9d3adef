import type { Ports } from '../state/index.ts'
import { browserFiles } from './files.ts'
import { browserLink } from './link.ts'
import { browserStorage } from './storage.ts'

/** Everything that the program asks of a browser. */
export function browserPorts(): Ports {
  return {
    clock: { nowMs: () => Date.now() },
    storage: browserStorage(),
    link: browserLink(),
    files: browserFiles(),
    print: () => window.print(),
  }
}
