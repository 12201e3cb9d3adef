import { describe, expect, it } from 'vitest'
import { FEATURES } from '../../src/features/index.ts'
import { REACHED } from './reached.ts'
import { runChunk } from './worker.ts'

const SEED = 20261124
const DOCUMENTS = 2000
/** Documents of one test: few, so that each is done in time beside other tests. */
const CHUNK = 200
const CHUNK_MS = 180_000
/** Times that a floor, a wall, a feature and islands or none come together. */
const LEAST_OF_ALL = 8
/** Pictures of ordinary pools that may disagree with the volume. */
const MOST_DISAGREEING = 0

describe(`random documents, seed ${SEED}`, () => {
  const counts = new Map<string, number>()

  for (let chunk = 0; chunk < DOCUMENTS / CHUNK; chunk++)
    it(
      `${CHUNK} documents of seed ${SEED + chunk} give figures that hang together or a problem: no throw, no hang, no number that is none`,
      () => {
        const onDocument = (labels: readonly string[]) => {
          for (const label of labels) counts.set(label, (counts.get(label) ?? 0) + 1)
        }
        const details = runChunk({ seed: SEED + chunk, documents: CHUNK, leaning: 1, onDocument })
        expect(
          details.failed,
          details.failed ? `${String(details.errorInstance)}\n${JSON.stringify(details.counterexample)}` : '',
        ).toBe(false)
      },
      CHUNK_MS,
    )

  it('are measured in half of all cases, and each floor under each wall with each feature at least 20 times', () => {
    const times = (label: string): number => counts.get(label) ?? 0
    expect([...counts].reduce((sum, [label, n]) => sum + (label.startsWith('document: ') ? n : 0), 0)).toBe(DOCUMENTS)
    expect(times('basin: measured')).toBeGreaterThan(DOCUMENTS / 2)
    const seldom: string[] = []
    const expectAtLeast = (least: number, label: string): void => {
      if (times(label) < least) seldom.push(`${label}: ${times(label)}`)
    }
    for (const floor of ['flat', 'profile', 'contours', 'soundings', 'dish'])
      for (const wall of ['vertical', 'cove', 'battered']) {
        const under = `measured ${floor} under ${wall}`
        for (const beside of ['beside islands', 'without islands']) expectAtLeast(20, `${under} ${beside}`)
        for (const { id } of FEATURES.rows) {
          expectAtLeast(20, `${under} with ${id}`)
          for (const beside of ['beside islands', 'without islands'])
            expectAtLeast(LEAST_OF_ALL, `${under} with ${id} ${beside}`)
        }
      }
    expect(seldom).toEqual([])
  })

  it('come to every complaint that a document can come to', () => {
    for (const [code, isReached] of Object.entries(REACHED))
      expect([code, counts.has(`basin: ${code}`)]).toEqual([code, isReached])
  })

  it('are drawn and asked back, and no picture of an ordinary pool disagrees with its volume', () => {
    expect(counts.get('ordinary mesh: made')).toBeGreaterThan(40)
    expect(counts.get('asked for derivatives, breaks and levels')).toBeGreaterThan(40)
    expect(counts.get('ordinary mesh: mesh-disagrees') ?? 0).toBeLessThanOrEqual(MOST_DISAGREEING)
  })
})
