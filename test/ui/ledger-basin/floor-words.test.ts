import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, test } from 'vitest'
import { deriveUncertainty } from '../../../src/derive/index.ts'
import { leanWords, runFromAngle, runFromLean, toAngle, toLean } from '../../../src/ui/ledger/basin/batter.ts'
import { FLOOR_CHOICES } from '../../../src/ui/ledger/basin/floor-choices.tsx'
import { placeWords } from '../../../src/ui/ledger/basin/place-words.ts'
import { fitWords } from '../../../src/ui/ledger/basin/volume-words.ts'
import { bodyOf, richSpec } from '../../document/samples.ts'

describe('a wall that leans', () => {
  test('a quarter of a metre for each metre is 25 cm, 3 in per foot and 14.0°', () => {
    expect(toLean(0.25, 'metric')).toBe(25)
    expect(toLean(0.25, 'us')).toBe(3)
    // arctan(1/4) = 14.036°.
    expect(toAngle(0.25)).toBe(14)
    expect(runFromLean(25, 'metric')).toBe(0.25)
    expect(runFromLean(3, 'imperial')).toBe(0.25)
    expect(runFromAngle(45)).toBeCloseTo(1, 12)
    expect(toAngle(0)).toBe(0)
  })

  test('the field says which unit it wants', () => {
    expect(leanWords('metric').unit).toBe('cm')
    expect(leanWords('us').unit).toBe('in')
  })
})

/** Where the strokes of an SVG path end, one after the other. */
function endsOf(d: string): [number, number][] {
  let [x, y] = [0, 0]
  return [...d.matchAll(/([MLHVQhv])([^A-Za-z]*)/g)].flatMap(([, step, text = '']) => {
    const numbers = text.trim().split(/[ ,]+/).map(Number)
    if (step === 'H') x = numbers[0] ?? Number.NaN
    else if (step === 'h') x += numbers[0] ?? Number.NaN
    else if (step === 'V') y = numbers[0] ?? Number.NaN
    else if (step === 'v') y += numbers[0] ?? Number.NaN
    else [x, y] = [numbers.at(-2) ?? Number.NaN, numbers.at(-1) ?? Number.NaN]
    return [[x, y] satisfies [number, number]]
  })
}

describe('the kinds of floor', () => {
  test('each is offered once, with a sentence and a picture', () => {
    expect(FLOOR_CHOICES.map((choice) => choice.id).sort()).toEqual([
      'contours',
      'dish',
      'flat',
      'profile',
      'soundings',
    ])
    for (const choice of FLOOR_CHOICES) expect(choice.note.length).toBeGreaterThan(12)
  })

  test('each picture is another one, and is drawn inside its box', () => {
    const pictures = FLOOR_CHOICES.map(({ mark }) => renderToStaticMarkup(mark))
    expect(new Set(pictures).size).toBe(FLOOR_CHOICES.length)
    for (const picture of pictures) {
      const [left = Number.NaN, top = Number.NaN, width = Number.NaN, height = Number.NaN] = (
        /viewBox="([^"]*)"/.exec(picture)?.[1] ?? ''
      )
        .split(' ')
        .map(Number)
      const ends = [...picture.matchAll(/ d="([^"]*)"/g)].flatMap(([, d = '']) => endsOf(d))
      expect(ends.length, picture).toBeGreaterThan(1)
      for (const [x, y] of ends) {
        expect(x >= left && x <= left + width, `${x} across in ${picture}`).toBe(true)
        expect(y >= top && y <= top + height, `${y} down in ${picture}`).toBe(true)
      }
    }
  })
})

describe('what to measure again', () => {
  test('every measurement that matters has a name for people, and most can be gone to', () => {
    for (const body of richSpec.bodies) {
      for (const { path } of deriveUncertainty(body)?.largest ?? []) {
        const { words } = placeWords(path, body)
        expect(words, path).not.toBe(path)
        expect(words).not.toMatch(/\[|\.|NaN|undefined/)
      }
    }
  })

  test('numbers of the document become numbers of people', () => {
    const hopper = bodyOf(richSpec, 'hopper')
    expect(placeWords('outline.start', hopper)).toEqual({
      words: 'Point 1 of the outline',
      selection: { kind: 'node', bodyId: 'hopper', ring: { of: 'outline' }, node: 0 },
    })
    expect(placeWords('outline.segments[0].to', hopper).words).toBe('Point 2 of the outline')
    // The end of the last segment of a closed path is its start again.
    expect(placeWords('outline.segments[3].to', bodyOf(richSpec, 'stadium')).words).toBe('Point 1 of the outline')
    expect(placeWords('floor.rings[0].path.segments[1].to', hopper).words).toBe('Point 3 of depth line 1')
    expect(placeWords('floor.rings[0].depthM', hopper).selection).toEqual({
      kind: 'contour',
      bodyId: 'hopper',
      contour: 0,
    })
    expect(placeWords('floor.points[2][2]', bodyOf(richSpec, 'sounded')).words).toBe('Sounding 3')
    expect(placeWords('floor.stations[0][1]', bodyOf(richSpec)).words).toBe('Depth of station 1')
    expect(placeWords('floor.edgeDepthM', hopper).words).toBe('Depth at the walls')
    expect(placeWords('features[1].fromDepthM', hopper).words).toBe('Depth of ramp 2')
  })
})

describe('a wanted volume in words', () => {
  test('says what changes, by how much, and what it comes to', () => {
    const body = bodyOf(richSpec, 'hopper')
    const words = (...args: Parameters<typeof fitWords>) => fitWords(...args).replace(/\s/g, ' ')
    expect(words(body, 'depths', { value: 0.1, volumeM3: 60 }, 'metric')).toBe(
      'Every depth of the floor 0.10 m more, the deepest then 2.40 m. Steps and shelves stay.',
    )
    expect(words(body, 'plan', { value: 0.9, volumeM3: 60 }, 'metric')).toBe(
      'The plan and all in it 10 % smaller, overall then 8.10 m by 3.60 m. Depths stay.',
    )
  })
})
