import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import {
  blankSpec,
  demoSpec,
  demoSpecAt,
  fromJson,
  migrate,
  NEWEST_VERSION,
  toJson,
  validateSpec,
} from '../../src/document/index.ts'
import { richSpec } from './samples.ts'

describe('versions', () => {
  test('the frozen sample of version 1 loads, and keeps every key and digit', () => {
    const text = readFileSync(join(import.meta.dirname, '../golden/document/spec-1.sample.json'), 'utf8')
    const result = fromJson(text)
    if (!result.ok) throw new Error(JSON.stringify(result.problem))
    expect(JSON.parse(toJson(result.value))).toEqual(JSON.parse(text))
    expect(result.value.bodies[0]).toMatchObject({ hue: 'kept', sketch: { scaleSigma: 0.2, knownLengthM: 11 } })
  })

  test('there is a frozen sample of every version', () => {
    for (let version = 1; version <= NEWEST_VERSION; version++) {
      const sample = JSON.parse(
        readFileSync(join(import.meta.dirname, `../golden/document/spec-${version}.sample.json`), 'utf8'),
      )
      expect(sample.version).toBe(version)
      expect(migrate(sample)).toMatchObject({ ok: true, value: { version: NEWEST_VERSION } })
    }
  })
})

describe('the documents that come with the program', () => {
  test('are valid as they are', () => {
    for (const spec of [demoSpec, blankSpec(), richSpec, demoSpecAt(1.79e12)])
      expect(validateSpec(spec)).toEqual({ ok: true, value: spec })
  })

  test('the demonstration can be dated to any moment, its intervals kept', () => {
    const moved = demoSpecAt(Date.parse('2027-06-01T12:00:00Z'))
    expect(moved.systems[0]!.water.readings[0]!.at).toBe('2027-06-01T12:00:00.000Z')
    const gap = (spec: typeof demoSpec) =>
      Date.parse(spec.systems[0]!.water.readings[0]!.at) - Date.parse(spec.systems[0]!.water.fill!.at)
    expect(gap(moved)).toBe(gap(demoSpec))
  })
})
