import { type BasinShape, boundsOf, measure, type Path, partition, STARTING_OUTLINES } from '../../src/basin/index.ts'
import { deriveBody } from '../../src/derive/index.ts'
import { demoSpec } from '../../src/document/index.ts'
import { type Feature, patchesOf } from '../../src/features/index.ts'

const GALLONS_PER_CUBIC_FOOT = 1728 / 231

/** What a person measures for a rule: overall length and width, the depths of both ends, the widths of both halves. */
interface Taken {
  readonly lengthM: number
  readonly widthM: number
  readonly shallowM: number
  readonly deepM: number
  readonly widthAM: number
  readonly widthBM: number
}

export interface Rule {
  readonly id: string
  readonly heading: string
  readonly words: string
  readonly source: string
  readonly volumeM3: (t: Taken) => number
}

const meanDepth = ({ shallowM, deepM }: Taken): number => (shallowM + deepM) / 2
const box = (t: Taken): number => t.lengthM * t.widthM * meanDepth(t)

export const RULES: readonly Rule[] = [
  {
    id: 'box',
    heading: 'box × 7.5',
    words: 'length × width × mean of the two end depths × 7.5 gal/ft³',
    source: 'Kern County Public Health, “Pool sizing and formulas”',
    volumeM3: (t) => (box(t) * 7.5) / GALLONS_PER_CUBIC_FOOT,
  },
  {
    id: 'oval89',
    heading: 'box × 0.89',
    words: 'an oval as 0.89 of its box',
    source: 'common practice, no source',
    volumeM3: (t) => 0.89 * box(t),
  },
  {
    id: 'oval85',
    heading: 'box × 0.85',
    words: 'an oval as 0.85 of its box',
    source: 'common practice, no source',
    volumeM3: (t) => 0.85 * box(t),
  },
  {
    id: 'stadium',
    heading: '× 6.7',
    words: 'straight sides with round ends: 6.7 gal for each ft³ of the box',
    source: 'common practice, no source',
    volumeM3: (t) => (6.7 / GALLONS_PER_CUBIC_FOOT) * box(t),
  },
  {
    id: 'round',
    heading: '× 5.9',
    words: 'round, oval and freeform: 5.9 gal for each ft³ of the box',
    source: 'common practice, no source',
    volumeM3: (t) => (5.9 / GALLONS_PER_CUBIC_FOOT) * box(t),
  },
  {
    id: 'kidney',
    heading: '0.45 (A + B) L',
    words: '0.45 × (width of one half + width of the other) × length × mean depth × 7.5 gal/ft³',
    source: 'common practice, no source',
    volumeM3: (t) => (0.45 * (t.widthAM + t.widthBM) * t.lengthM * meanDepth(t) * 7.5) / GALLONS_PER_CUBIC_FOOT,
  },
]

export interface RuledPool {
  readonly name: string
  readonly volumeM3: number
  /** The rule that a person would take for this shape. */
  readonly usual: string
  readonly taken: Taken
}

function started(id: string, parameters: Record<string, number> = {}): Path {
  const made = STARTING_OUTLINES.get(id)?.make(parameters)
  if (!made?.ok) throw new Error(id)
  return made.value
}

type Parts = Partial<Pick<BasinShape, 'floor' | 'wall'>> & { readonly features?: readonly Feature[] }

function pool(
  name: string,
  usual: string,
  outline: Path,
  ends: readonly [number, number],
  parts: Parts,
  halves?: readonly [number, number],
): RuledPool {
  const patches = patchesOf(parts.features ?? [], outline)
  if (!patches.ok) throw new Error(name)
  const result = partition({
    outline,
    islands: [],
    floor: parts.floor ?? { kind: 'flat', depthM: ends[0] },
    wall: parts.wall ?? { kind: 'vertical' },
    patches: patches.value,
    freeboardM: 0.15,
  })
  if (!result.ok) throw new Error(`${name}: ${result.problem.what}`)
  return ruled(name, usual, outline, ends, measure(result.value, 0).volumeM3, halves)
}

function ruled(
  name: string,
  usual: string,
  outline: Path,
  [shallowM, deepM]: readonly [number, number],
  volumeM3: number,
  halves?: readonly [number, number],
): RuledPool {
  const { minX, minY, maxX, maxY } = boundsOf(outline)
  const lengthM = Math.max(maxX - minX, maxY - minY)
  const widthM = Math.min(maxX - minX, maxY - minY)
  const [widthAM, widthBM] = halves ?? [widthM, widthM]
  return { name, usual, volumeM3, taken: { lengthM, widthM, shallowM, deepM, widthAM, widthBM } }
}

const oblong = (lengthM: number, widthM: number): Path => started('rectangle', { lengthM, widthM, cornerRadiusM: 0 })
const profile = (...stations: [number, number][]) =>
  ({ kind: 'profile', axis: { from: [0, 2], to: [10, 2] }, stations }) as const

