import type { DepthSample, Point } from '../../basin/index.ts'
import { type Box, boxOfText, placeLabels } from './labels.ts'

export interface Sounding {
  readonly at: Point
  readonly depthM: number
  readonly text: string
  readonly box: Box
}

/** A shelf or tread, on the screen [px]. */
export interface Spot {
  readonly feature: number
  readonly depthM: number
  readonly areaM2: number
  readonly middle: Point
  readonly box: ScreenBox
}

export interface ScreenBox {
  readonly minX: number
  readonly minY: number
  readonly maxX: number
  readonly maxY: number
}

export interface SoundingField {
  /** The drawing's box on the screen [px]. */
  readonly box: ScreenBox
  readonly spots: readonly Spot[]
  readonly sample: (screen: Point) => DepthSample | undefined
  readonly write: (depthM: number) => string
  readonly taken: readonly Box[]
  readonly sizePx: number
  /** Figures about this far apart [px]. */
  readonly apartPx: number
}

/** Less than this is no depth to write down, as under a wall that takes all of the water [m]. */
const LEAST_M = 5e-3
const CLEAR_PX = 9
const MOST = 22
const SPOT_GRID = 8

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

/** One figure for each shelf and tread that has room for it, as near to its middle as there is room. */
function featureSoundings(field: SoundingField): Sounding[] {
  const soundings: Sounding[] = []
  const written = new Set<string>()
  for (const spot of [...field.spots].sort((a, b) => b.areaM2 - a.areaM2)) {
    const key = `${spot.feature}:${Math.round(spot.depthM * 200)}`
    if (written.has(key)) continue
    const places: Point[] = []
    for (let i = 0; i <= SPOT_GRID; i++) {
      for (let j = 0; j <= SPOT_GRID; j++) {
        const x = spot.box.minX + (i / SPOT_GRID) * (spot.box.maxX - spot.box.minX)
        const y = spot.box.minY + (j / SPOT_GRID) * (spot.box.maxY - spot.box.minY)
        places.push([x, y])
      }
    }
    const far = ([x, y]: Point) => Math.hypot(x - spot.middle[0], y - spot.middle[1])
    const text = field.write(spot.depthM)
    for (const at of [spot.middle, ...places.sort((a, b) => far(a) - far(b))]) {
      const sample = field.sample(at)
      if (sample?.feature !== spot.feature || Math.abs(sample.depthM - spot.depthM) > 0.02) continue
      const box = boxOfText(text, at, field.sizePx)
      if (!hasRoom(field, at, sample, box) || placeLabels([{ box }], field.taken).length === 0) continue
      soundings.push({ at, depthM: spot.depthM, text, box })
      written.add(key)
      break
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
      for (const [dx, dy] of [
        [0, 0],
        [0, -18],
        [0, 18],
        [-24, 0],
        [24, 0],
      ] as const) {
        const at: Point = [x + dx, y + dy]
        const sample = field.sample(at)
        if (!sample || sample.feature !== undefined || Math.abs(sample.depthM) < LEAST_M) continue
        const text = field.write(sample.depthM)
        const place = boxOfText(text, at, field.sizePx)
        const clearOf = candidates.every(
          (other) => Math.hypot(other.at[0] - at[0], other.at[1] - at[1]) > apartPx * 0.55,
        )
        if (!clearOf || !hasRoom(field, at, sample, place)) continue
        if (placeLabels([{ box: place }], field.taken).length === 0) continue
        candidates.push({ at, depthM: sample.depthM, text, box: place })
        break
      }
    }
  }
  return placeLabels(candidates, field.taken).slice(0, MOST)
}
