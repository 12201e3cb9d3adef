import type { Body, RingRef } from '../../../document/index.ts'
import { FEATURES } from '../../../features/index.ts'
import type { Selection } from '../../../state/index.ts'

export interface NamedPlace {
  readonly words: string
  /** What on the sheet it is, if it can be selected there. */
  readonly selection?: Selection
}

type Read = (match: RegExpExecArray, body: Body) => NamedPlace

const first = (match: RegExpExecArray) => Number(match[1])

/** Node i of a path is its start or the end of the segment before: names of the document to numbers of people. */
const nodeOf = (end: string | undefined) =>
  end === undefined || end === 'start' ? 0 : Number(/\d+/.exec(end)?.[0] ?? 0) + 1

function node(body: Body, ring: RingRef, end: string | undefined, whose: string): NamedPlace {
  const path =
    ring.of === 'outline' ? body.outline : ring.of === 'island' ? body.islands[ring.index] : pathOfContour(body, ring)
  const count = Math.max(1, path?.segments.length ?? 1)
  // The end of the last segment is the start again.
  const last = path?.segments.at(-1)?.to
  const isClosed = last !== undefined && last[0] === path?.start[0] && last[1] === path?.start[1]
  const index = nodeOf(end) % (isClosed ? count : count + 1)
  return {
    words: `Point ${index + 1} of ${whose}`,
    selection: { kind: 'node', bodyId: body.id, ring, node: index },
  }
}

function pathOfContour(body: Body, ring: RingRef) {
  return body.floor.kind === 'contours' && ring.of === 'contour' ? body.floor.rings[ring.index]?.path : undefined
}

/** What each place of a body is called, by where it stands in the document. */
const PLACES: readonly (readonly [RegExp, Read])[] = [
  [/^outline\.(start|segments\[\d+\]\.to)/, (m, body) => node(body, { of: 'outline' }, m[1], 'the outline')],
  [
    /^islands\[(\d+)\]\.(start|segments\[\d+\]\.to)/,
    (m, body) => node(body, { of: 'island', index: first(m) }, m[2], `island ${first(m) + 1}`),
  ],
  [
    /^floor\.rings\[(\d+)\]\.path\.(start|segments\[\d+\]\.to)/,
    (m, body) => node(body, { of: 'contour', index: first(m) }, m[2], `depth line ${first(m) + 1}`),
  ],
  [
    /^floor\.rings\[(\d+)\]\.depthM/,
    (m, body) => ({
      words: `Depth of line ${first(m) + 1}`,
      selection: { kind: 'contour', bodyId: body.id, contour: first(m) },
    }),
  ],
  [
    /^floor\.stations\[(\d+)\]/,
    (m, body) => ({
      words: `Depth of station ${first(m) + 1}`,
      selection: { kind: 'station', bodyId: body.id, station: first(m) },
    }),
  ],
  [
    /^floor\.points\[(\d+)\]/,
    (m, body) => ({
      words: `Sounding ${first(m) + 1}`,
      selection: { kind: 'sounding', bodyId: body.id, sounding: first(m) },
    }),
  ],
  [/^floor\.edgeDepthM/, () => ({ words: 'Depth at the walls' })],
  [
    /^floor\.depthM/,
    (_, body) =>
      body.floor.kind === 'dish'
        ? { words: 'Depth in the middle of the hollow', selection: { kind: 'dish', bodyId: body.id, part: 'centre' } }
        : { words: 'Depth of the floor' },
  ],
  [
    /^features\[(\d+)\]/,
    (m, body) => {
      const feature = body.features[first(m)]
      const label = (feature && FEATURES.get(feature.kind)?.label) ?? 'Feature'
      return {
        words: `Depth of ${label.toLowerCase()} ${first(m) + 1}`,
        selection: { kind: 'feature', bodyId: body.id, feature: first(m) },
      }
    },
  ],
]

/** A measurement by where it stands in a body, in the words of the sheet. */
export function placeWords(path: string, body: Body): NamedPlace {
  for (const [pattern, read] of PLACES) {
    const match = pattern.exec(path)
    if (match) return read(match, body)
  }
  return { words: path }
}
