import { describe, expect, test } from 'vitest'
import { areaOf, type Path, pathLength, pointOn } from '../../src/basin/index.ts'
import { applyCommand, type Command, command, isSmooth, type Spec } from '../../src/document/index.ts'
import { bodyOf as body, main, outline, RECTANGLE, richSpec, STADIUM, size, stations } from './samples.ts'

describe('editing an outline', () => {
  const run = (spec: Spec, c: Command) => {
    const result = applyCommand(spec, c)
    if (!result.ok) throw new Error(result.problem.code)
    return result.value
  }

  test('removing an inserted point gives the curve back', () => {
    for (let segment = 0; segment < 8; segment++) {
      const inserted = run(richSpec, command('insertPoint', { ...main, segment, t: 0.37 }))
      const back = body(run(inserted, command('removePoint', { ...main, node: segment + 1 }))).outline
      const before = body(richSpec).outline
      expect(areaOf(back)).toBeCloseTo(areaOf(before), 9)
      for (const t of [0.2, 0.5, 0.9]) {
        const [p, q] = [pointOn(back, segment, t), pointOn(before, segment, t)]
        expect(Math.hypot(p[0] - q[0], p[1] - q[1])).toBeLessThan(1e-9)
      }
    }
  })

  test('removing an inserted point gives the arc and the line back', () => {
    const at = { bodyId: 'stadium', ring: outline } as const
    for (const segment of [0, 1, 3]) {
      const inserted = run(richSpec, command('insertPoint', { ...at, segment, t: 0.3 }))
      expect(pathLength(body(inserted, 'stadium').outline)).toBeCloseTo(pathLength(STADIUM), 12)
      const back = body(run(inserted, command('removePoint', { ...at, node: segment + 1 })), 'stadium').outline
      expect(pathLength(back)).toBeCloseTo(pathLength(STADIUM), 10)
      expect(back.segments.length).toBe(4)
    }
  })

  test('the first point can go, and the fewest points stay', () => {
    const at = { bodyId: 'sketch', ring: outline } as const
    const three = run(richSpec, command('removePoint', { ...at, node: 0 }))
    expect(body(three, 'sketch').outline).toEqual({
      start: [9, 0],
      segments: [{ to: [9, 4] }, { to: [0, 4] }, { to: [9, 0] }],
    })
    const refused = applyCommand(three, command('removePoint', { ...at, node: 1 }))
    expect(refused.ok ? '' : refused.problem.code).toBe('too-few-points')
  })

  test('a typed length is exact on a line, an arc and a curve', () => {
    for (const [bodyId, segment] of [
      ['sketch', 1],
      ['stadium', 1],
      ['main', 2],
      ['main', 7],
    ] as const) {
      const after = body(
        run(richSpec, command('setSegmentLength', { bodyId, ring: outline, segment, lengthM: 5.25 })),
        bodyId,
      ).outline
      const side = after.segments[segment]!
      const from = after.segments[segment - 1]!.to
      const chord = Math.hypot(side.to[0] - from[0], side.to[1] - from[1])
      expect(pathLength({ start: from, segments: [side] }) - chord).toBeCloseTo(5.25, 9)
    }
  })

  test('one overall length is exact on arcs too, and the form hardly changes', () => {
    const after = body(
      run(richSpec, command('stretchOutline', { bodyId: 'stadium', axis: 'x', lengthM: 12.34 })),
      'stadium',
    ).outline
    expect(size(after)[0]).toBeCloseTo(12.34, 12)
    // The area goes with the stretch: arcs became curves that follow them within 5e-6 of the radius.
    expect(areaOf(after) / ((areaOf(STADIUM) * 12.34) / 10)).toBeCloseTo(1, 5)
  })

  test('the first known length of a sketch scales it alike both ways, the second only its own', () => {
    const once = run(richSpec, command('stretchOutline', { bodyId: 'sketch', axis: 'x', lengthM: 18 }))
    expect(size(body(once, 'sketch').outline)).toEqual([18, 8])
    expect(body(once, 'sketch').sketch).toEqual({ scaleSigma: 0.1, knownLengthM: 18 })
    const twice = run(once, command('stretchOutline', { bodyId: 'sketch', axis: 'y', lengthM: 7 }))
    expect(size(body(twice, 'sketch').outline)).toEqual([18, 7])
    expect(body(twice, 'sketch').sketch).toBeUndefined()
  })

  test('a smooth point beside a line stays smooth when the line turns', () => {
    const arch: Path = {
      start: [0, 0],
      segments: [{ to: [8, 0] }, { to: [8, 4], c1: [10, 0], c2: [10, 4] }, { to: [0, 4] }, { to: [0, 0] }],
    }
    const spec = run(richSpec, command('setOutline', { bodyId: 'sketch', outline: arch }))
    const at = { bodyId: 'sketch', ring: outline } as const
    const moved = body(run(spec, command('movePoint', { ...at, node: 0, to: [0, -1] })), 'sketch').outline
    expect([0, 1, 2, 3].map((i) => isSmooth(moved, i))).toEqual([false, true, true, false])
    const slid = body(
      run(spec, command('moveHandle', { ...at, segment: 1, which: 'c1', to: [9, 3] })),
      'sketch',
    ).outline
    expect(slid.segments[1]!.c1).toEqual([9, 0])
    const free = body(
      run(spec, command('moveHandle', { ...at, segment: 1, which: 'c1', to: [9, 3], keepsSmooth: false })),
      'sketch',
    ).outline
    expect(free.segments[1]!.c1).toEqual([9, 3])
  })

  test('a side becomes an arc near its old course, outward from a line, and a half circle a curve', () => {
    const at = { bodyId: 'sketch', ring: outline } as const
    const arc = body(run(richSpec, command('setSegmentKind', { ...at, segment: 0, kind: 'arc' })), 'sketch').outline
    expect(arc.segments[0]!.bulge).toBeGreaterThan(0)
    expect(areaOf(arc)).toBeGreaterThan(areaOf(RECTANGLE))
    const half = { bodyId: 'stadium', ring: outline } as const
    const curve = run(richSpec, command('setSegmentKind', { ...half, segment: 1, kind: 'curve' }))
    expect(pointOn(body(curve, 'stadium').outline, 1, 0.5)).toEqual([expect.closeTo(5, 12), expect.closeTo(0, 12)])
    const again = body(run(curve, command('setSegmentKind', { ...half, segment: 1, kind: 'arc' })), 'stadium').outline
    expect(again.segments[1]!.bulge).toBeCloseTo(1, 12)
  })

  test('a corner made smooth is smooth, on lines and on curves', () => {
    const rect = body(
      run(richSpec, command('setPointKind', { bodyId: 'sketch', ring: outline, node: 1, kind: 'smooth' })),
      'sketch',
    ).outline
    expect(isSmooth(rect, 1)).toBe(true)
    const there = run(richSpec, command('setPointKind', { ...main, node: 0, kind: 'corner' }))
    expect(isSmooth(body(there).outline, 0)).toBe(false)
    expect(isSmooth(body(run(there, command('setPointKind', { ...main, node: 0, kind: 'smooth' }))).outline, 0)).toBe(
      true,
    )
  })

  test('a station can’t be dragged past its neighbours, nor two share a place', () => {
    const dragged = run(richSpec, command('moveStation', { bodyId: 'main', station: 2, sM: -50, depthM: 1.4 }))
    expect(stations(dragged)[2]).toEqual([3.01, 1.4])
    const refused = applyCommand(richSpec, command('addStation', { bodyId: 'main', sM: 3.004 }))
    expect(refused.ok ? '' : refused.problem.code).toBe('stations-too-close')
  })

  test('a floor that is only stretched doesn’t count as measured; a depth that is said does', () => {
    const { floor } = body(richSpec, 'sketch')
    if (floor.kind !== 'profile') throw new Error('a profile was expected')
    const moved = run(
      richSpec,
      command('setBody', { bodyId: 'sketch', body: { floor: { ...floor, axis: { from: [0, 1], to: [9, 1] } } } }),
    )
    expect(body(moved, 'sketch').depthsAssumed).toBe(true)
    const said = run(richSpec, command('moveStation', { bodyId: 'sketch', station: 0, sM: 0, depthM: 0.9 }))
    expect(body(said, 'sketch').depthsAssumed).toEqual(floor.stations.slice(1).map((_, i) => i + 1))
  })

  test('keys that this version doesn’t know outlive every edit', () => {
    const extra = JSON.parse(JSON.stringify(richSpec)) as { [key: string]: unknown }
    extra['later'] = { a: 1 }
    const bodies = extra['bodies'] as { outline: { [key: string]: unknown }; [key: string]: unknown }[]
    bodies[0]!['colour'] = 'pale'
    bodies[0]!.outline['drawnBy'] = 'hand'
    const spec = run(richSpec, { id: 'replaceDocument', args: { spec: extra as unknown as Spec } })
    for (const c of [
      command('stretchOutline', { bodyId: 'main', axis: 'x', lengthM: 9 }),
      command('movePoint', { ...main, node: 1, to: [2, 0.5] }),
      command('insertPoint', { ...main, segment: 1, t: 0.5 }),
    ]) {
      const after = run(spec, c)
      expect(after).toMatchObject({
        later: { a: 1 },
        bodies: [{ colour: 'pale', outline: { drawnBy: 'hand' } }, ...richSpec.bodies.slice(1).map(() => ({}))],
      })
    }
  })
})
