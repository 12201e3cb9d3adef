import { execFileSync } from 'node:child_process'
import { join } from 'node:path'
import { expect, test } from 'vitest'

/** One boxed number or the smallest object a sweep would be 12 or more. */
const MOST_BYTES_A_SWEEP = 8

/** In a process of its own, as the program is compiled: the test runner's way of importing keeps calls from being inlined. */
test('nothing is allocated in the loop of a solve: warm, further sweeps take nothing from the heap', {
  timeout: 120_000,
  // In one of some ten processes beside other work the compiler leaves one number boxed (16 bytes) from first to last. What the
  // code itself takes is taken in every one.
  retry: 2,
}, () => {
  const script = join(import.meta.dirname, 'heap-growth.ts')
  const output = execFileSync(process.execPath, ['--expose-gc', '--import', 'tsx', script], { encoding: 'utf8' })
  const rounds: number[] = JSON.parse(output)
  expect(rounds.length).toBe(300)
  // the first rounds run before the code is compiled
  const warm = rounds.slice(200)
  const median = warm.toSorted((a, b) => a - b)[Math.floor(warm.length / 2)]
  expect(median).toBeLessThan(MOST_BYTES_A_SWEEP)
})
