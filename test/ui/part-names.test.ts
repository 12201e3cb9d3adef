import { describe, expect, test } from 'vitest'
import { deriveProblems } from '../../src/derive/index.ts'
import { type Body, demoSpec, type Spec } from '../../src/document/index.ts'
import { FEATURES } from '../../src/features/index.ts'
import { namedInSpec, namedProblem } from '../../src/ui/part-names.ts'

const body = demoSpec.bodies[0]
if (!body) throw new Error('the example has no body')

describe('a complaint about one of several parts', () => {
  test('says which step stands outside the pool', () => {
    const steps = FEATURES.get('roundSteps')?.defaults({ at: [500, 500], toward: [1, 0], sizeM: 2 })
    if (!steps) throw new Error('no round steps')
    const features = [...body.features, steps]
    const spec: Spec = { ...demoSpec, bodies: [{ ...body, features }] }
    const problems = deriveProblems(spec).map((problem) => namedInSpec(problem, spec))
    expect(problems.map(({ what }) => what)).toContain(
      `Round steps ${features.length}: no part of this lies inside the water’s outline.`,
    )
    expect(problems[0]?.path).toMatch(/^bodies\[0\]\.features/)
  })

  test('says which sounding lies outside; of what there is only one, nothing is added', () => {
    const floor: Body['floor'] = {
      kind: 'soundings',
      points: [
        [3, 2, 1.2],
        [500, 2, 1.5],
      ],
      edgeDepthM: 1,
    }
    const spec: Spec = { ...demoSpec, bodies: [{ ...body, features: [], floor }] }
    expect(deriveProblems(spec).map((problem) => namedInSpec(problem, spec).what)).toEqual([
      'Sounding 2: this sounding lies outside the outline or on an island.',
    ])
    const whole = { code: 'crosses-itself', path: 'outline', what: 'The line crosses.', why: '', hint: '' }
    expect(namedProblem(whole, body)).toBe(whole)
  })
})
