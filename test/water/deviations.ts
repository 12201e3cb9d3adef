import { runCommandLine } from '../../src/cli/run.ts'
import { goldenRows, shareOfTolerance } from './golden.ts'

type Numbers = Readonly<Record<string, number>>

/** The worst row of one column. */
interface Worst {
  readonly row: string
  readonly off: number
  readonly reference: number
  /** Of tier A; 1 is the limit. */
  readonly share: number
}

type Columns = Map<string, Worst>

function note(columns: Columns, row: string, mine: Numbers, reference: Numbers): void {
  for (const [column, expected] of Object.entries(reference)) {
    const value = mine[column]
    if (typeof value !== 'number') throw new Error(`${row}: ${column} is ${String(value)}`)
    const share = shareOfTolerance(column, value, expected)
    const known = columns.get(column)
    if (!known || share > known.share)
      columns.set(column, { row, off: Math.abs(value - expected), reference: expected, share })
  }
}

/** Lines through the command line, with the tables' own constants. */
function answers(verb: string, lines: readonly unknown[]) {
  const text = lines.map((line) => JSON.stringify(line)).join('\n')
  const { stdout } = runCommandLine([verb, '-', '--constants', 'oracle'], { readInput: () => text, nowMs: 0 })
  return stdout
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line))
}

const ACID = 'muriatic acid 31.45 % w/w HCl'
const SODA = 'soda ash anhydrous 100 %'
const BICARBONATE = 'sodium bicarbonate 100 %'
/** Product and grams behind each dose key of the inverse table. */
const DOSE_KEYS: Readonly<Record<string, readonly [product: string, gPerUnit: number]>> = {
  muriatic_acid_31p45_g_per_m3: [ACID, 1],
  muriatic_acid_31p45_mL_per_m3: [ACID, 1.16],
  acid_meq_per_kgw: [ACID, 1000 / 8.625678],
  HCl_mmol_per_kgw: [ACID, 1000 / 8.625678],
  sodium_bisulfate_93p2_g_per_m3: ['sodium bisulfate 93.2 % w/w NaHSO4', 1],
  sodium_bicarbonate_g_per_m3: [BICARBONATE, 1],
  NaHCO3_mmol_per_kgw: [BICARBONATE, 84.0066],
  soda_ash_g_per_m3: [SODA, 1],
  Na2CO3_mmol_per_kgw: [SODA, 105.9884],
  co2_g_per_m3: ['carbon dioxide 100 %', 1],
  borax_decahydrate_g_per_m3: ['borax decahydrate 100 %', 1],
}
/** Relative tolerance of a dose: the least that the tables suggest. */
const DOSE_TOLERANCE = 0.01

function noteDose(columns: Columns, row: string, name: string, mine: number, reference: number): void {
  const off = Math.abs(mine / reference - 1)
  const known = columns.get(name)
  if (!known || off / DOSE_TOLERANCE > known.share)
    columns.set(name, { row, off, reference: 1, share: off / DOSE_TOLERANCE })
}

function speciation(): Columns {
  const columns: Columns = new Map()
  const rows = goldenRows('speciation')
  answers('speciate', rows).forEach(({ output }, i) => {
    note(columns, rows[i]!.id, output, rows[i]!.output)
  })
  return columns
}

function doses(key: 'after_closed' | 'after_open_log10_pCO2_minus3p38'): Columns {
  const columns: Columns = new Map()
  const rows = goldenRows('dose_reactions')
  answers('dose', rows).forEach((answer, i) => {
    note(columns, rows[i]!.id, answer[key], rows[i]![key])
  })
  return columns
}

function blending(): Columns {
  const columns: Columns = new Map()
  const rows = goldenRows('blending')
  answers('blend', rows).forEach(({ output }, i) => {
    note(columns, rows[i]!.id, output, rows[i]!.output)
  })
  return columns
}

