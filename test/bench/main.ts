import type { BenchRow } from './bench.ts'
import { basinSuite } from './suite-basin.ts'
import { waterSuite } from './suite-water.ts'

const SUITES: Readonly<Record<string, () => Promise<BenchRow[]>>> = { basin: basinSuite, water: waterSuite }

async function main(args: readonly string[]): Promise<void> {
  const asJson = args.includes('--json')
  const asked = args.filter((arg) => !arg.startsWith('--'))
  const unknown = asked.find((name) => SUITES[name] === undefined)
  if (unknown !== undefined)
    throw new Error(`There is no suite ${unknown}; there are ${Object.keys(SUITES).join(', ')}`)
  const rows: BenchRow[] = []
  for (const [name, suite] of Object.entries(SUITES)) {
    if (asked.length === 0 || asked.includes(name)) rows.push(...(await suite()))
  }
  if (asJson) console.log(JSON.stringify(rows))
  else console.table(rows.map((row) => ('oursMs' in row ? withShortTimes(row) : row)))
}

function withShortTimes(row: Extract<BenchRow, { oursMs: number }>) {
  return { ...row, oursMs: Number(row.oursMs.toPrecision(3)), peerMs: Number(row.peerMs.toPrecision(3)) }
}

main(process.argv.slice(2)).catch((error: unknown) => {
  console.error(error)
  process.exitCode = 1
})
