import { describe, expect, test } from 'vitest'
import { flatten, type Path } from '../../../src/basin/index.ts'
import { isInside } from '../../../src/document/index.ts'
import { dragInFrame, footprintFrom, wallFrameAt } from '../../../src/ui/plan/footprint.ts'
import { nodesOf } from '../../../src/ui/plan/nodes.ts'

const BOX: Path = { start: [0, 0], segments: [{ to: [8, 0] }, { to: [8, 4] }, { to: [0, 4] }] }
const REVERSED: Path = { start: [0, 0], segments: [{ to: [0, 4] }, { to: [8, 4] }, { to: [8, 0] }] }
const CIRCLE: Path = {
  start: [3, 0],
  segments: [
    { to: [-3, 0], bulge: 1 },
    { to: [3, 0], bulge: 1 },
  ],
}

describe('footprints against the wall', () => {
  test('the wall’s frame points into the water, whichever way the outline runs', () => {
    for (const outline of [BOX, REVERSED]) {
      const frame = wallFrameAt(outline, [4, 0.2])
      expect(frame.at).toEqual([4, 0])
      expect(frame.inward[1]).toBeCloseTo(1, 9)
    }
  })

  test('a drag straight inward gives the usual width, centred where it began', () => {
    const frame = wallFrameAt(BOX, [4, 0])
    const { alongM, inwardM } = dragInFrame(frame, [4.1, 1.2])
    const made = footprintFrom(BOX, frame, alongM, inwardM)
    expect(made.runM).toBeCloseTo(1.2, 9)
    expect(made.widthM).toBeCloseTo(1.8, 9)
    const xs = nodesOf(made.path).map(([x]) => x)
    expect(Math.min(...xs) + Math.max(...xs)).toBeCloseTo(8, 6)
    expect(made.axis.from).toEqual([4, 0])
  })

  test('a drag along the wall gives its own width', () => {
    const frame = wallFrameAt(BOX, [2, 0])
    const { alongM, inwardM } = dragInFrame(frame, [5, 1])
    expect(footprintFrom(BOX, frame, alongM, inwardM).widthM).toBeCloseTo(3, 6)
  })

  test('a drag out of the water goes nowhere', () => {
    expect(dragInFrame(wallFrameAt(BOX, [4, 0]), [4, -2]).inwardM).toBe(0)
  })

  test('behind a round wall it reaches out to where the wall bends away', () => {
    const frame = wallFrameAt(CIRCLE, [0, -3])
    const made = footprintFrom(CIRCLE, frame, 2, 1)
    const ring = flatten(CIRCLE, 0.005)
    const corners = nodesOf(made.path)
    // The two corners behind the wall are on land, so that the outline and not the rectangle ends the footprint.
    expect(corners.filter((p) => !isInside(ring, p)).length).toBeGreaterThanOrEqual(2)
    const behind = Math.min(...corners.map((p) => dragInFrameSigned(frame, p)))
    expect(behind).toBeLessThanOrEqual(0)
  })
})

function dragInFrameSigned(frame: ReturnType<typeof wallFrameAt>, [x, y]: readonly [number, number]): number {
  return (x - frame.at[0]) * frame.inward[0] + (y - frame.at[1]) * frame.inward[1]
}
