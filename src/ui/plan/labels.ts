import type { Point } from '../../basin/index.ts'

/** A box on the screen around a label's middle [px]. */
export interface Box {
  readonly x: number
  readonly y: number
  readonly halfWidth: number
  readonly halfHeight: number
}

/** About how wide text is, without measuring it [px]; generous, so that labels keep apart. */
export function boxOfText(text: string, [x, y]: Point, sizePx: number): Box {
  return { x, y, halfWidth: (text.length * sizePx * 0.52) / 2 + 2, halfHeight: sizePx * 0.6 + 1 }
}

export function boxesTouch(a: Box, b: Box): boolean {
  return Math.abs(a.x - b.x) < a.halfWidth + b.halfWidth && Math.abs(a.y - b.y) < a.halfHeight + b.halfHeight
}

/** A straight line on the screen from one point to another [px]. */
export type Stroke = readonly [Point, Point]

/** Whether a straight line enters a box. */
export function isCrossed(box: Box, [p, q]: Stroke): boolean {
  let [from, to] = [0, 1]
  for (const [start, end, middle, half] of [
    [p[0], q[0], box.x, box.halfWidth],
    [p[1], q[1], box.y, box.halfHeight],
  ] as const) {
    const run = end - start
    if (run === 0) {
      if (Math.abs(start - middle) >= half) return false
      continue
    }
    const [t1, t2] = [(middle - half - start) / run, (middle + half - start) / run]
    from = Math.max(from, Math.min(t1, t2))
    to = Math.min(to, Math.max(t1, t2))
  }
  return from < to
}

/** The first candidates, in order, that touch neither what is there nor one another. */
export function placeLabels<T extends { readonly box: Box }>(candidates: readonly T[], taken: readonly Box[]): T[] {
  const boxes = [...taken]
  return candidates.filter((candidate) => {
    if (boxes.some((box) => boxesTouch(box, candidate.box))) return false
    boxes.push(candidate.box)
    return true
  })
}

/** Good places for a label on a line, best first: in the middle of its straightest long stretches. */
export function placesOnLine(line: readonly Point[], widthPx: number): Point[] {
  const lengths = [0]
  for (let i = 1; i < line.length; i++) {
    const a = line[i - 1] as Point
    const b = line[i] as Point
    lengths.push((lengths[i - 1] ?? 0) + Math.hypot(b[0] - a[0], b[1] - a[1]))
  }
  const total = lengths.at(-1) ?? 0
  if (total < widthPx * 2) return []
  const at = (s: number): Point => {
    let i = lengths.findIndex((length) => length >= s)
    if (i <= 0) i = 1
    const a = line[i - 1] as Point
    const b = line[i] as Point
    const t = (s - (lengths[i - 1] ?? 0)) / ((lengths[i] ?? 1) - (lengths[i - 1] ?? 0) || 1)
    return [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t]
  }
  const places = [0.28, 0.72, 0.5, 0.16, 0.84].map((share) => {
    const s = Math.min(total - widthPx / 2, Math.max(widthPx / 2, share * total))
    const [a, b] = [at(s - widthPx / 2), at(s + widthPx / 2)]
    const straightness = Math.hypot(b[0] - a[0], b[1] - a[1]) / widthPx
    return { at: at(s), straightness }
  })
  return places.filter((place) => place.straightness > 0.8).map((place) => place.at)
}
