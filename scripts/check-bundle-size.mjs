// Fails when what a phone must load grows past its budget. Sizes are gzip -9 of the built files.
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'

const BUDGET_KB = { first: 392, chapters: 160, solid: 200 }
const html = readFileSync('dist/index.html', 'utf8')
const assets = readdirSync('dist/assets').filter((file) => /\.(js|css)$/.test(file))
/** @param {string} file */
const kb = (file) => gzipSync(readFileSync(join('dist/assets', file)), { level: 9 }).length / 1000
/** @param {string} file */
const partOf = (file) => (html.includes(file) ? 'first' : /^Solid/.test(file) ? 'solid' : 'chapters')
const size = { first: 0, chapters: 0, solid: 0 }
for (const file of assets) size[partOf(file)] += kb(file)
const say = (/** @type {keyof typeof size} */ part) => `${size[part].toFixed(1)} kB of ${BUDGET_KB[part]}`
console.log(`First load ${say('first')} · loaded later: chapters ${say('chapters')}, the solid ${say('solid')} (gzip)`)
if (size.first > BUDGET_KB.first || size.chapters > BUDGET_KB.chapters || size.solid > BUDGET_KB.solid) {
  console.error('The bundle is over its budget.')
  process.exit(1)
}
