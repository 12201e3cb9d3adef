import { readFileSync } from 'node:fs'
import { join } from 'node:path'

const text = readFileSync(join(import.meta.dirname, '../../src/water/MODEL.md'), 'utf8')

/** The cells of the table whose heading row begins with these words. */
export function tableAfter(heading: string): string[][] {
  const lines = text.split('\n')
  const start = lines.findIndex((line) => line.replace(/ +/g, ' ').startsWith(heading))
  if (start < 0) throw new Error(`MODEL.md has no table ${heading}`)
  const rows: string[][] = []
  for (const line of lines.slice(start + 2)) {
    if (!line.startsWith('|')) break
    rows.push(
      line
        .slice(1, -1)
        .split('|')
        .map((cell) => cell.trim()),
    )
  }
  return rows
}