/** Ten invented pools, with what a tape would give for each. */
export function ruledPools(): readonly RuledPool[] {
  const example = demoSpec.bodies[0]!
  const known = deriveBody(example).measures
  if (!known.ok) throw new Error(known.problem.what)
  return [
    pool('oblong 8 × 4 m, level floor 1.4 m', 'box', oblong(8, 4), [1.4, 1.4], {}),
    pool('oblong 10 × 5 m, 1.1 m with a hopper to 2.6 m', 'box', oblong(10, 5), [1.1, 2.6], {
      floor: {
        kind: 'contours',
        edgeDepthM: 1.1,
        rings: [
          {
            depthM: 2.6,
            path: {
              start: [6, 1.5],
              segments: [{ to: [8.5, 1.5] }, { to: [8.5, 3.5] }, { to: [6, 3.5] }, { to: [6, 1.5] }],
            },
          },
        ],
      },
    }),
    pool(
      'straight sides and round ends, 9 × 4 m, sloping 1 to 2 m',
      'stadium',
      started('stadium', { lengthM: 9, widthM: 4 }),
      [1, 2],
      {
        floor: profile([0, 1], [9, 2]),
      },
    ),
    pool('ellipse 8 × 5 m, level floor 1.4 m', 'round', started('ellipse', { lengthM: 8, widthM: 5 }), [1.4, 1.4], {}),
    pool('round 5 m, level floor 1.3 m', 'round', started('circle', { diameterM: 5 }), [1.3, 1.3], {}),
    pool(
      'kidney 8.6 m, shelving 1 to 1.9 m',
      'kidney',
      started('kidney'),
      [1, 1.9],
      {
        floor: profile([0, 1], [4, 1.2], [6.5, 1.9]),
      },
      [3.6, 3.6],
    ),
    ruled(
      'the example pool: freeform, shelf, round steps, cove, 1.1 to 2.2 m',
      'round',
      example.outline,
      [1.1, 2.2],
      known.value.volumeM3,
      [4.7, 5.6],
    ),
    pool(
      'L 9 × 7 m, arms of 4 m, sloping 1 to 2 m',
      'box',
      started('ell'),
      [1, 2],
      { floor: profile([0, 1], [9, 2]) },
      // Across the arm that goes on, and across the one that is left.
      [7, 4],
    ),
    pool('oblong 9 × 4.5 m with steps, a sun shelf and a cove, 1.1 to 2 m', 'box', oblong(9, 4.5), [1.1, 2], {
      floor: profile([2, 1.1], [8, 2]),
      wall: { kind: 'cove', radiusM: 0.3 },
      features: [
        {
          kind: 'steps',
          path: { start: [0, 1], segments: [{ to: [0.9, 1] }, { to: [0.9, 3] }, { to: [0, 3] }, { to: [0, 1] }] },
          axis: { from: [0, 2], to: [0.9, 2] },
          treads: [
            [0, 0.3],
            [0.3, 0.6],
            [0.6, 0.9],
          ],
        },
        {
          kind: 'shelf',
          path: { start: [0, 3], segments: [{ to: [2.5, 3] }, { to: [2.5, 4.5] }, { to: [0, 4.5] }, { to: [0, 3] }] },
          depthM: 0.25,
        },
      ],
    }),
    pool('beach entry 10 × 5 m, from dry to 1.5 m at 6 m', 'box', oblong(10, 5), [0, 1.5], {
      floor: profile([0, 0], [6, 1.5]),
    }),
  ]
}

/** How far a rule is off a pool, as a fraction: positive where it says too much. */
export const offBy = ({ volumeM3 }: Rule, { taken, volumeM3: truth }: RuledPool): number => volumeM3(taken) / truth - 1

const percent = (share: number): string => {
  const text = Math.abs(100 * share).toFixed(1)
  return text === '0.0' ? '0.0' : `${share > 0 ? '+' : '−'}${text}`
}

/** The page of the table, in Markdown. */
export function rulesPage(): string {
  const pools = ruledPools()
  const usual = pools.map((p) => offBy(RULES.find(({ id }) => id === p.usual)!, p))
  const worst = Math.max(...usual.map(Math.abs))
  const name = (at: number): string => pools[usual.findIndex((off) => Math.abs(off) === at)]!.name
  const beyond = usual.filter((off) => Math.abs(off) > 0.1).length
  const rows = pools.map((p) => {
    const cells = RULES.map((rule) =>
      rule.id === p.usual ? `**${percent(offBy(rule, p))}**` : percent(offBy(rule, p)),
    )
    return `| ${p.name} | ${p.volumeM3.toFixed(2)} | ${cells.join(' | ')} |`
  })
  return `# How far common rules of thumb are off

Ten invented pools, measured by this program, and what six rules say of each: percent too much (+) or too little (−). **Bold** is the
rule that one would take for that shape. Written by \`npm run rules\`, and held to the program by a test.

| pool | m³ | ${RULES.map(({ heading }) => heading).join(' | ')} |
|---|---|${RULES.map(() => '---').join('|')}|
${rows.join('\n')}

With the rule that one would take, ${beyond} of ${pools.length} are off by more than 10 %, the worst by ${(100 * worst).toFixed(0)} % (${name(worst)}).

**What it means for a dose.** Every amount is volume × change wanted, so it is off by just as much. Where a rule says
${(100 * worst).toFixed(0)} % too much, chlorine meant to rise by 2.0 mg/L rises by ${(2 * (1 + worst)).toFixed(1)} mg/L, and acid for 10 mg/L of alkalinity takes ${(10 * (1 + worst)).toFixed(0)} mg/L.

## Where the rules lose their way

- **Depth.** The mean of the shallow and the deep end is the mean depth only of one even slope over an even width. A hopper, a long
  shallow half or a beach pulls it away by far more than the outline does.
- **Outline.** A box is 27 % more than the ellipse in it; an L has no factor; straight sides with round ends are ½ + π/8 of the
  box only where they are twice as long as wide.
- **What stands in it.** Steps, shelves and coves take water that no factor knows of.
- **7.5** gallons to a cubic foot is 0.26 % more than 1728/231.

## The rules

In each the depth is the mean of the floor's depth at the shallow and the deep end; length and width are those of the box.

${RULES.map(({ heading, words, source }) => `- **${heading}**: ${words}. (${source})`).join('\n')}
`
}
