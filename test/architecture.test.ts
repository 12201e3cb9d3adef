import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs'
import { dirname, join, relative, resolve } from 'node:path'
import { describe, expect, test } from 'vitest'

/** The order of the layers, written once: a layer may import only layers above it, through their index. */
const LAYERS = [
  'base',
  'units',
  'basin',
  'features',
  'survey',
  'water',
  'chemicals',
  'plan',
  'document',
  'derive',
  'cli',
  'state',
  'platform',
  'ui',
  'app',
] as const
type Layer = (typeof LAYERS)[number]
const PURE: readonly string[] = LAYERS.slice(0, LAYERS.indexOf('cli'))
const NEVER: Readonly<Record<string, readonly Layer[]>> = {
  water: ['basin', 'features', 'survey'],
  chemicals: ['basin', 'features', 'survey'],
  plan: ['basin', 'features', 'survey'],
  ui: ['platform', 'cli'],
  state: ['cli'],
  platform: ['cli'],
  app: ['cli'],
}
const MAX_LINES = 400
/** Packages that a pure layer may use: pure themselves. */
const PURE_PACKAGES: readonly string[] = ['valibot', '@valibot/to-json-schema', 'fflate', 'robust-predicates', 'earcut']
const IMPURE_NAMES =
  /\b(Date\.now|new Date\(\)|Math\.random|performance\.|window\.|document\.(create|query|get)|fetch\(|localStorage|setTimeout|setInterval)/

const root = resolve(import.meta.dirname, '..')
const src = join(root, 'src')

function filesUnder(folder: string): string[] {
  return readdirSync(folder).flatMap((name) => {
    const path = join(folder, name)
    return statSync(path).isDirectory() ? filesUnder(path) : /\.(ts|tsx)$/.test(name) ? [path] : []
  })
}

interface Import {
  readonly file: string
  readonly from: string
}

const files = filesUnder(src)
const textOf = new Map(files.map((file) => [file, readFileSync(file, 'utf8')]))
const imports: readonly Import[] = files.flatMap((file) =>
  [
    ...(textOf.get(file) ?? '').matchAll(
      /^(?:import|export)\b[^'"]*?\bfrom\s+'([^']+)'|^import\s+'([^']+)'|\bimport\(\s*'([^']+)'/gm,
    ),
  ].map((m) => ({ file, from: m[1] ?? m[2] ?? m[3] ?? '' })),
)
const layerOf = (file: string) => relative(src, file).split('/')[0] ?? ''

describe('the layers hold', () => {
  test('every folder of src is a known layer, and the reader of imports sees imports', () => {
    for (const name of readdirSync(src)) expect(LAYERS).toContain(name)
    expect(imports.length).toBeGreaterThan(20)
  })

  test('a layer imports only layers above it, through their index', () => {
    const wrong = imports.flatMap(({ file, from }) => {
      if (!from.startsWith('.')) return []
      const target = resolve(dirname(file), from)
      const mine = layerOf(file)
      const theirs = layerOf(target)
      const where = `${relative(root, file)} imports ${from}`
      if (!target.startsWith(src)) return [`${where}: outside src`]
      if (mine === theirs) return []
      if (LAYERS.indexOf(theirs as Layer) > LAYERS.indexOf(mine as Layer))
        return [`${where}: ${theirs} is below ${mine}`]
      if (NEVER[mine]?.includes(theirs as Layer)) return [`${where}: ${mine} never imports ${theirs}`]
      if (!/^index\.tsx?$/.test(relative(join(src, theirs), target))) return [`${where}: not through its index`]
      return []
    })
    expect(wrong).toEqual([])
  })

  test('a pure layer has no clock, chance, network or browser, and uses pure packages only', () => {
    const wrong = files
      .filter((file) => PURE.includes(layerOf(file)))
      .flatMap((file) => {
        const text = (textOf.get(file) ?? '').replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, '')
        const hit = IMPURE_NAMES.exec(text)
        return hit ? [`${relative(root, file)}: ${hit[0]}`] : []
      })
    const packages = imports
      .filter(
        ({ file, from }) => PURE.includes(layerOf(file)) && !from.startsWith('.') && !PURE_PACKAGES.includes(from),
      )
      .map(({ file, from }) => `${relative(root, file)}: ${from}`)
    expect([...wrong, ...packages]).toEqual([])
  })

  test('each pure layer is type-checked without the DOM', () => {
    for (const layer of PURE.filter((name) => existsSync(join(src, name)))) {
      const config = JSON.parse(readFileSync(join(src, layer, 'tsconfig.json'), 'utf8'))
      expect(config.compilerOptions.lib, layer).toEqual(['ES2023'])
    }
  })

  test('an index names what it exports', () => {
    const wrong = files.filter(
      (file) => /^index\.tsx?$/.test(file.split('/').pop() ?? '') && /export \*/.test(textOf.get(file) ?? ''),
    )
    expect(wrong).toEqual([])
  })

  test(`no file is longer than ${MAX_LINES} lines`, () => {
    const long = files.map((file) => [relative(root, file), (textOf.get(file) ?? '').split('\n').length] as const)
    expect(long.filter(([, lines]) => lines > MAX_LINES)).toEqual([])
  })

  test('no file is called utils', () => {
    expect(files.filter((file) => /utils?\.tsx?$/.test(file))).toEqual([])
  })
})
