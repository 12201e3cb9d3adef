import { describe, expect, test } from 'vitest'
import type { Point } from '../../../src/basin/index.ts'
import { closed, isSmooth } from '../../../src/document/index.ts'
import { loopThrough } from '../../../src/ui/plan/loop-through.ts'
import { nodesOf } from '../../../src/ui/plan/nodes.ts'
import { canClose, draftAfter, EMPTY_DRAFT } from '../../../src/ui/plan/points-draft.ts'

const SQUARE: readonly Point[] = [
  [0, 0],
  [4, 0],
  [4, 4],
  [0, 4],
]

describe('placing points', () => {
  test('points are dropped, taken back, made corners; an outline closes from three on', () => {
    let draft = EMPTY_DRAFT
    for (const at of SQUARE.slice(0, 2)) draft = draftAfter(draft, { do: 'drop', at })
    expect(canClose(draft)).toBe(false)
    draft = draftAfter(draft, { do: 'drop', at: [4, 4] })
    expect(canClose(draft)).toBe(true)
    expect(draftAfter(draft, { do: 'remove-last' }).points).toHaveLength(2)
    const toggled = draftAfter(draft, { do: 'toggle' })
    expect(toggled.points.map((p) => p.isSmooth)).toEqual([true, true, false])
    expect(draftAfter(toggled, { do: 'drop', at: [0, 4] }).points.at(-1)?.isSmooth).toBe(false)
    expect(draftAfter(draft, { do: 'start-over' }).points).toEqual([])
  })

  test('a second point on the same spot is not dropped', () => {
    const once = draftAfter(EMPTY_DRAFT, { do: 'drop', at: [1, 1] })
    expect(draftAfter(once, { do: 'drop', at: [1, 1] })).toBe(once)
  })
})

describe('the loop through points', () => {
  test('corners alone make straight sides', () => {
    const path = loopThrough(SQUARE.map((at) => ({ at, isSmooth: false })))
    expect(path?.segments.every((s) => s.c1 === undefined && s.bulge === undefined)).toBe(true)
    expect(path && nodesOf(path)).toEqual(SQUARE)
  })

  test('smooth points alone make a loop without a corner through all of them', () => {
    const path = loopThrough(SQUARE.map((at) => ({ at, isSmooth: true })))
    expect(path && nodesOf(path)).toEqual(SQUARE)
    for (let i = 0; path && i < 4; i++) expect(isSmooth(closed(path), i)).toBe(true)
  })

  test('mixed points are smooth where they are smooth and corners elsewhere', () => {
    const path = loopThrough(SQUARE.map((at, i) => ({ at, isSmooth: i % 2 === 0 })))
    if (!path) throw new Error('a loop was expected')
    const nodes = nodesOf(path)
    expect(nodes).toHaveLength(4)
    nodes.forEach((at, i) => {
      const wanted = SQUARE.findIndex((p) => p[0] === at[0] && p[1] === at[1]) % 2 === 0
      if (wanted) expect(isSmooth(closed(path), i)).toBe(true)
    })
  })

  test('two points are no outline', () => {
    expect(loopThrough(SQUARE.slice(0, 2).map((at) => ({ at, isSmooth: true })))).toBeUndefined()
  })
})
