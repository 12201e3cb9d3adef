import { expect } from 'vitest'
import { areaOf, boundsOf } from '../../src/basin/index.ts'
import { type CommandArgs, type CommandId, demoSpec, isSmooth, kindOf, type Spec } from '../../src/document/index.ts'
import { FLOOR_SAMPLES } from './floor-command-samples.ts'
import { OWNER_SAMPLES } from './owner-command-samples.ts'
import { bodyOf, ISLAND, main, RECTANGLE, richSpec, STADIUM, size, stations } from './samples.ts'

export type Sample<Id extends CommandId> = readonly [args: CommandArgs<Id>, check: (after: Spec, before: Spec) => void]

const at = '2026-05-03T09:00:00-07:00'
const set = {
  at,
  method: 'strip',
  values: { pH: 7.5, tc_mg_per_L_as_Cl2: 2.4, th_mg_per_L_as_CaCO3: 250, copper_mg_per_L: 0.2, tds_mg_per_L: 900 },
} as const
const body = bodyOf
const system = (spec: Spec) => spec.systems[0]!

/** One sample an edit: an edit without one doesn't compile. */
export const SAMPLES: { readonly [Id in CommandId]: Sample<Id> } = {
  setName: [{ name: 'Reed Court' }, (after) => expect(after.name).toBe('Reed Court')],
  addBody: [
    { body: { ...bodyOf(richSpec, 'stadium'), id: 'spa' } },
    (after) =>
      expect(after.bodies.map((b) => b.id)).toEqual([
        'main',
        'sketch',
        'stadium',
        'hopper',
        'sounded',
        'dished',
        'spa',
      ]),
  ],
  setBody: [
    { bodyId: 'main', body: { levelM: -0.1, tileLineM: 0.08, depthsMeasuredFrom: undefined } },
    (after, before) => {
      expect(body(after)).toMatchObject({ levelM: -0.1, tileLineM: 0.08, outline: body(before).outline })
      expect('depthsMeasuredFrom' in body(after)).toBe(false)
    },
  ],
  removeBody: [{ bodyId: 'sketch' }, (after) => expect(after.bodies.map((b) => b.id)).not.toContain('sketch')],
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
  untangleLine: [
    {
      bodyId: 'hopper',
      ring: { of: 'outline' },
      path: { ...RECTANGLE, segments: [{ to: [9, -0.5] }, { to: [9, 4] }, { to: [0, 4] }, { to: [0, 0] }] },
    },
    (after, before) => {
      expect(body(after, 'hopper').outline.segments[0]!.to).toEqual([9, -0.5])
      // The bench keeps to the walls that it ran along.
      expect(body(after, 'hopper').features[0]).toEqual(body(before, 'hopper').features[0])
    },
  ],
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
  ...FLOOR_SAMPLES,
  setWall: [
    { bodyId: 'main', wall: { kind: 'battered', run: 0.25 } },
    (after) => expect(body(after).wall).toEqual({ kind: 'battered', run: 0.25 }),
  ],
  addFeature: [
    {
      bodyId: 'stadium',
      feature: { kind: 'bench', along: { fromSegment: 3, toSegment: 0 }, widthM: 0.45, depthM: 0.45 },
    },
    (after) => expect(body(after, 'stadium').features[0]!.kind).toBe('bench'),
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
    { bodyId: 'main', tolerance: { planM: 0.05, depthM: 0.03, tapeScale: 0.001 } },
    (after) => expect(body(after).tolerance).toEqual({ planM: 0.05, depthM: 0.03, tapeScale: 0.001 }),
  ],
  setDepthReference: [
    { bodyId: 'main', reference: 'tile-line', tileLineM: 0.05 },
    (after) => expect(body(after)).toMatchObject({ depthsMeasuredFrom: 'tile-line', tileLineM: 0.05 }),
  ],
  correctReference: [{ bodyId: 'main', freeboardM: 0.2 }, (after) => expect(body(after).freeboardM).toBe(0.2)],
  deepenReadings: [
    { bodyId: 'main', byM: 0.1 },
    (after, before) =>
      expect(stations(after).map(([, depthM]) => depthM)).toEqual(stations(before).map(([, depthM]) => depthM + 0.1)),
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
    {
      systemId: 'pool',
      id: 'stabilised',
      bathersPerDay: 5,
      bathingHours: undefined,
      feed: { amountG: 200, perWeek: 1.5 },
      objective: 'cheapest',
      dosing: 'whole-packages',
      chlorineConstants: 'wahman',
    },
    (after) =>
      expect(system(after).regime).toEqual({
        id: 'stabilised',
        products: { acid: 'dry-acid' },
        feed: { amountG: 200, perWeek: 1.5 },
        bathersPerDay: 5,
        packages: 'us',
        objective: 'cheapest',
        dosing: 'whole-packages',
        chlorineConstants: 'wahman',
      }),
  ],
  setProduct: [
    { systemId: 'pool', purpose: 'acid', product: undefined },
    (after) => expect(system(after).regime.products).toEqual({}),
  ],
  setEquipment: [
    { systemId: 'pool', pumpM3PerH: 9, coverKind: undefined, helpers: ['uv'] },
    (after, before) =>
      expect(system(after).equipment).toEqual({
        pumpM3PerH: 9,
        pumpHoursPerDay: 16,
        coverHoursPerDay: 14,
        helpers: ['uv'],
        devices: system(before).equipment.devices,
      }),
  ],
  setStock: [
    { systemId: 'pool', product: 'boric-acid', amountG: 0 },
    (after) => expect(system(after).stock).toEqual([]),
  ],
  ...OWNER_SAMPLES,
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
    { surface: 'vinyl', indoor: true, elevationM: undefined },
    (after) => expect(after.site).toEqual({ latitudeDeg: 47.2, surface: 'vinyl', indoor: true }),
  ],
  replaceDocument: [{ spec: demoSpec }, (after) => expect(after).toEqual(demoSpec)],
}
