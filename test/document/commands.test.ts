import { describe, expect, test } from 'vitest'
import { applyCommand, COMMANDS, type Command, type CommandId, command } from '../../src/document/index.ts'
import { commandFiveWays } from '../support/command-five-ways.ts'
import { SAMPLES } from './command-samples.ts'
import { bodyOf, main, richSpec } from './samples.ts'

const at = '2026-05-03T09:00:00-07:00'
const ids = Object.keys(COMMANDS) as CommandId[]

describe('every edit', () => {
  test.each(ids)('%s: result, undo, redo, JSON and link, input untouched', (id) => {
    expect(COMMANDS[id].id).toBe(id)
    expect(COMMANDS[id].label.length).toBeGreaterThan(3)
    const sample = SAMPLES[id]
    expect(sample, `${id} has no sample`).toBeDefined()
    commandFiveWays(richSpec, { id, args: sample[0] } as Command, sample[1])
  })

  test.each(ids)('%s: what it doesn’t touch is the same object', (id) => {
    const result = applyCommand(richSpec, { id, args: SAMPLES[id][0] } as Command)
    if (!result.ok || id === 'replaceDocument') return
    const isOfSystem = 'systemId' in SAMPLES[id][0]
    if (isOfSystem) expect(result.value.bodies).toBe(richSpec.bodies)
    else expect(result.value.systems).toBe(richSpec.systems)
  })

  test.each(ids)('%s: bad arguments are a problem, never a throw', (id) => {
    const args = SAMPLES[id][0] as { readonly [key: string]: unknown }
    const bad: unknown[] = [undefined, null, 7, 'x', [], { ...args, surprise: 1 }]
    for (const key of Object.keys(args)) {
      for (const value of [null, Number.NaN, { a: 1 }, [1], -1e12, 'nobody', Number.POSITIVE_INFINITY])
        bad.push({ ...args, [key]: value })
    }
    let refused = 0
    for (const wrong of bad) {
      const result = applyCommand(richSpec, { id, args: wrong } as unknown as Command)
      if (result.ok) continue
      refused++
      expect(result.problem.code).not.toBe('')
      expect(`${result.problem.what}${result.problem.why}${result.problem.hint}`).not.toMatch(/\{|undefined/)
    }
    expect(refused).toBeGreaterThan(id === 'setName' ? 7 : 8)
  })

  test('an id that isn’t there is a problem', () => {
    for (const wrong of ['nothing', 'constructor', '__proto__', 'toString']) {
      const result = applyCommand(richSpec, { id: wrong, args: {} } as unknown as Command)
      expect(result.ok ? '' : result.problem.code).toBe('unknown-edit')
    }
    const codes = [
      command('setLevel', { bodyId: 'nobody', levelM: 0 }),
      command('setPlumbing', { systemId: 'none', plumbingM3: 1 }),
      command('movePoint', { bodyId: 'main', ring: { of: 'island', index: 4 }, node: 0, to: [0, 0] }),
      command('movePoint', { bodyId: 'main', ring: { of: 'feature', index: 1 }, node: 0, to: [0, 0] }),
      command('movePoint', { ...main, node: 99, to: [0, 0] }),
      command('moveStation', { bodyId: 'stadium', station: 0, sM: 0, depthM: 1 }),
      command('setBody', { bodyId: 'main', body: { system: 'elsewhere' } }),
      command('addBody', { body: bodyOf(richSpec) }),
      command('scaleSketch', { bodyId: 'main', lengthM: 3 }),
      command('logDose', { systemId: 'pool', id: 'd1', at, product: 'salt', amountG: 1 }),
    ].map((c) => {
      const result = applyCommand(richSpec, c)
      return result.ok ? 'ok' : result.problem.code
    })
    expect(codes).toEqual([
      'no-such-body',
      'no-such-system-here',
      'no-such-part',
      'no-outline-of-points',
      'no-such-part',
      'not-a-profile',
      'no-such-system',
      'same-id',
      'not-a-sketch',
      'same-id',
    ])
  })
})
