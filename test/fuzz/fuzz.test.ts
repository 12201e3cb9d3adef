import { describe, expect, it } from 'vitest'
import { HANG_MS } from './examine.ts'
import { CHUNK, runChunk } from './worker.ts'

const SEED = 20261124
const DOCUMENTS = 2000
/**
 * Beside other tests on few cores even time of the processor is longer: four times what npm run fuzz holds each document to.
 * The slowest of these, features over a triangulated floor under a leaning wall, takes some 3 s.
 */
const PATIENCE_MS = 4 * HANG_MS

describe(`random documents, seed ${SEED}`, () => {
  const reached = new Set<string>()

  for (let chunk = 0; chunk < DOCUMENTS / CHUNK; chunk++)
    it(`${CHUNK} documents of seed ${SEED + chunk} give figures that hang together or a problem: no throw, no hang, no number that is none`, () => {
      const details = runChunk(
        SEED + chunk,
        CHUNK,
        (labels) => {
          for (const label of labels) reached.add(label)
        },
        PATIENCE_MS,
      )
      expect(
        details.failed,
        details.failed ? `${String(details.errorInstance)}\n${JSON.stringify(details.counterexample)}` : '',
      ).toBe(false)
    })

  it('come to every kind of floor, wall and feature that there is, and to the commonest problems', () => {
    for (const label of ['floor: flat', 'floor: profile', 'floor: contours', 'floor: soundings', 'floor: dish'])
      expect(reached).toContain(label)
    for (const label of ['wall: vertical', 'wall: cove', 'wall: battered']) expect(reached).toContain(label)
    for (const kind of ['shelf', 'bench', 'ramp', 'steps', 'roundSteps']) expect(reached).toContain(`feature: ${kind}`)
    for (const code of [
      'measured',
      'crosses-itself',
      'doubles-back',
      'island-meets-outline',
      'no-water',
      'not-a-number',
    ])
      expect(reached).toContain(`basin: ${code}`)
    for (const label of [
      'measured flat under vertical',
      'measured profile under cove',
      'measured with steps',
      'mesh: made',
    ])
      expect(reached).toContain(label)
  })
})
