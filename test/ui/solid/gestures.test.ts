import { describe, expect, test } from 'vitest'
import { draggedAside, stepForKey, viewForKey } from '../../../src/ui/solid/gestures.ts'
import { frameOf, HOME, type View } from '../../../src/ui/solid/turntable.ts'

const above: View = { ...HOME, azimuth: 0, tilt: Math.PI / 2 }

describe('keys and drags', () => {
  test('arrows turn and tilt, plus and minus zoom, other keys are left alone', () => {
    const left = viewForKey('ArrowLeft', HOME)!
    expect(left.azimuth).not.toBe(HOME.azimuth)
    expect(viewForKey('ArrowRight', left)!.azimuth).toBeCloseTo(HOME.azimuth, 12)
    expect(viewForKey('ArrowUp', HOME)!.tilt).toBeGreaterThan(HOME.tilt)
    expect(viewForKey('ArrowDown', HOME)!.tilt).toBeLessThan(HOME.tilt)
    expect(viewForKey('+', HOME)!.zoom).toBeGreaterThan(1)
    expect(viewForKey('-', HOME)!.zoom).toBeLessThan(1)
    expect(viewForKey('a', HOME)).toBeUndefined()
  })

  test('the lead moves on the plan as it is seen: right is right in the picture, up is away', () => {
    for (const azimuth of [0, 0.7, -2.1, 3]) {
      const view = { ...HOME, azimuth }
      const { right, up } = frameOf(view)
      const [rx, ry] = stepForKey('ArrowRight', view, 0.5)!
      expect(rx * right[0] + ry * right[1]).toBeCloseTo(0.5, 12)
      const [ux, uy] = stepForKey('ArrowUp', view, 0.5)!
      expect(ux * right[0] + uy * right[1]).toBeCloseTo(0, 12)
      expect(ux * up[0] + uy * up[1]).toBeGreaterThan(0)
      const [dx, dy] = stepForKey('ArrowDown', view, 0.5)!
      expect([dx + ux, dy + uy].map(Math.abs)).toEqual([0, 0])
    }
    expect(stepForKey('Home', HOME, 1)).toBeUndefined()
  })

  test('a drag takes the ground along with the hand', () => {
    const right = draggedAside(above, 100, 0, 0.01, 50)
    expect(right.panX).toBeCloseTo(-1, 12)
    expect(right.panY).toBeCloseTo(0, 12)
    // Down the screen brings what lies further up, so the middle moves away.
    const down = draggedAside(above, 0, 100, 0.01, 50)
    expect(down.panX).toBeCloseTo(0, 12)
    expect(down.panY).toBeCloseTo(1, 12)
  })
})
