import { describe, expect, test } from 'vitest'
import type { Path } from '../../../src/basin/index.ts'
import { levelFloor, nextStation, slopingFloor } from '../../../src/ui/ledger/basin/floors.ts'
import { CARES, careOf } from '../../../src/ui/ledger/basin/measured.ts'
import { nodesOf } from '../../../src/ui/ledger/basin/ring.ts'

const open: Path = {
  start: [0, 0],
  segments: [{ to: [4, 0] }, { to: [4, 2], bulge: 0.5 }, { to: [0, 2], c1: [3, 3], c2: [1, 3] }],
}
const closed: Path = { ...open, segments: [...open.segments, { to: [0, 0] }] }

describe('the points of a ring', () => {
  test('each is listed once, whether or not the path comes back to its start', () => {
    expect(nodesOf(closed).map((node) => node.at)).toEqual([
      [0, 0],
      [4, 0],
      [4, 2],
      [0, 2],
    ])
    expect(nodesOf(open)).toEqual(nodesOf(closed))
  })

  test('what runs on to the next point is named', () => {
    expect(nodesOf(closed).map((node) => node.next)).toEqual(['line', 'arc', 'curve', 'line'])
  })
})

describe('a floor of another kind', () => {
  test('a flat floor made of a profile lies half way between its ends', () => {
    const floor = levelFloor({
      kind: 'profile',
      axis: { from: [0, 0], to: [8, 0] },
      stations: [
        [0, 1],
        [8, 2],
      ],
    })
    expect(floor).toEqual({ kind: 'flat', depthM: 1.5 })
  })

  test('a profile made of a flat floor runs along the longer side and changes no depth', () => {
    const floor = slopingFloor({ kind: 'flat', depthM: 1.4 }, open)
    expect(floor.kind).toBe('profile')
    if (floor.kind !== 'profile') return
    expect(floor.stations.map(([, depthM]) => depthM)).toEqual([1.4, 1.4])
    expect(Math.abs(floor.axis.to[0] - floor.axis.from[0])).toBeGreaterThan(
      Math.abs(floor.axis.to[1] - floor.axis.from[1]),
    )
  })

  test('a new station goes into the longest stretch and changes no depth there', () => {
    expect(
      nextStation([
        [0, 1],
        [2, 1],
        [8, 2],
      ]),
    ).toEqual([5, 1.5])
    expect(nextStation([[3, 1.2]])).toEqual([4, 1.2])
  })
})

describe('how well it was measured', () => {
  test('every row is told from the others by its tolerance, coarser down the list', () => {
    for (const care of CARES) expect(careOf({ ...care.tolerance })).toBe(care)
    const plans = CARES.map((care) => care.tolerance.planM)
    expect([...plans].sort((a, b) => a - b)).toEqual(plans)
  })

  test('a typed tolerance is no row', () => {
    expect(careOf({ planM: 0.021, depthM: 0.02 })).toBeUndefined()
  })
})
