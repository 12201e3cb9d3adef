import { describe, expect, test } from 'vitest'
import { areaOf, boundsOf, type Path, pathLength, pointOn } from '../../src/basin/index.ts'
import {
  applyCommand,
  COMMANDS,
  type Command,
  type CommandArgs,
  type CommandId,
  command,
  demoSpec,
  isSmooth,
  kindOf,
  type Spec,
} from '../../src/document/index.ts'
import { commandFiveWays } from '../support/command-five-ways.ts'
import { bodyOf, ISLAND, RECTANGLE, richSpec, STADIUM } from './samples.ts'

type Sample<Id extends CommandId> = readonly [args: CommandArgs<Id>, check: (after: Spec, before: Spec) => void]

const outline = { of: 'outline' } as const
const main = { bodyId: 'main', ring: outline } as const
const at = '2026-05-03T09:00:00-07:00'
const set = { at, method: 'strip', values: { pH: 7.5 } } as const
const body = (spec: Spec, id?: string) => bodyOf(spec, id)
const system = (spec: Spec) => spec.systems[0]!
const stations = (spec: Spec) => {
  const { floor } = body(spec)
  return floor.kind === 'profile' ? floor.stations : []
}
const size = (path: Path) => {
  const box = boundsOf(path)
  return [box.maxX - box.minX, box.maxY - box.minY] as const
}

