import fc from 'fast-check'
import { deflateSync, strToU8 } from 'fflate'
import { describe, expect, test } from 'vitest'
import { fromBase64Url, toBase64Url } from '../../src/document/base64url.ts'
import { crc32 } from '../../src/document/crc32.ts'
import {
  applyCommand,
  command,
  demoSpec,
  fitsInLink,
  fromJson,
  linkOf,
  type Spec,
  specFromLink,
  toJson,
} from '../../src/document/index.ts'
import { bodyOf, richSpec } from './samples.ts'

const SEED = 20261124
const BASE = 'https://pools.example/shoalbook/'
const codeOf = (url: string) => {
  const result = specFromLink(url)
  return result.ok ? 'ok' : result.problem[0]!.code
}
const linkOfBytes = (packed: Uint8Array) => {
  const bytes = new Uint8Array(4 + packed.length)
  new DataView(bytes.buffer).setUint32(0, crc32(packed))
  bytes.set(packed, 4)
  return `${BASE}#spec1=${toBase64Url(bytes)}`
}

describe('a link', () => {
  test('carries the spec to the last digit of every number', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), { minLength: 6, maxLength: 6 }), (n) => {
        const outline = {
          start: [n[0]!, n[1]!],
          segments: [{ to: [n[2]!, n[3]!] }, { to: [n[4]!, n[5]!], bulge: 0.1 + 0.2 }],
        } as const
        const spec: Spec = { ...demoSpec, bodies: [{ ...bodyOf(richSpec), outline }] }
        const back = specFromLink(linkOf(spec, BASE))
        if (!back.ok) throw new Error(back.problem[0]!.what)
        const got = back.value.bodies[0]!.outline
        for (const [i, x] of [...got.start, ...got.segments.flatMap((s) => s.to)].entries())
          expect(x === n[i]).toBe(true)
        expect(got.segments[1]!.bulge).toBe(0.30000000000000004)
      }),
      { seed: SEED, numRuns: 200 },
    )
  })

  test('stays below 2,000 characters for the demonstration pool, in the fragment alone, of URL characters only', () => {
    const url = linkOf(demoSpec, `${BASE}?lang=en#old`)
    expect(url.length).toBeLessThan(2000)
    expect(url.startsWith(`${BASE}?lang=en#spec1=`)).toBe(true)
    expect(new URL(url).hash).toBe(url.slice(url.indexOf('#')))
    expect(url.split('#')[1]).toMatch(/^spec1=[A-Za-z0-9_-]+$/)
    expect(linkOf(demoSpec, BASE)).toBe(linkOf(JSON.parse(JSON.stringify(demoSpec)) as Spec, BASE))
  })

  test('opens from its fragment alone, through line breaks and an escaped sign', () => {
    const url = linkOf(demoSpec, BASE)
    const hash = url.slice(url.indexOf('#'))
    const broken = `${url.slice(0, 300)}\r\n  ${url.slice(300)}\n`
    for (const form of [url, hash, broken, url.replace('spec1=', 'spec1%3D')]) {
      const result = specFromLink(form)
      expect(result.ok && toJson(result.value)).toBe(toJson(demoSpec))
    }
  })

  test('cut off anywhere, or with any one character changed, is refused as damaged', () => {
    const url = linkOf(demoSpec, BASE)
    const start = url.indexOf('=') + 1
    for (let cut = start; cut < url.length; cut += 7) expect(codeOf(url.slice(0, cut))).toBe('link-damaged')
    for (let i = start; i < url.length; i += 5) {
      const other = url[i] === 'A' ? 'B' : 'A'
      expect(codeOf(url.slice(0, i) + other + url.slice(i + 1))).toBe('link-damaged')
    }
  })

  test('without a spec, of another kind, or of a spec that isn’t one, is refused as such', () => {
    expect(['', '#', BASE, `${BASE}#top`, `${BASE}#spec2=AAAA`, 'spec1=AAAA'].map(codeOf)).toEqual(
      Array(6).fill('not-a-link'),
    )
    expect([`${BASE}#spec1=`, `${BASE}#spec1=%%%`, `${BASE}#spec1=AAAA`].map(codeOf)).toEqual(
      Array(3).fill('link-damaged'),
    )
    expect(codeOf(linkOfBytes(deflateSync(strToU8('{"format":"other"}'))))).toBe('not-a-spec')
    expect(codeOf(linkOfBytes(deflateSync(strToU8('{"format":'))))).toBe('not-json')
    expect(codeOf(linkOfBytes(strToU8('this is not deflated')))).toBe('link-damaged')
  })

  test('that would unfold far beyond any spec is stopped, and an endless one not read', () => {
    expect(codeOf(linkOfBytes(deflateSync(new Uint8Array(20_000_000), { level: 9 })))).toBe('link-too-long')
    expect(codeOf(`${BASE}#spec1=${'A'.repeat(2_000_000)}`)).toBe('link-too-long')
  }, 20_000)

  test('says beforehand when a spec is too large for it', () => {
    const note = command('addNote', { systemId: 'pool', at: '2026-05-01T08:00:00Z', text: 'x'.repeat(4000) })
    const once = applyCommand(richSpec, note)
    if (!once.ok) throw new Error(once.problem.code)
    expect(fitsInLink(once.value)).toBe(true)
    const [entry] = once.value.systems[0]!.log
    const log = Array.from({ length: 600 }, (_, i) => ({ ...entry!, id: `n${i}` }))
    const large: Spec = { ...richSpec, systems: [{ ...richSpec.systems[0]!, log }] }
    expect(fitsInLink(large)).toBe(false)
    expect(codeOf(linkOf(large, BASE))).toBe('link-too-long')
  })

  test('of any text at all is a spec or a problem, never a throw', () => {
    const text = fc.oneof(
      fc.string(),
      fc.webUrl({ withFragments: true }),
      fc.string().map((s) => `#spec1=${s}`),
      fc.uint8Array({ maxLength: 400 }).map(linkOfBytes),
      fc.jsonValue().map((j) => linkOfBytes(deflateSync(strToU8(JSON.stringify(j))))),
    )
    fc.assert(
      fc.property(text, (url) => void specFromLink(url)),
      { seed: SEED, numRuns: 1500 },
    )
  })
})

