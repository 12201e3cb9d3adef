import type { Problem } from '../base/index.ts'

const WORDS = {
  'not-a-number': [
    'A number here is missing or infinite.',
    'Nothing can be measured from it.',
    'Type the number again.',
  ],
  'treads-too-few': [
    'The flight has no tread.',
    'There is nothing to stand on.',
    'Add a tread: where it begins and its depth.',
  ],
  'treads-not-ordered': [
    'This tread doesn’t lie beyond the one before it.',
    'Treads follow each other outward from the first.',
    'Order the treads and keep them apart.',
  ],
  'axis-too-short': [
    'The two ends of the flight’s axis are the same place.',
    'It gives no direction.',
    'Draw the axis from the first tread into the water.',
  ],
  'width-not-positive': [
    'The width of the bench isn’t above zero.',
    'There is nothing to sit on.',
    'Give a width, or delete the bench.',
  ],
  'no-such-side': [
    'The bench is told to run along a side that the outline doesn’t have.',
    'It can’t be placed.',
    'Name a side of the outline; they are counted from its first point.',
  ],
  'side-without-length': [
    'The sides that the bench runs along have no length.',
    'It can’t be placed.',
    'Choose other sides, or take the doubled points of the outline away.',
  ],
  'radius-not-positive': [
    'The radius of this tread isn’t above zero.',
    'It covers nothing.',
    'Give a radius, or delete the tread.',
  ],
} as const satisfies Record<string, readonly [string, string, string]>

/** The problem of a code at a path of the body. */
export function problem(code: keyof typeof WORDS, path: string, at?: readonly (readonly [number, number])[]): Problem {
  const [what, why, hint] = WORDS[code]
  return at ? { code, path, what, why, hint, at } : { code, path, what, why, hint }
}
