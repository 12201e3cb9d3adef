import { beforeAll, describe, expect, it } from 'vitest'
import { measure } from '../../src/basin/index.ts'
import { startModeller, type Wasm } from '../support/solid-kit.ts'
import { solidWaterM3 } from '../support/solid-modeller.ts'
import { divided } from './shapes.ts'
import { SOLID_POOLS } from './solid-pools.ts'

// Source: manifold-3d 3.5.4, an independent solid modeller; its polygons and slices approximate curves, so the finer
// solid must come nearer.
const COARSE_M = 2e-3
/** Steps by which chords and slices get finer; a chord's height goes with the square of its length. */
const TIMES = 4
/** Where both agree this well the modeller's own rounding takes part, and finer is not nearer any more. */
const AT_ROUNDING = 1e-8

let wasm: Wasm

beforeAll(async () => {
  wasm = await startModeller()
})

describe('an independent solid modeller', () => {
  it.each(SOLID_POOLS.map((pool) => [pool.name, pool] as const))('converges on the volume: %s', (_, pool) => {
    const { volumeM3 } = measure(divided(pool.shape), 0)
    const off = [1, TIMES].map((k) => {
      const fineness = { chordM: COARSE_M / k ** 2, slices: Math.max(1, pool.slices * k) }
      return Math.abs(solidWaterM3(wasm, pool.shape, fineness) / volumeM3 - 1)
    }) as [number, number]
    expect(off[0]).toBeLessThan(2.5e-3)
    expect(off[1]).toBeLessThan(1.5e-4)
    // Errors of second order fall by TIMES²; half of that must show.
    expect(off[1]).toBeLessThan(Math.max(AT_ROUNDING, off[0] / (TIMES ** 2 / 2)))
  })
})
