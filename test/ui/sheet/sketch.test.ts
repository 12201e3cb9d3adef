import { expect, test } from 'vitest'
import { areaOf, type Path } from '../../../src/basin/index.ts'
import { deriveBody } from '../../../src/derive/index.ts'
import { applyCommand, type Body, type Command, demoSpec, type Spec } from '../../../src/document/index.ts'
import { edits } from '../../../src/ui/sheet/edits.ts'

const OUTLINE: Path = {
  start: [1, 1],
  segments: [{ to: [9, 1] }, { to: [9, 5] }, { to: [1, 5] }, { to: [1, 1] }],
}

function after(spec: Spec, command: Command): Spec {
  const result = applyCommand(spec, command)
  if (!result.ok) throw new Error(result.problem.what)
  return result.value
}
const blank: Spec = { ...demoSpec, bodies: [] }
const drawOn = (spec: Spec, units: 'us' | 'metric') =>
  edits.draw(OUTLINE, { spec, settings: { units, theme: 'system' } })
const bodyOf = (spec: Spec): Body => spec.bodies[0] as Body
const relative = (spec: Spec) => {
  const { sigmaM3, measures } = deriveBody(bodyOf(spec))
  return measures.ok ? sigmaM3 / measures.value.volumeM3 : Number.NaN
}

test('what was laid out by hand stays a sketch, as unsure as one, until its size is said: a depth says nothing of it', () => {
  const drawn = after(blank, drawOn(blank, 'us'))
  const bodyId = bodyOf(drawn).id
  const shallow = after(drawn, { id: 'moveStation', args: { bodyId, station: 0, sM: 0, depthM: 1.2 } })
  expect(bodyOf(shallow).depthsAssumed).toEqual([1])
  const deep = after(shallow, { id: 'moveStation', args: { bodyId, station: 1, sM: 8, depthM: 1.8 } })
  expect(bodyOf(deep).depthsAssumed).toBe(undefined)
  expect(relative(deep)).toBeGreaterThan(0.5)
  const half = after(deep, edits.scaleSketch(bodyOf(deep).id, { lengthM: 8 }))
  expect(relative(half)).toBeGreaterThan(0.15)
  expect(relative(half)).toBeLessThan(0.3)
  const known = after(half, edits.scaleSketch(bodyOf(deep).id, { widthM: 4 }))
  expect(bodyOf(known).sketch).toBe(undefined)
  expect(relative(known)).toBeLessThan(0.1)
})

test('drawn to scale: it is a sketch no longer, and not a point of it moves', () => {
  const drawn = after(blank, drawOn(blank, 'metric'))
  const taken = after(drawn, edits.takeAsDrawn(bodyOf(drawn)))
  expect(bodyOf(taken).sketch).toBe(undefined)
  expect(bodyOf(taken).outline).toEqual(bodyOf(drawn).outline)
  expect(areaOf(bodyOf(taken).outline)).toBe(areaOf(OUTLINE))
})
