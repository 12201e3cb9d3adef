import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  bandsOf,
  contoursOf,
  depthAt,
  levelForVolume,
  measure,
  meshOf,
  partition,
  sectionOf,
  volumeAtLevel,
} from '../../src/basin/index.ts'
import { anyPath, around, pool } from './arbitrary.ts'
import { relative } from './shapes.ts'

const SEED = 20261124

/** Every number inside a value is finite. */
function isFiniteThroughout(value: unknown): boolean {
  if (typeof value === 'number') return Number.isFinite(value)
  if (value && typeof value === 'object') return Object.values(value).every(isFiniteThroughout)
  return true
}

function watertight(mesh: { positions: Float32Array; indices: Uint32Array }, rimZ: number): boolean {
  const name = (i: number): string =>
    `${mesh.positions[3 * i]},${mesh.positions[3 * i + 1]},${mesh.positions[3 * i + 2]}`
  const count = new Map<string, number>()
  for (let i = 0; i < mesh.indices.length; i += 3)
    for (let k = 0; k < 3; k++) {
      const a = name(mesh.indices[i + k]!)
      const b = name(mesh.indices[i + ((k + 1) % 3)]!)
      if (a !== b)
        count.set(
          a < b ? `${a}|${b}` : `${b}|${a}`,
          (count.get(a < b ? `${a}|${b}` : `${b}|${a}`) ?? 0) + (a < b ? 1 : -1),
        )
    }
  for (const [key, n] of count) {
    if (n === 0) continue
    if (!key.split('|').every((v) => Math.abs(Number(v.split(',')[2]) - rimZ) < 1e-5)) return false
  }
  return true
}

describe('random shapes', () => {
  it('give a measure or a problem for any path whatever, and never a throw or a number that is none', () => {
    fc.assert(
      fc.property(anyPath, fc.array(anyPath, { maxLength: 1 }), (outline, islands) => {
        const result = partition({
          outline,
          islands,
          floor: { kind: 'flat', depthM: 1.2 },
          wall: { kind: 'vertical' },
          patches: [],
          freeboardM: 0.1,
        })
        if (!result.ok) {
          expect(result.problem.code).not.toBe('cannot-divide')
          return
        }
        const m = measure(result.value, 0)
        expect(isFiniteThroughout(m)).toBe(true)
        expect(relative(m.volumeM3, 1.2 * m.waterSurfaceM2)).toBeLessThan(1e-9)
      }),
      { seed: SEED, numRuns: 400 },
    )
  })

  it('are divided into cells whose figures hang together, whatever features, islands and floors come together', () => {
    let sound = 0
    fc.assert(
      fc.property(pool, fc.double({ min: -1, max: 0.2, noNaN: true }), (s, level) => {
        const result = partition(s)
        if (!result.ok) {
          expect(result.problem.code).not.toBe('cannot-divide')
          return
        }
        sound++
        const p = result.value
        const m = measure(p, level)
        expect(isFiniteThroughout(m)).toBe(true)
        expect(m.volumeM3).toBeGreaterThanOrEqual(0)
        const h = 1e-4
        const slope = (volumeAtLevel(p, level + h).volumeM3 - volumeAtLevel(p, level - h).volumeM3) / (2 * h)
        expect(slope).toBeLessThanOrEqual(volumeAtLevel(p, level + h).waterSurfaceM2 + 1e-6)
        expect(slope).toBeGreaterThanOrEqual(volumeAtLevel(p, level - h).waterSurfaceM2 - 1e-6)
        if (m.volumeM3 > 1e-6) {
          const back = levelForVolume(p, m.volumeM3)
          expect(back.ok && relative(volumeAtLevel(p, back.value).volumeM3, m.volumeM3)).toBeLessThan(1e-9)
        }
        // Counting 60 × 60 squares is off by no more than the squares that an edge passes.
        let counted = 0
        const size = 10 / 60
        for (let i = 0; i < 60; i++)
          for (let k = 0; k < 60; k++) {
            const d = depthAt(p, -5 + (i + 0.5) * size, -5 + (k + 0.5) * size)
            if (d && d.depthM + level > 0) counted += size * size * (d.depthM + level)
          }
        expect(Math.abs(counted - m.volumeM3)).toBeLessThan(1.2 + 0.1 * m.volumeM3)
      }),
      { seed: SEED, numRuns: 150 },
    )
    expect(sound).toBeGreaterThan(60)
  })

  it('give a watertight mesh, and sections, contours and bands without a hole in their numbers', () => {
    let sound = 0
    fc.assert(
      fc.property(pool, around, around, (s, from, to) => {
        const result = partition(s)
        if (!result.ok) return
        sound++
        const mesh = meshOf(result.value, { chordM: 0.01 })
        if (!mesh.ok) throw new Error(mesh.problem.code)
        expect(watertight(mesh.value, 0.15)).toBe(true)
        const depths = [-0.5, 0, 0.5, 1, 1.5, 2]
        expect(isFiniteThroughout(contoursOf(result.value, depths))).toBe(true)
        expect(isFiniteThroughout(bandsOf(result.value, depths))).toBe(true)
        expect(isFiniteThroughout(sectionOf(result.value, { from, to }))).toBe(true)
      }),
      { seed: SEED, numRuns: 120 },
    )
    expect(sound).toBeGreaterThan(50)
  })

  it('with a cove give a measure below the bare one, or a problem', () => {
    fc.assert(
      fc.property(
        pool,
        fc.double({ min: 0.05, max: 0.6, noNaN: true }),
        fc.double({ min: -1, max: 0.1, noNaN: true }),
        (s, radiusM, level) => {
          const bare = partition(s)
          const coved = partition({ ...s, wall: { kind: 'cove', radiusM } })
          expect(coved.ok).toBe(bare.ok)
          if (!bare.ok || !coved.ok) return
          const a = measure(bare.value, level)
          const b = measure(coved.value, level)
          expect(isFiniteThroughout(b)).toBe(true)
          expect(b.volumeM3).toBeLessThanOrEqual(a.volumeM3 + 1e-9)
          expect(b.waterSurfaceM2).toBeLessThanOrEqual(a.waterSurfaceM2 + 1e-9)
          const mesh = meshOf(coved.value, { chordM: 0.02 })
          if (!mesh.ok) throw new Error(mesh.problem.code)
          expect(watertight(mesh.value, 0.15)).toBe(true)
        },
      ),
      { seed: SEED, numRuns: 25 },
    )
  })
})
