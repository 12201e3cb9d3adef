import type { Point } from '../../basin/index.ts'

// A tenth of a millimetre: far below a pixel at any zoom, and it halves the text of a path.
const place = (value: number) => Math.round(value * 1e4) / 1e4

/** The `d` of an SVG path through straight pieces, counted from `origin` so that far coordinates keep their digits. */
export function ringsPath(rings: readonly (readonly Point[])[], origin: Point, isClosed: boolean): string {
  const parts: string[] = []
  for (const ring of rings) {
    ring.forEach((p, i) => {
      parts.push(`${i === 0 ? 'M' : 'L'}${place(p[0] - origin[0])} ${place(p[1] - origin[1])}`)
    })
    if (isClosed && ring.length > 0) parts.push('Z')
  }
  return parts.join('')
}
