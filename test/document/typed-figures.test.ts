import { describe, expect, test } from 'vitest'
import { applyCommand, type Command, demoSpec } from '../../src/document/index.ts'

const bodyId = demoSpec.bodies[0]!.id
function refusal(command: Command): string {
  const result = applyCommand(demoSpec, command)
  return result.ok ? 'taken' : `${result.problem.code}: ${result.problem.what} ${result.problem.hint}`
}

describe('a typed figure that an edit refuses', () => {
  test('is told without the document’s own names, with its limit and unit', () => {
    const bench = { kind: 'bench', along: { fromSegment: 0, toSegment: 0 }, widthM: -0.3, depthM: 0.5 } as const
    expect(refusal({ id: 'addFeature', args: { bodyId, feature: bench } })).toBe(
      'out-of-range: This figure is too small. Not less than 0 m.',
    )
    expect(refusal({ id: 'setEdgeDepth', args: { bodyId, depthM: 2000 } })).toBe(
      'out-of-range: This figure is too large. Not more than 1000 m.',
    )
    expect(refusal({ id: 'stretchOutline', args: { bodyId, axis: 'x', lengthM: 0 } })).toBe(
      'out-of-range: This figure is too small. More than 0 m.',
    )
    expect(refusal({ id: 'setWall', args: { bodyId, wall: { kind: 'battered', run: -1 } } })).toBe(
      'out-of-range: This figure is too small. Not less than 0.',
    )
  })
})
