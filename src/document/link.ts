import { deflateSync, Inflate, strFromU8, strToU8 } from 'fflate'
import { fail, type Problem, type Result } from '../base/index.ts'
import { fromBase64Url, toBase64Url } from './base64url.ts'
import { crc32 } from './crc32.ts'
import { fromJson, toLine } from './json.ts'
import { type ProblemCode, problem } from './problems.ts'
import type { Spec } from './types.ts'

/** In the fragment, so that no server sees it: #spec1=… is the check sum and the deflated JSON, as base64url. */
const TAG = 'spec1='
const CHECK_BYTES = 4
/** Longer links are not even looked at [characters]. */
const LONGEST_LINK = 1_500_000
/** What a link may unfold to; the rest is not unfolded [bytes]. */
const LARGEST_JSON = 2_000_000
/** Small pieces, so that a bomb is noticed before it has gone off: deflate unfolds to 1032 times its size at most. */
const PIECE = 512

/** The spec as a link below `baseUrl`; every number keeps its last digit. */
export function linkOf(spec: Spec, baseUrl: string): string {
  const packed = deflateSync(strToU8(toLine(spec)), { level: 9 })
  const bytes = new Uint8Array(CHECK_BYTES + packed.length)
  new DataView(bytes.buffer).setUint32(0, crc32(packed))
  bytes.set(packed, CHECK_BYTES)
  return `${baseUrl.replace(/#.*$/s, '')}#${TAG}${toBase64Url(bytes)}`
}

/** The spec out of a link, or out of its part from # on. Breaks that a mail program put in are taken out. */
export function specFromLink(url: string): Result<Spec, readonly Problem[]> {
  const refuse = (code: ProblemCode) => fail([problem(code, '')])
  if (url.length > LONGEST_LINK) return refuse('link-too-long')
  const fragment = url
    .slice(url.indexOf('#') + 1)
    .replace(/\s+/g, '')
    .replace(/^spec1%3d/i, TAG)
  if (!url.includes('#') || !fragment.startsWith(TAG)) return refuse('not-a-link')
  const bytes = fromBase64Url(fragment.slice(TAG.length))
  if (bytes === undefined || bytes.length <= CHECK_BYTES) return refuse('link-damaged')
  const packed = bytes.subarray(CHECK_BYTES)
  if (new DataView(bytes.buffer).getUint32(0) !== crc32(packed)) return refuse('link-damaged')
  const text = unfold(packed)
  return typeof text === 'string' ? fromJson(text) : refuse(text.trouble)
}

/** Whether a link to this spec could be opened again. */
export function fitsInLink(spec: Spec): boolean {
  return toLine(spec).length * 3 <= LARGEST_JSON || strToU8(toLine(spec)).length <= LARGEST_JSON
}

function unfold(packed: Uint8Array): string | { readonly trouble: ProblemCode } {
  const pieces: Uint8Array[] = []
  let size = 0
  let isWhole = false
  const inflate = new Inflate((piece, final) => {
    size += piece.length
    pieces.push(piece)
    isWhole = final
  })
  try {
    for (let at = 0; at < packed.length; at += PIECE) {
      inflate.push(packed.subarray(at, at + PIECE), at + PIECE >= packed.length)
      if (size > LARGEST_JSON) return { trouble: 'link-too-long' }
    }
  } catch {
    // The library throws on data that isn't deflated; for the reader of the link that is one thing: damage.
    return { trouble: 'link-damaged' }
  }
  if (!isWhole) return { trouble: 'link-damaged' }
  const whole = new Uint8Array(size)
  let at = 0
  for (const piece of pieces) {
    whole.set(piece, at)
    at += piece.length
  }
  return strFromU8(whole)
}