function inverse(): Columns {
  const columns: Columns = new Map()
  const rows = goldenRows('inverse') as unknown as readonly {
    readonly id: string
    readonly start: unknown
    readonly target: Numbers
    readonly dose: Numbers
    readonly after_closed: Numbers
  }[]
  const lines = rows.map((row) => ({
    start: row.start,
    target: row.target,
    products: [...new Set(Object.keys(row.dose).map((key) => DOSE_KEYS[key]![0]))],
  }))
  answers('target', lines).forEach(({ doses: found, after_closed: after }, i) => {
    const row = rows[i]!
    note(columns, row.id, after, row.after_closed)
    for (const [key, reference] of Object.entries(row.dose)) {
      const [product, gPerUnit] = DOSE_KEYS[key]!
      const amount = found.find((dose: { product: string }) => dose.product === product)?.gPerM3
      noteDose(columns, row.id, 'dose (relative)', amount / gPerUnit, reference)
    }
  })
  return columns
}

/** The fills’ doses given as the table has them, then air to the target pH where the row asks for it. */
function firstFill(): Columns {
  const columns: Columns = new Map()
  const rows = goldenRows('first_fill')
  const lines = rows.map((row) => ({
    start: row.start,
    add: [
      ...Object.entries(row.doses_g_per_m3).map(([product, gPerM3]) => ({ product, gPerM3 })),
      ...Object.entries(row.doses_mL_per_m3).map(([product, mLPerM3]) => ({ product, mLPerM3 })),
    ],
  }))
  answers('dose', lines).forEach(({ after_closed: after }, i) => {
    note(columns, rows[i]!.id, after, rows[i]!.after_closed)
  })
  return columns
}

const TABLES: readonly (readonly [title: string, verb: string, columns: () => Columns])[] = [
  ['Speciation', 'speciate', speciation],
  ['Dose reactions, kept from air', 'dose', () => doses('after_closed')],
  ['Dose reactions, in balance with air', 'dose', () => doses('after_open_log10_pCO2_minus3p38')],
  ['Blending, evaporation, air and heat', 'blend', blending],
  ['Inverse: the dose for a target', 'target', inverse],
  ['First fill: the table’s doses', 'dose', firstFill],
]

const rank = ({ share }: Worst) => (share < NOTHING ? 0 : share)
const short = (value: number) => (value === 0 ? '0' : String(Number(value.toPrecision(2))))

/** Below this share a deviation is rounding, and which row is worst means nothing. */
const NOTHING = 0.001

/** What each table says of its columns, worst first; rounding by name. */
export function deviations(): readonly {
  readonly title: string
  readonly verb: string
  readonly columns: readonly (readonly [column: string, worst: Worst])[]
}[] {
  return TABLES.map(([title, verb, columns]) => ({
    title,
    verb,
    columns: [...columns()].toSorted(([nameA, a], [nameB, b]) => rank(b) - rank(a) || (nameA < nameB ? -1 : 1)),
  }))
}

/** DEVIATIONS.md as it must read. */
export function deviationsDocument(): string {
  const parts = deviations().map(({ title, verb, columns }) => {
    const lines = columns.map(([column, { row, off, reference, share }]) =>
      share < NOTHING
        ? `| ${column} | – | – | – | < 0.1 % |`
        : `| ${column} | ${short(off)} | ${short(reference)} | ${row} | ${(share * 100).toFixed(1)} % |`,
    )
    return `## ${title}\n\nThrough \`cli ${verb} --constants oracle\`.\n\n| column | worst deviation | of | at | share of tier A |\n| --- | --- | --- | --- | --- |\n${lines.join('\n')}\n`
  })
  return `# How far from the golden tables

Written by \`npm run deviations\`, and held by \`test/water/deviations.test.ts\`; do not edit. The tables (\`test/golden/water\`) come from
USGS PHREEQC 3.6.3 with the same constants; tier A is \`test/golden/water/tolerance.json\`. A column's worst row is the one that uses up most of its
tolerance, absolute and relative together. 100 % would be the limit. A dose may be out by 1 %, the least that its table suggests.

${parts.join('\n')}`
}
