// Type-checks the whole, then each pure layer by itself without the DOM, so that no pure layer can lean on a browser.
import { spawnSync } from 'node:child_process'
import { existsSync, readdirSync } from 'node:fs'

const tsc = 'node_modules/typescript/bin/tsc'
const projects = [
  'tsconfig.json',
  ...readdirSync('src')
    .map((layer) => `src/${layer}/tsconfig.json`)
    .filter((p) => existsSync(p)),
]
let failed = false
for (const project of projects) {
  const { status } = spawnSync(process.execPath, [tsc, '--noEmit', '-p', project], { stdio: 'inherit' })
  if (status !== 0) {
    console.error(`Types fail in ${project}`)
    failed = true
  }
}
process.exit(failed ? 1 : 0)
