// Fails when what a phone must load grows past its budget. Sizes are gzip -9 of the built files.
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'

const BUDGET_KB = { first: 345, solid: 200 }
const html = readFileSync('dist/index.html', 'utf8')
const assets = readdirSync('dist/assets').filter((file) => /\.(js|css)$/.test(file))
/** @param {string} file */
const kb = (file) => gzipSync(readFileSync(join('dist/assets', file)), { level: 9 }).length / 1000
const isFirst = (/** @type {string} */ file) => html.includes(file)
const sum = (/** @type {string[]} */ files) => files.reduce((total, file) => total + kb(file), 0)
const first = sum(assets.filter(isFirst))
const later = sum(assets.filter((file) => !isFirst(file)))
console.log(
  `First load ${first.toFixed(1)} kB of ${BUDGET_KB.first} · loaded later (the solid) ${later.toFixed(1)} kB of ${BUDGET_KB.solid} (gzip)`,
)
if (first > BUDGET_KB.first || later > BUDGET_KB.solid) {
  console.error('The bundle is over its budget.')
  process.exit(1)
}
