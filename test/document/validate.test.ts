import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { demoSpec, fromJson, NEWEST_VERSION, toJson, validateSpec } from '../../src/document/index.ts'
import { isProblemCode } from '../../src/document/problems.ts'
import { RECTANGLE, richSpec } from './samples.ts'

const SEED = 20261124
type Loose = { [key: string]: unknown }
const json = (value: unknown): Loose => JSON.parse(JSON.stringify(value))
const at = (value: unknown, ...path: (string | number)[]): Loose =>
  path.reduce((found, key) => (found as { [key: string]: never })[key]!, value as Loose)
const problemsOf = (value: unknown) => {
  const result = validateSpec(value)
  return result.ok ? [] : result.problem.map((p) => `${p.code} ${p.path}`)
}
const broken = (edit: (spec: Loose) => void) => {
  const spec = json(richSpec)
  edit(spec)
  return problemsOf(spec)
}

describe('checking a document', () => {
  test('complaints about the order of distances, an axis and a segment tell where in the plan they are', () => {
    const placesOf = (edit: (spec: Loose) => void) => {
      const spec = json(richSpec)
      edit(spec)
      const result = validateSpec(spec)
      return result.ok ? [] : result.problem.map(({ code, at: places }) => [code, places])
    }
    const axis = { from: [1, 2], to: [4, 6] }
    const falling = [
      [0, 1],
      [5, 2],
      [2.5, 1.5],
    ]
    const profile = { kind: 'profile', axis, stations: falling }
    expect(placesOf((s) => (at(s, 'bodies', 0)['floor'] = profile))).toEqual([['stations-out-of-order', [[2.5, 4]]]])
    const noAxis = { ...profile, axis: { from: [1, 2], to: [1, 2] } }
    expect(placesOf((s) => (at(s, 'bodies', 0)['floor'] = noAxis))).toEqual([
      ['axis-without-length', [[1, 2]]],
      ['stations-out-of-order', undefined],
    ])
    const path = RECTANGLE
    const features = [
      { kind: 'steps', path, axis, treads: falling },
      { kind: 'roundSteps', centre: [3, 1], treads: falling },
    ]
    expect(placesOf((s) => (at(s, 'bodies', 0)['features'] = features))).toEqual([
      ['treads-out-of-order', [[2.5, 4]]],
      ['treads-out-of-order', [[3, 1]]],
    ])
    const half = { start: [0, 0], segments: [{ to: [9, 4], c1: [1, 1] }, ...RECTANGLE.segments] }
    expect(placesOf((s) => (at(s, 'bodies', 0)['outline'] = half))).toEqual([['one-control', [[9, 4]]]])
  })

  test('complaints about depth lines, soundings, dishes, walls, benches and ramps have their paths', () => {
    const [hopper, sounded, dished] = [3, 4, 5]
    expect(broken((s) => (at(s, 'bodies', hopper, 'floor', 'rings', 0, 'path', 'segments', 1)['to'] = 'x'))).toEqual([
      'wrong-type bodies[3].floor.rings[0].path.segments[1].to',
    ])
    expect(broken((s) => delete at(s, 'bodies', hopper, 'floor', 'rings', 0)['depthM'])).toEqual([
      'missing bodies[3].floor.rings[0].depthM',
    ])
    expect(broken((s) => (at(s, 'bodies', hopper, 'floor')['edgeDepthM'] = null))).toEqual([
      'wrong-type bodies[3].floor.edgeDepthM',
    ])
    expect(broken((s) => (at(s, 'bodies', sounded, 'floor', 'points')[1 as never] = [1, 2] as never))).toEqual([
      'missing bodies[4].floor.points[1][2]',
    ])
    expect(broken((s) => (at(s, 'bodies', sounded, 'floor', 'points', 2)[2 as never] = 2e3 as never))).toEqual([
      'out-of-range bodies[4].floor.points[2][2]',
    ])
    expect(broken((s) => delete at(s, 'bodies', sounded, 'floor')['edgeDepthM'])).toEqual([
      'missing bodies[4].floor.edgeDepthM',
    ])
    expect(broken((s) => (at(s, 'bodies', dished, 'floor')['form'] = 'bowl'))).toEqual([
      'not-one-of bodies[5].floor.form',
    ])
    expect(broken((s) => (at(s, 'bodies', dished, 'floor')['radiusM'] = -1))).toEqual([
      'out-of-range bodies[5].floor.radiusM',
    ])
    expect(broken((s) => (at(s, 'bodies', hopper, 'wall')['run'] = 'steep'))).toEqual(['wrong-type bodies[3].wall.run'])
    expect(broken((s) => (at(s, 'bodies', hopper, 'tolerance')['tapeScale'] = -0.1))).toEqual([
      'out-of-range bodies[3].tolerance.tapeScale',
    ])
    // A bench is complained about in the form that was meant.
    expect(broken((s) => (at(s, 'bodies', hopper, 'features', 0, 'along')['toSegment'] = 1.5))).toEqual([
      'not-whole bodies[3].features[0].along.toSegment',
    ])
    expect(broken((s) => (at(s, 'bodies', hopper, 'features', 2, 'path', 'segments', 1)['to'] = 'x'))).toEqual([
      'wrong-type bodies[3].features[2].path.segments[1].to',
    ])
    expect(broken((s) => delete at(s, 'bodies', hopper, 'features', 1)['axis'])).toEqual([
      'missing bodies[3].features[1].axis',
    ])
  })

  test('every complaint has its path', () => {
    expect(broken((s) => (at(s, 'bodies', 0, 'outline', 'segments', 3)['to'] = 'x'))).toEqual([
      'wrong-type bodies[0].outline.segments[3].to',
    ])
    expect(broken((s) => delete at(s, 'bodies', 0, 'outline', 'segments', 3)['to'])).toEqual([
      'missing bodies[0].outline.segments[3].to',
    ])
    expect(broken((s) => (at(s, 'bodies', 0, 'outline', 'segments', 3)['to'] = [0]))).toEqual([
      'missing bodies[0].outline.segments[3].to[1]',
    ])
    expect(broken((s) => (at(s, 'bodies', 0, 'outline', 'segments', 3)['to'] = [0, 1, 2]))).toEqual([
      'too-many bodies[0].outline.segments[3].to[2]',
    ])
    expect(broken((s) => (at(s, 'bodies', 0, 'outline', 'segments', 3)['to'] = [0, Number.NaN]))).toEqual([
      'not-finite bodies[0].outline.segments[3].to[1]',
    ])
    expect(broken((s) => (at(s, 'bodies', 0)['levelM'] = Number.POSITIVE_INFINITY))).toContain(
      'not-finite bodies[0].levelM',
    )
    expect(broken((s) => (at(s, 'bodies', 0)['levelM'] = 1e7))).toEqual(['out-of-range bodies[0].levelM'])
    expect(broken((s) => delete at(s, 'bodies', 0, 'outline', 'segments', 0)['c2'])).toEqual([
      'one-control bodies[0].outline.segments[0]',
    ])
    expect(broken((s) => (at(s, 'bodies', 0, 'outline', 'segments', 0)['bulge'] = 1))).toEqual([
      'bulge-and-controls bodies[0].outline.segments[0]',
    ])
    expect(broken((s) => (at(s, 'bodies', 0, 'outline')['segments'] = []))).toEqual([
      'too-few bodies[0].outline.segments',
    ])
    expect(
      broken(
        (s) =>
          (at(s, 'bodies', 0, 'floor')['stations'] = [
            [1, 1],
            [0, 2],
          ]),
      ),
    ).toEqual(['stations-out-of-order bodies[0].floor.stations'])
    expect(
      broken(
        (s) =>
          (at(s, 'bodies', 0, 'features', 1)['treads'] = [
            [1, 1],
            [1, 2],
          ]),
      ),
    ).toEqual(['treads-out-of-order bodies[0].features[1].treads'])
    expect(broken((s) => (at(s, 'bodies', 0, 'floor')['axis'] = { from: [1, 1], to: [1, 1] }))).toEqual([
      'axis-without-length bodies[0].floor.axis',
    ])
    expect(broken((s) => (at(s, 'bodies', 0, 'floor')['kind'] = 'terraced'))).toEqual([
      'unknown-kind bodies[0].floor.kind',
    ])
    expect(broken((s) => (at(s, 'bodies', 1)['id'] = 'main'))).toEqual(['same-id bodies[1].id'])
    expect(broken((s) => (at(s, 'systems', 0, 'log', 1)['id'] = 'entry-1'))).toEqual(['same-id systems[0].log[1].id'])
    expect(broken((s) => (at(s, 'bodies', 1)['system'] = 'spa'))).toEqual(['no-such-system bodies[1].system'])
    expect(broken((s) => (at(s, 'systems', 0, 'water', 'fill')['at'] = 'yesterday'))).toEqual([
      'not-a-moment systems[0].water.fill.at',
    ])
    expect(broken((s) => (at(s, 'systems', 0, 'water', 'fill')['at'] = '2026-02-29T10:00:00Z'))).toEqual([
      'not-a-moment systems[0].water.fill.at',
    ])
    expect(broken((s) => (at(s, 'systems', 0, 'water', 'targets')['pH'] = { low: 7.6, aim: 7.4, high: 7.2 }))).toEqual([
      'band-out-of-order systems[0].water.targets.pH',
    ])
    expect(broken((s) => (at(s, 'systems', 0, 'volumeEstimates', 0)['m3'] = 0))).toEqual([
      'not-above-zero systems[0].volumeEstimates[0].m3',
    ])
    expect(broken((s) => (at(s, 'systems', 0, 'equipment')['helpers'] = ['wand']))).toEqual([
      'not-one-of systems[0].equipment.helpers[0]',
    ])
    expect(broken((s) => (at(s, 'site')['climate'] = []))).toEqual(['too-few site.climate'])
    expect(broken((s) => (at(s, 'systems', 0, 'stock', 0)['product'] = ''))).toEqual([
      'empty-text systems[0].stock[0].product',
    ])
    expect(broken((s) => (s['name'] = 'x'.repeat(201)))).toEqual(['long-text name'])
    expect(broken((s) => (s['site'] = []))).toEqual(['wrong-type site'])
    expect(
      broken((s) => (s['bodies'] = Array.from({ length: 51 }, (_, i) => ({ ...at(s, 'bodies', 0), id: `b${i}` })))),
    ).toEqual(['too-many bodies'])
  })

  test('all complaints come at once, each in words', () => {
    const result = validateSpec({
      format: 'shoalbook-spec',
      version: 1,
      bodies: [{ outline: { start: [0, 'a'], segments: [{}, { to: [1, 1], bulge: null }] }, floor: {} }],
      site: { latitudeDeg: 200 },
    })
    if (result.ok) throw new Error('a problem was expected')
    expect(result.problem.map((p) => p.path)).toEqual([
      'bodies[0].id',
      'bodies[0].outline.start[1]',
      'bodies[0].outline.segments[0].to',
      'bodies[0].outline.segments[1].bulge',
      'bodies[0].floor.kind',
      'site.latitudeDeg',
    ])
    for (const p of result.problem)
      for (const words of [p.what, p.why, p.hint]) {
        expect(words.length).toBeGreaterThan(10)
        expect(words).not.toMatch(/[{}]|undefined|NaN|\[object/)
      }
    expect(result.problem[0]).toEqual({
      code: 'missing',
      path: 'bodies[0].id',
      what: '"id" is missing.',
      why: 'Nothing is assumed in its place.',
      hint: 'Add it: a value for "id".',
    })
    expect(result.problem[5]!.what).toBe('"latitudeDeg" is 200; the most is 90.')
  })

  test('what the contract lets out is filled in, and no reading ever is', () => {
    const result = validateSpec({
      format: 'shoalbook-spec',
      version: 1,
      bodies: [
        {
          id: 'main',
          outline: { start: [0, 0], segments: [{ to: [9, 0] }, { to: [9, 4] }] },
          floor: { kind: 'flat', depthM: 1.4 },
        },
      ],
    })
    if (!result.ok) throw new Error(JSON.stringify(result.problem))
    expect(result.value).toEqual({
      format: 'shoalbook-spec',
      version: 1,
      name: '',
      bodies: [
        {
          id: 'main',
          name: 'main',
          system: 'pool',
          outline: { start: [0, 0], segments: [{ to: [9, 0] }, { to: [9, 4] }] },
          islands: [],
          floor: { kind: 'flat', depthM: 1.4 },
          wall: { kind: 'vertical' },
          features: [],
          freeboardM: 0.15,
          levelM: 0,
          tolerance: { planM: 0.02, depthM: 0.02 },
        },
      ],
      systems: [
        {
          id: 'pool',
          plumbingM3: 0,
          volumeEstimates: [],
          water: { readings: [], targets: {} },
          equipment: { helpers: [] },
          stock: [],
          regime: { id: 'stabilised', products: {} },
          log: [],
        },
      ],
      site: {},
    })
    const partial = validateSpec({
      format: 'shoalbook-spec',
      version: 1,
      bodies: [],
      systems: [{ id: 'a', water: { fill: { at: '2026-05-01T08:00Z', values: { pH: 7.4 } } } }],
    })
    expect(partial.ok && partial.value.systems[0]!.water).toEqual({
      readings: [],
      targets: {},
      fill: { at: '2026-05-01T08:00Z', method: 'unknown', values: { pH: 7.4 } },
    })
  })

  test('absent systems mean one that holds every body; of several a body has to name its own', () => {
    const outline = { start: [0, 0], segments: [{ to: [9, 0] }, { to: [9, 4] }] }
    const body = (id: string, system?: string) => ({
      id,
      outline,
      floor: { kind: 'flat', depthM: 1 },
      ...(system ? { system } : {}),
    })
    const head = { format: 'shoalbook-spec', version: 1 }
    const one = validateSpec({ ...head, bodies: [body('a'), body('b', 'spa')] })
    expect(one.ok && one.value.bodies.map((b) => b.system)).toEqual(['pool', 'pool'])
    const named = validateSpec({ ...head, bodies: [body('a')], systems: [{ id: 'trough' }] })
    expect(named.ok && named.value.bodies[0]!.system).toBe('trough')
    expect(problemsOf({ ...head, bodies: [body('a')], systems: [{ id: 'x' }, { id: 'y' }] })).toEqual([
      'system-unnamed bodies[0].system',
    ])
    expect(problemsOf({ ...head, bodies: [body('a')], systems: [] })).toEqual(['system-unnamed bodies[0].system'])
  })

  test('keys that aren’t known are kept at every level, and those that poison objects are not', () => {
    const spec = json(richSpec)
    for (const part of [
      spec,
      at(spec, 'bodies', 0),
      at(spec, 'bodies', 0, 'outline'),
      at(spec, 'bodies', 0, 'outline', 'segments', 2),
      at(spec, 'bodies', 0, 'floor'),
      at(spec, 'bodies', 0, 'floor', 'axis'),
      at(spec, 'bodies', 0, 'features', 0),
      at(spec, 'systems', 0),
      at(spec, 'systems', 0, 'water'),
      at(spec, 'systems', 0, 'water', 'fill'),
      at(spec, 'systems', 0, 'water', 'fill', 'values'),
      at(spec, 'systems', 0, 'log', 0),
      at(spec, 'site'),
    ])
      part['later'] = { deep: [1, null, 'x'] }
    const result = fromJson(JSON.stringify(spec))
    expect(result.ok && JSON.parse(toJson(result.value))).toEqual(spec)
    const poisoned = fromJson(JSON.stringify(spec).replace('"later"', '"__proto__"'))
    expect(poisoned.ok && (poisoned.value as unknown as Loose)['deep']).toBe(undefined)
  })

  test('what isn’t a spec, is from the future, is too large or loops is refused as such', () => {
    for (const other of [null, 7, 'x', [], {}, { format: 'else' }, undefined, () => 0])
      expect(problemsOf(other)[0]).toMatch(/^not-a-spec/)
    expect(problemsOf({ format: 'shoalbook-spec' })).toEqual(['unknown-version version'])
    expect(problemsOf({ format: 'shoalbook-spec', version: 0.5 })).toEqual(['unknown-version version'])
    expect(problemsOf({ format: 'shoalbook-spec', version: NEWEST_VERSION + 1 })).toEqual(['newer-version version'])
    expect(problemsOf({ ...demoSpec, more: Array.from({ length: 2_000_001 }, () => 0) })).toEqual(['too-large '])
    const loop: Loose = { ...demoSpec }
    loop['self'] = loop
    expect(problemsOf(loop)).toEqual(['too-large '])
    expect(problemsOf({ ...demoSpec, bodies: Array.from({ length: 5000 }, () => 0) }).length).toBe(200)
    expect(fromJson('{"format":').ok).toBe(false)
    expect(fromJson('').ok).toBe(false)
  })

  test('anything at all gives a spec or problems, never a throw', () => {
    const seen = new Set<string>()
    const check = (value: unknown) => {
      const result = validateSpec(value)
      if (result.ok) {
        const again = fromJson(toJson(result.value))
        expect(again.ok && toJson(again.value)).toBe(toJson(result.value))
      } else {
        expect(result.problem.length).toBeGreaterThan(0)
        for (const p of result.problem) seen.add(p.code)
      }
    }
    fc.assert(fc.property(fc.jsonValue(), check), { seed: SEED, numRuns: 300 })
    fc.assert(fc.property(fc.anything(), check), { seed: SEED, numRuns: 300 })
    // A good document with one place replaced by anything.
    const places = placesOf(json(richSpec))
    fc.assert(
      fc.property(fc.constantFrom(...places), fc.anything(), (place, value) => {
        const spec = json(richSpec)
        at(spec, ...place.slice(0, -1))[place.at(-1)!] = value
        check(spec)
      }),
      { seed: SEED, numRuns: 1500 },
    )
    // Complaints about a label are those of the table of chemicals.
    for (const code of seen) expect(isProblemCode(code) || code.startsWith('own-product-'), code).toBe(true)
  })
})

function placesOf(value: unknown, path: (string | number)[] = []): (string | number)[][] {
  if (typeof value !== 'object' || value === null) return []
  const keys = Array.isArray(value) ? value.map((_, i) => i) : Object.keys(value)
  return keys.flatMap((key) => [
    [...path, key],
    ...placesOf((value as { [key: string | number]: unknown })[key], [...path, key]),
  ])
}