describe('the pieces of a link', () => {
  test('CRC-32 of "123456789" is CBF43926 (the check value of the CRC catalogue)', () => {
    expect(crc32(strToU8('123456789')).toString(16)).toBe('cbf43926')
  })
  test('base64url follows RFC 4648 §10, with its own two characters and no padding', () => {
    expect(['', 'f', 'fo', 'foo', 'foob', 'fooba', 'foobar'].map((s) => toBase64Url(strToU8(s)))).toEqual([
      '',
      'Zg',
      'Zm8',
      'Zm9v',
      'Zm9vYg',
      'Zm9vYmE',
      'Zm9vYmFy',
    ])
    expect(toBase64Url(new Uint8Array([251, 255, 254]))).toBe('-__-')
    fc.assert(
      fc.property(fc.uint8Array(), (bytes) => void expect(fromBase64Url(toBase64Url(bytes))).toEqual(bytes)),
      { seed: SEED },
    )
    expect([fromBase64Url('A'), fromBase64Url('AB'), fromBase64Url('A=='), fromBase64Url('A+/A')]).toEqual([
      undefined,
      undefined,
      undefined,
      undefined,
    ])
  })
})

describe('the saved text', () => {
  test('has one order of keys, points on one line, and reads back to itself', () => {
    const text = toJson(demoSpec)
    const shuffled = JSON.parse(text, (_, value) =>
      typeof value === 'object' && value !== null && !Array.isArray(value)
        ? Object.fromEntries(Object.entries(value).reverse())
        : value,
    ) as Spec
    expect(toJson(shuffled)).toBe(text)
    expect(text).toContain('"stations": [[0, 1.1], [3, 1.2], [5.4, 1.5], [7.6, 2.15], [10.2, 2.2]]')
    expect(
      text.startsWith('{\n  "format": "shoalbook-spec",\n  "version": 1,\n  "name": "Heron Lane",\n  "bodies": [\n'),
    ).toBe(true)
    expect(Math.max(...text.split('\n').map((line) => line.length))).toBeLessThan(121)
    expect(fromJson(text)).toEqual({ ok: true, value: demoSpec })
  })
})
