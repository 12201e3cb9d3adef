import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import Ajv2020 from 'ajv/dist/2020.js'
import { describe, expect, test } from 'vitest'
import { blankSpec, demoSpec, toJson, validateSpec } from '../../src/document/index.ts'
import { specJsonSchema } from '../support/spec-json-schema.ts'
import { richSpec } from './samples.ts'

const FILE = join(import.meta.dirname, '../../public/schema/spec-1.json')
const text = `${JSON.stringify(specJsonSchema(), null, 2)}\n`
if (process.env['UPDATE_SCHEMA'] === '1') writeFileSync(FILE, text)

const ajv = new Ajv2020({ strict: false, allErrors: true })
ajv.addFormat('date-time', true)
const accepts = ajv.compile(JSON.parse(text))

const json = (value: unknown): { [key: string]: unknown } => JSON.parse(JSON.stringify(value))

describe('the published schema', () => {
  test('is the one that the program checks with: after a change run UPDATE_SCHEMA=1 npx vitest run test/document/schema.test.ts', () => {
    expect(existsSync(FILE)).toBe(true)
    expect(readFileSync(FILE, 'utf8')).toBe(text)
  })

  test('says JSON Schema 2020-12 and refers to each part once', () => {
    const schema = json(specJsonSchema())
    expect(schema['$schema']).toBe('https://json-schema.org/draft/2020-12/schema')
    expect(Object.keys(schema['$defs'] as object)).toEqual(
      expect.arrayContaining([
        'Path',
        'Floor',
        'Feature',
        'System',
        'ReadingSet',
        'LabelledProduct',
        'Device',
        'Start',
      ]),
    )
  })

  test('accepts the demonstration, a blank sheet, a rich one and the frozen sample', () => {
    const sample = readFileSync(join(import.meta.dirname, '../golden/document/spec-1.sample.json'), 'utf8')
    for (const spec of [demoSpec, blankSpec(), richSpec])
      expect(accepts(JSON.parse(toJson(spec))), ajv.errorsText(accepts.errors)).toBe(true)
    expect(accepts(JSON.parse(sample)), ajv.errorsText(accepts.errors)).toBe(true)
  })

  test('agrees with the program on what is wrong with a value', () => {
    const edits: [string, (spec: ReturnType<typeof json>) => void][] = [
      ['no format', (spec) => delete spec['format']],
      ['another version', (spec) => (spec['version'] = 7)],
      ['bodies not a list', (spec) => (spec['bodies'] = {})],
      ['site a list', (spec) => (spec['site'] = [])],
      ['three numbers for a point', (spec) => (at(spec, 'bodies', 0, 'outline')['start'] = [0, 1, 2])],
      ['text for a number', (spec) => (at(spec, 'bodies', 0)['levelM'] = '0')],
      ['one control point', (spec) => delete at(spec, 'bodies', 0, 'outline', 'segments', 0)['c1']],
      ['bulge and controls', (spec) => (at(spec, 'bodies', 0, 'outline', 'segments', 0)['bulge'] = 1)],
      ['a floor of no known kind', (spec) => (at(spec, 'bodies', 0, 'floor')['kind'] = 'dished')],
      ['a floor by soundings without any', (spec) => (at(spec, 'bodies', 0, 'floor')['kind'] = 'soundings')],
      ['a wall that leans without saying how', (spec) => (at(spec, 'bodies', 0)['wall'] = { kind: 'battered' })],
      [
        'a bench nowhere',
        (spec) => (at(spec, 'bodies', 0, 'features')[0 as never] = { kind: 'bench', depthM: 0.4 } as never),
      ],
      ['no depth', (spec) => delete at(spec, 'bodies', 0, 'features', 0)['depthM']],
      ['pH 15', (spec) => (at(spec, 'systems', 0, 'water', 'fill', 'values')['pH'] = 15)],
      ['an unknown method', (spec) => (at(spec, 'systems', 0, 'water', 'fill')['method'] = 'tongue')],
      ['latitude 91', (spec) => (at(spec, 'site')['latitudeDeg'] = 91)],
      [
        'eleven months',
        (spec) =>
          (at(spec, 'site')['climate'] = Array.from({ length: 11 }, () => ({
            airC: 9,
            humidityPercent: 50,
            windMPerS: 1,
            sunshine: 0.5,
          }))),
      ],
      ['an empty id', (spec) => (at(spec, 'systems', 0)['id'] = '')],
      ['an unknown objective', (spec) => (at(spec, 'systems', 0, 'regime')['objective'] = 'prettiest')],
      ['negative copper', (spec) => (at(spec, 'systems', 0, 'water', 'fill', 'values')['copper_mg_per_L'] = -1)],
      [
        'a price below zero',
        (spec) => (at(spec, 'systems', 0)['prices'] = [{ product: 'salt', packageLabel: '25 kg bag', price: -1 }]),
      ],
      ['a start without its day', (spec) => (at(spec, 'systems', 0)['start'] = { mode: 'party' })],
      [
        'a device that is neither new nor not',
        (spec) => (at(spec, 'systems', 0, 'equipment')['devices'] = [{ id: 'a', kind: 'bucket', name: 'A', held: [] }]),
      ],
      ['a null level', (spec) => (at(spec, 'bodies', 0)['levelM'] = null)],
    ]
    for (const [name, edit] of edits) {
      const spec = json(demoSpec)
      expect(accepts(spec)).toBe(true)
      edit(spec)
      expect(validateSpec(spec).ok, name).toBe(false)
      expect(accepts(spec), name).toBe(false)
    }
  })
})

function at(value: unknown, ...path: (string | number)[]): { [key: string]: unknown } {
  let found = value as { [key: string | number]: unknown }
  for (const key of path) found = found[key] as typeof found
  return found
}
