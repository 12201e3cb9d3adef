// Returns the path of a system Chromium or Chrome, or undefined: then Playwright uses its own download.
import { accessSync, constants, existsSync } from 'node:fs'
import { delimiter, join } from 'node:path'

const NAMES = ['chromium', 'chromium-browser', 'google-chrome-stable', 'google-chrome']

/** @param {string} path */
function isExecutable(path) {
  try {
    accessSync(path, constants.X_OK)
    return true
  } catch {
    return false // not there or not ours to run: simply not a candidate
  }
}

/** @returns {string | undefined} */
export function findChromium(env = process.env) {
  const asked = env['CHROMIUM_PATH']
  if (asked) {
    if (!existsSync(asked)) throw new Error(`CHROMIUM_PATH=${asked} does not exist`)
    return asked
  }
  for (const dir of (env['PATH'] ?? '').split(delimiter)) {
    for (const name of NAMES) {
      const path = join(dir, name)
      if (dir && isExecutable(path)) return path
    }
  }
  return undefined
}
