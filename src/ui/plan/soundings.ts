import type { DepthSample, Point } from '../../basin/index.ts'
import { type Box, boxOfText, placeLabels } from './labels.ts'

export interface Sounding {
  readonly at: Point
  readonly depthM: number
  readonly text: string
  readonly box: Box
}

export interface SoundingField {
  /** The drawing's box on the screen [px]. */
  readonly box: { readonly minX: number; readonly minY: number; readonly maxX: number; readonly maxY: number }
  readonly sample: (screen: Point) => DepthSample | undefined
  readonly write: (depthM: number) => string
  readonly taken: readonly Box[]
  readonly sizePx: number
  /** Figures about this far apart [px]. */
  readonly apartPx: number
}

const CLEAR_PX = 9
const MOST = 22

/** A figure needs water all round it: its own box, sampled at the corners, lies in one part. */
function hasRoom(field: SoundingField, [x, y]: Point, sample: DepthSample, box: Box): boolean {
  const w = box.halfWidth + 3
  const h = box.halfHeight + 2
  const around: Point[] = [
    [x - w, y - h],
    [x + w, y - h],
    [x - w, y + h],
    [x + w, y + h],
    [x - w - CLEAR_PX, y],
    [x + w + CLEAR_PX, y],
    [x, y - h - CLEAR_PX],
    [x, y + h + CLEAR_PX],
  ]
  return around.slice(0, sample.feature === undefined ? 8 : 4).every((p) => {
    const other = field.sample(p)
    if (!other || other.feature !== sample.feature) return false
    return sample.feature === undefined || Math.abs(other.depthM - sample.depthM) < 0.02
  })
}

/** One figure for each shelf and tread that has room for it, where it is roomiest. */
function featureSoundings(field: SoundingField): Sounding[] {
  const { box } = field
  const found = new Map<string, { at: Point; depthM: number; sumX: number; sumY: number; n: number; all: Point[] }>()
  const step = Math.max(7, (box.maxX - box.minX) / 110)
  for (let y = box.minY; y <= box.maxY; y += step) {
    for (let x = box.minX; x <= box.maxX; x += step) {
      const sample = field.sample([x, y])
      if (sample?.feature === undefined) continue
      const key = `${sample.feature}:${Math.round(sample.depthM * 100)}`
      const entry = found.get(key) ?? { at: [x, y], depthM: sample.depthM, sumX: 0, sumY: 0, n: 0, all: [] }
      entry.sumX += x
      entry.sumY += y
      entry.n++
      entry.all.push([x, y])
      found.set(key, entry)
    }
  }
  const soundings: Sounding[] = []
  for (const entry of found.values()) {
    const cx = entry.sumX / entry.n
    const cy = entry.sumY / entry.n
    const text = field.write(entry.depthM)
    const near = entry.all.sort((a, b) => Math.hypot(a[0] - cx, a[1] - cy) - Math.hypot(b[0] - cx, b[1] - cy))
    for (const at of near) {
      const sample = field.sample(at)
      const place = boxOfText(text, at, field.sizePx)
      if (sample && hasRoom(field, at, sample, place)) {
        soundings.push({ at, depthM: entry.depthM, text, box: place })
        break
      }
    }
  }
  return soundings
}

/** Depth figures where they can be read: one a shelf or tread, then a staggered field of them over the floor. */
export function placeSoundings(field: SoundingField): Sounding[] {
  const { box, apartPx } = field
  const candidates: Sounding[] = featureSoundings(field)
  const rows = Math.max(1, Math.round((box.maxY - box.minY) / apartPx))
  const columns = Math.max(1, Math.round((box.maxX - box.minX) / (apartPx * 1.25)))
  for (let r = 0; r < rows; r++) {
    for (let c = 0; c < columns; c++) {
      const y = box.minY + ((r + 0.5) / rows) * (box.maxY - box.minY)
      const x = box.minX + ((c + (r % 2 === 0 ? 0.36 : 0.68)) / columns) * (box.maxX - box.minX)
      // A place taken by a line or a handle may have free water beside it.
      for (const [dx, dy] of [[0, 0], [0, -18], [0, 18], [-24, 0], [24, 0]] as const) {
        const at: Point = [x + dx, y + dy]
        const sample = field.sample(at)
        if (!sample || sample.feature !== undefined) continue
        const text = field.write(sample.depthM)
        const place = boxOfText(text, at, field.sizePx)
        const clearOf = candidates.every((other) => Math.hypot(other.at[0] - at[0], other.at[1] - at[1]) > apartPx * 0.55)
        if (!clearOf || !hasRoom(field, at, sample, place)) continue
        if (placeLabels([{ box: place }], field.taken).length === 0) continue
        candidates.push({ at, depthM: sample.depthM, text, box: place })
        break
      }
    }
  }
  return placeLabels(candidates, field.taken).slice(0, MOST)
}