/** One sample an edit: an edit without one doesn't compile. */
const SAMPLES: { readonly [Id in CommandId]: Sample<Id> } = {
  setName: [{ name: 'Reed Court' }, (after) => expect(after.name).toBe('Reed Court')],
  addBody: [
    { body: { ...bodyOf(richSpec, 'stadium'), id: 'spa' } },
    (after) => expect(after.bodies.map((b) => b.id)).toEqual(['main', 'sketch', 'stadium', 'spa']),
  ],
  setBody: [
    { bodyId: 'main', body: { levelM: -0.1, tileLineM: 0.08, depthsMeasuredFrom: undefined } },
    (after, before) => {
      expect(body(after)).toMatchObject({ levelM: -0.1, tileLineM: 0.08, outline: body(before).outline })
      expect('depthsMeasuredFrom' in body(after)).toBe(false)
    },
  ],
  removeBody: [{ bodyId: 'sketch' }, (after) => expect(after.bodies.map((b) => b.id)).toEqual(['main', 'stadium'])],
  drawOutline: [
    { outline: RECTANGLE, sketch: { scaleSigma: 0.25 } },
    (after) => {
      expect(body(after)).toMatchObject({
        id: 'main',
        islands: [],
        features: [],
        depthsAssumed: true,
        sketch: { scaleSigma: 0.25 },
      })
      expect(body(after).floor).toMatchObject({ kind: 'profile', axis: { from: [0, 2], to: [9, 2] } })
    },
  ],
  setOutline: [{ bodyId: 'main', outline: STADIUM }, (after) => expect(body(after).outline).toEqual(STADIUM)],
  movePoint: [
    { ...main, node: 2, to: [5.7, 0.4] },
    (after, before) => {
      expect(body(after).outline.segments[1]!.to).toEqual([5.7, 0.4])
      expect(isSmooth(body(after).outline, 2)).toBe(true)
      expect(body(after).outline.segments.slice(3)).toEqual(body(before).outline.segments.slice(3))
    },
  ],
  moveHandle: [
    { ...main, segment: 2, which: 'c1', to: [6.7, 0.5] },
    (after) => {
      expect(body(after).outline.segments[2]!.c1).toEqual([6.7, 0.5])
      expect(isSmooth(body(after).outline, 2)).toBe(true)
    },
  ],
  setSegmentKind: [
    { ...main, segment: 1, kind: 'line' },
    (after) => expect(kindOf(body(after).outline.segments[1]!)).toBe('line'),
  ],
  setPointKind: [{ ...main, node: 4, kind: 'corner' }, (after) => expect(isSmooth(body(after).outline, 4)).toBe(false)],
  setBulge: [
    { ...main, segment: 0, bulge: 0.3 },
    (after) => expect(body(after).outline.segments[0]).toEqual({ to: [2.6, 0.38], bulge: 0.3 }),
  ],
  setSegmentLength: [
    { bodyId: 'main', ring: { of: 'island', index: 0 }, segment: 0, lengthM: 2 },
    (after) => expect(body(after).islands[0]!.segments[0]!.to).toEqual([7.5, 2]),
  ],
  insertPoint: [
    { ...main, segment: 3, t: 0.4 },
    (after, before) => {
      expect(body(after).outline.segments.length).toBe(body(before).outline.segments.length + 1)
      expect(areaOf(body(after).outline)).toBeCloseTo(areaOf(body(before).outline), 12)
      expect(isSmooth(body(after).outline, 4)).toBe(true)
    },
  ],
  removePoint: [
    { ...main, node: 3 },
    (after, before) => expect(body(after).outline.segments.length).toBe(body(before).outline.segments.length - 1),
  ],
  addIsland: [{ bodyId: 'main', path: ISLAND }, (after) => expect(body(after).islands).toEqual([ISLAND, ISLAND])],
  removeIsland: [{ bodyId: 'main', index: 0 }, (after) => expect(body(after).islands).toEqual([])],
  stretchOutline: [
    { bodyId: 'main', axis: 'x', lengthM: 12 },
    (after, before) => {
      expect(size(body(after).outline)[0]).toBeCloseTo(12, 12)
      expect(size(body(after).outline)[1]).toBe(size(body(before).outline)[1])
      expect(stations(after)[4]![0]).toBeCloseTo((10.2 * 12) / 11, 12)
      expect(stations(after).map((s) => s[1])).toEqual(stations(before).map((s) => s[1]))
      expect(size(body(after).islands[0]!)[0]).toBeCloseTo(12 / 11, 12)
    },
  ],
  scaleSketch: [
    { bodyId: 'sketch', lengthM: 12, widthM: 6 },
    (after) => {
      expect(size(body(after, 'sketch').outline)).toEqual([12, 6])
      expect('sketch' in body(after, 'sketch')).toBe(false)
    },
  ],
  moveBasin: [
    { bodyId: 'main', dxM: 100, dyM: -3 },
    (after, before) => {
      expect(boundsOf(body(after).outline).minX).toBeCloseTo(100, 12)
      expect(stations(after)).toEqual(stations(before))
      expect(body(after).features[1]).toMatchObject({ centre: [100.8, -2.15] })
    },
  ],
  scaleUniform: [
    { bodyId: 'stadium', factor: 1.5 },
    (after) => {
      expect(size(body(after, 'stadium').outline)).toEqual([15, 6])
      expect(body(after, 'stadium').outline.segments[1]!.bulge).toBe(1)
    },
  ],
  setFloor: [
    { bodyId: 'sketch', floor: { kind: 'flat', depthM: 1.5 } },
    (after) => {
      expect(body(after, 'sketch').floor).toEqual({ kind: 'flat', depthM: 1.5 })
      expect('depthsAssumed' in body(after, 'sketch')).toBe(false)
    },
  ],
  moveStation: [
    { bodyId: 'main', station: 1, sM: 9, depthM: 1.3 },
    (after) => expect(stations(after)[1]).toEqual([5.4 - 0.01, 1.3]),
  ],
  addStation: [
    { bodyId: 'main', sM: 4.2 },
    (after) => expect(stations(after)[2]).toEqual([4.2, expect.closeTo(1.35, 12)]),
  ],
  removeStation: [{ bodyId: 'main', station: 0 }, (after) => expect(stations(after)[0]).toEqual([3, 1.2])],
  setAxis: [
    { bodyId: 'main', axis: { from: [0, 3], to: [22, 3] }, stretchesStations: true },
    (after) => expect(stations(after).map((s) => s[0])).toEqual([0, 6, 10.8, 15.2, 20.4]),
  ],
  moveAxis: [
    { bodyId: 'main', end: 'to', to: [11, 3.5] },
    (after) => expect(body(after).floor).toMatchObject({ axis: { from: [0, 2.75], to: [11, 3.5] } }),
  ],
  setWall: [
    { bodyId: 'main', wall: { kind: 'vertical' } },
    (after) => expect(body(after).wall).toEqual({ kind: 'vertical' }),
  ],
  addFeature: [
    { bodyId: 'stadium', feature: { kind: 'roundSteps', centre: [0, 2], treads: [[0.5, 0.3]] } },
    (after) => expect(body(after, 'stadium').features.length).toBe(1),
  ],
  setFeature: [
    { bodyId: 'main', index: 1, feature: { kind: 'roundSteps', centre: [1, 1], treads: [[0.7, 0.3]] } },
    (after) => expect(body(after).features[1]).toEqual({ kind: 'roundSteps', centre: [1, 1], treads: [[0.7, 0.3]] }),
  ],
  moveFeature: [
    { bodyId: 'main', index: 2, dxM: -0.5, dyM: 0.25 },
    (after) =>
      expect(body(after).features[2]).toMatchObject({
        path: { start: [9.3, 1.75] },
        axis: { from: [10.5, 2.75] },
        treads: [
          [0, 0.3],
          [0.3, 0.6],
          [0.6, 0.9],
        ],
      }),
  ],
  removeFeature: [{ bodyId: 'main', index: 0 }, (after) => expect(body(after).features[0]!.kind).toBe('roundSteps')],
  setLevel: [{ bodyId: 'main', levelM: -0.07 }, (after) => expect(body(after).levelM).toBe(-0.07)],
  setFreeboard: [{ bodyId: 'main', freeboardM: 0.2 }, (after) => expect(body(after).freeboardM).toBe(0.2)],
  setTolerance: [
    { bodyId: 'main', tolerance: { planM: 0.05, depthM: 0.03 } },
    (after) => expect(body(after).tolerance).toEqual({ planM: 0.05, depthM: 0.03 }),
  ],
  setDepthReference: [
    { bodyId: 'main', reference: 'tile-line', tileLineM: 0.05 },
    (after) => expect(body(after)).toMatchObject({ depthsMeasuredFrom: 'tile-line', tileLineM: 0.05 }),
  ],
  setVolumeEstimate: [
    { systemId: 'pool', estimate: { from: 'stated', m3: 60, sigmaM3: 3 } },
    (after) => expect(system(after).volumeEstimates).toEqual([{ from: 'stated', m3: 60, sigmaM3: 3 }]),
  ],
  removeVolumeEstimate: [{ systemId: 'pool' }, (after) => expect(system(after).volumeEstimates).toEqual([])],
  setPlumbing: [{ systemId: 'pool', plumbingM3: 0.7 }, (after) => expect(system(after).plumbingM3).toBe(0.7)],
  addReadings: [{ systemId: 'pool', set }, (after) => expect(system(after).water.readings.at(-1)).toEqual(set)],
  updateReadings: [{ systemId: 'pool', index: 0, set }, (after) => expect(system(after).water.readings).toEqual([set])],
  removeReadings: [{ systemId: 'pool', index: 0 }, (after) => expect(system(after).water.readings).toEqual([])],
  setFill: [{ systemId: 'pool' }, (after) => expect('fill' in system(after).water).toBe(false)],
  setTarget: [
    { systemId: 'pool', key: 'cya_mg_per_L', band: { low: 20, aim: 30, high: 40 } },
    (after) => expect(Object.keys(system(after).water.targets).sort()).toEqual(['cya_mg_per_L', 'pH']),
  ],
  resetTarget: [{ systemId: 'pool', key: 'pH' }, (after) => expect(system(after).water.targets).toEqual({})],
  setRegime: [
    { systemId: 'pool', id: 'stabilised', bathersPerDay: 5, bathingHours: undefined },
    (after) =>
      expect(system(after).regime).toEqual({ id: 'stabilised', products: { acid: 'dry-acid' }, bathersPerDay: 5 }),
  ],
  setProduct: [
    { systemId: 'pool', purpose: 'acid', product: undefined },
    (after) => expect(system(after).regime.products).toEqual({}),
  ],
  setEquipment: [
    { systemId: 'pool', pumpM3PerH: 9, coverKind: undefined, helpers: ['uv'] },
    (after) =>
      expect(system(after).equipment).toEqual({
        pumpM3PerH: 9,
        pumpHoursPerDay: 16,
        coverHoursPerDay: 14,
        helpers: ['uv'],
      }),
  ],
  setStock: [
    { systemId: 'pool', product: 'boric-acid', amountG: 0 },
    (after) => expect(system(after).stock).toEqual([]),
  ],
  setPlanStart: [{ systemId: 'pool' }, (after) => expect('planStartAt' in system(after)).toBe(false)],
  logDose: [
    { systemId: 'pool', at, product: 'sodium-bicarbonate', amountG: 2500, line: 'alkalinity' },
    (after) =>
      expect(system(after).log.at(-1)).toEqual({
        kind: 'dose',
        id: 'entry-3',
        at,
        product: 'sodium-bicarbonate',
        amountG: 2500,
        line: 'alkalinity',
      }),
  ],
  addNote: [
    { systemId: 'pool', at: '2026-04-01T09:00:00Z', text: 'Ice gone.' },
    (after) =>
      expect(system(after).log[0]).toEqual({
        kind: 'note',
        id: 'entry-3',
        at: '2026-04-01T09:00:00Z',
        text: 'Ice gone.',
      }),
  ],
  setLog: [
    { systemId: 'pool', id: 'd1', entry: { amountG: 4000, text: 'not of a dose' } },
    (after) =>
      expect(system(after).log.find((entry) => entry.id === 'd1')).toEqual({
        kind: 'dose',
        id: 'd1',
        at: '2026-05-02T10:00:00-07:00',
        product: 'boric-acid',
        amountG: 4000,
      }),
  ],
  removeLog: [
    { systemId: 'pool', id: 'd1' },
    (after) => expect(system(after).log.map((e) => e.id)).toEqual(['entry-1']),
  ],
  setSite: [
    { surface: 'vinyl', elevationM: undefined },
    (after) => expect(after.site).toEqual({ latitudeDeg: 47.2, surface: 'vinyl' }),
  ],
  replaceDocument: [{ spec: demoSpec }, (after) => expect(after).toEqual(demoSpec)],
}

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
    expect('depthsAssumed' in body(said, 'sketch')).toBe(false)
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
        bodies: [{ colour: 'pale', outline: { drawnBy: 'hand' } }, {}, {}],
      })
    }
  })
})
