import type { BasinMesh } from '../../basin/index.ts'

/** Daylight in the basin on a raster over the plan; cell centres lie at origin + (i + ½) cell. */
export interface Skylight {
  readonly width: number
  readonly height: number
  readonly cellM: number
  readonly originX: number
  readonly originY: number
  /** Lowest and highest z of the shell [m]. */
  readonly lowM: number
  readonly rimM: number
  /** Four bytes a cell: share of the sky that is seen, share of the sun, height between low and rim, 255 inside. */
  readonly texels: Uint8Array
}

/** Toward the sun: behind the left shoulder of who looks at the plan upright, so that the far walls lie in its light. */
export const SUN = ((): readonly [number, number, number] => {
  const [x, y, z] = [-0.46, -0.3, 0.84]
  const length = Math.hypot(x, y, z)
  return [x / length, y / length, z / length]
})()
const RASTER = 128
const DIRECTIONS = 12
/** Paces grow, for near walls matter more than far ones. */
const PACE = 1.1
/** A horizon lower than this takes less than a hundredth of the light. */
const LOW_HORIZON = 0.08
/** Half-width of the sun's soft edge, as a slope. */
const PENUMBRA = 0.22
/** Cells whose heights differ by more belong to different treads and keep their own light [m]. */
const SAME_STEP_M = 0.12

/**
 * How much daylight reaches each place of the basin's floor.
 * Equation: sky = mean over directions of cos² h, h the height of the horizon there: the part of an even sky's light that
 * a level patch receives. At the middle of a round shaft of radius R and depth d this is R²/(R² + d²).
 * Accuracy: of a picture; the raster is about a hundredth of the basin.
 */
export function skylightOf(mesh: BasinMesh, raster = RASTER): Skylight {
  const { positions } = mesh
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity]
  let [lowM, rimM] = [Infinity, -Infinity]
  for (let i = 0; i < positions.length; i += 3) {
    const [x, y, z] = [positions[i]!, positions[i + 1]!, positions[i + 2]!]
    if (x < minX) minX = x
    if (x > maxX) maxX = x
    if (y < minY) minY = y
    if (y > maxY) maxY = y
    if (z < lowM) lowM = z
    if (z > rimM) rimM = z
  }
  const cellM = Math.max(maxX - minX, maxY - minY, 1e-3) / raster
  const width = Math.ceil((maxX - minX) / cellM) + 4
  const height = Math.ceil((maxY - minY) / cellM) + 4
  const originX = (minX + maxX - width * cellM) / 2
  const originY = (minY + maxY - height * cellM) / 2
  const grid: Raster = { width, height, cellM, originX, originY, rimM }
  const heights = heightsOf(mesh, grid)
  const texels = new Uint8Array(width * height * 4)
  const reach = reachOf(heights, rimM)
  const range = Math.max(rimM - lowM, 1e-6)
  for (let j = 0; j < height; j++)
    for (let i = 0; i < width; i++) {
      const at = j * width + i
      const h = heights[at]!
      if (!(h > -Infinity)) continue
      texels[at * 4] = Math.round(255 * skyAt(reach, grid, i, j))
      texels[at * 4 + 1] = Math.round(255 * sunAt(reach, grid, i, j))
      texels[at * 4 + 2] = Math.round((255 * (h - lowM)) / range)
      texels[at * 4 + 3] = 255
    }
  for (let round = 0; round < 2; round++) soften(texels, width, height, SAME_STEP_M / range)
  // Outside cells take their neighbours' light, so that blending at the foot of a wall does not let daylight leak in.
  for (let round = 0; round < 3; round++) spread(texels, width, height)
  return { width, height, cellM, originX, originY, lowM, rimM, texels }
}

interface Raster {
  readonly width: number
  readonly height: number
  readonly cellM: number
  readonly originX: number
  readonly originY: number
  readonly rimM: number
}

/** Highest level surface over each cell's centre, −Infinity outside the basin. */
function heightsOf(mesh: BasinMesh, grid: Raster): Float32Array {
  const { positions: p, indices } = mesh
  const out = new Float32Array(grid.width * grid.height).fill(-Infinity)
  const column = (x: number) => (x - grid.originX) / grid.cellM - 0.5
  const row = (y: number) => (y - grid.originY) / grid.cellM - 0.5
  for (let t = 0; t < indices.length; t += 3) {
    const [a, b, c] = [indices[t]! * 3, indices[t + 1]! * 3, indices[t + 2]! * 3]
    const [ax, ay, bx, by, cx, cy] = [
      column(p[a]!),
      row(p[a + 1]!),
      column(p[b]!),
      row(p[b + 1]!),
      column(p[c]!),
      row(p[c + 1]!),
    ] as const
    const area = (bx - ax) * (cy - ay) - (cx - ax) * (by - ay)
    if (Math.abs(area) < 1e-9) continue
    const [za, zb, zc] = [p[a + 2]!, p[b + 2]!, p[c + 2]!]
    const fromJ = Math.max(0, Math.ceil(Math.min(ay, by, cy) - 1e-6))
    const toJ = Math.min(grid.height - 1, Math.floor(Math.max(ay, by, cy) + 1e-6))
    const fromI = Math.max(0, Math.ceil(Math.min(ax, bx, cx) - 1e-6))
    const toI = Math.min(grid.width - 1, Math.floor(Math.max(ax, bx, cx) + 1e-6))
    for (let j = fromJ; j <= toJ; j++)
      for (let i = fromI; i <= toI; i++) {
        const u = ((i - ax) * (cy - ay) - (cx - ax) * (j - ay)) / area
        const v = ((bx - ax) * (j - ay) - (i - ax) * (by - ay)) / area
        if (u < -1e-6 || v < -1e-6 || u + v > 1 + 1e-6) continue
        const z = za + u * (zb - za) + v * (zc - za)
        const at = j * grid.width + i
        if (z > out[at]!) out[at] = z
      }
  }
  return out
}

/** Heights as the light meets them: the ground around stands as high as the rim. */
function reachOf(heights: Float32Array, rimM: number): Float32Array {
  return heights.map((h) => (h > -Infinity ? h : rimM))
}

/** Both walks end where even the rim could no longer stand higher in the sky than what was met before. */
function skyAt(h: Float32Array, grid: Raster, i: number, j: number): number {
  const { width, height, cellM, rimM } = grid
  const here = h[j * width + i]!
  const most = (rimM - here) / cellM
  let sum = 0
  for (let k = 0; k < DIRECTIONS; k++) {
    const angle = ((k + 0.5) * 2 * Math.PI) / DIRECTIONS
    const [dx, dy] = [Math.cos(angle), Math.sin(angle)]
    let tangent = 0
    let last = 1
    for (let far = 1; most > last * Math.max(tangent, LOW_HORIZON); far = Math.max(far + 1, far * PACE)) {
      const x = Math.round(i + dx * far)
      const y = Math.round(j + dy * far)
      const isOff = x < 0 || y < 0 || x >= width || y >= height
      const there = isOff ? rimM : h[y * width + x]!
      // A wall that was stepped over stands, on average, half a pace back.
      tangent = Math.max(tangent, (there - here) / (0.5 * (far + last) * cellM))
      if (isOff) break
      last = far
    }
    sum += 1 / (1 + tangent * tangent)
  }
  return sum / DIRECTIONS
}

function sunAt(h: Float32Array, grid: Raster, i: number, j: number): number {
  const { width, height, cellM, rimM } = grid
  const here = h[j * width + i]!
  const run = Math.hypot(SUN[0], SUN[1])
  const [dx, dy, slope] = [SUN[0] / run, SUN[1] / run, SUN[2] / run]
  const farthest = (rimM - here) / (cellM * slope * (1 - PENUMBRA))
  let seen = 1
  for (let far = 0.75; far <= farthest; far += 0.75) {
    const x = Math.round(i + dx * far)
    const y = Math.round(j + dy * far)
    const isOff = x < 0 || y < 0 || x >= width || y >= height
    const tangent = ((isOff ? rimM : h[y * width + x]!) - here) / (far * cellM)
    seen = Math.min(seen, 0.5 + (slope - tangent) / (2 * PENUMBRA * slope))
    if (seen <= 0) return 0
    if (isOff) break
  }
  return seen
}

/** Evens out the raster's grain, never across the edge of a tread. */
function soften(texels: Uint8Array, width: number, height: number, sameHeight: number): void {
  const before = texels.slice()
  const near = Math.max(1, Math.round(255 * sameHeight))
  for (let j = 1; j < height - 1; j++)
    for (let i = 1; i < width - 1; i++) {
      const at = (j * width + i) * 4
      if (before[at + 3] === 0) continue
      let [sky, sun, count] = [0, 0, 0]
      for (let y = j - 1; y <= j + 1; y++)
        for (let x = i - 1; x <= i + 1; x++) {
          const from = (y * width + x) * 4
          if (before[from + 3] === 0 || Math.abs(before[from + 2]! - before[at + 2]!) > near) continue
          sky += before[from]!
          sun += before[from + 1]!
          count++
        }
      texels[at] = Math.round(sky / count)
      texels[at + 1] = Math.round(sun / count)
    }
}

function spread(texels: Uint8Array, width: number, height: number): void {
  const before = texels.slice()
  for (let j = 0; j < height; j++)
    for (let i = 0; i < width; i++) {
      const at = (j * width + i) * 4
      if (before[at + 3]! > 0) continue
      let count = 0
      const sum = [0, 0, 0]
      for (let y = Math.max(0, j - 1); y <= Math.min(height - 1, j + 1); y++)
        for (let x = Math.max(0, i - 1); x <= Math.min(width - 1, i + 1); x++) {
          const from = (y * width + x) * 4
          if (before[from + 3] === 0) continue
          count++
          for (let k = 0; k < 3; k++) sum[k] = sum[k]! + before[from + k]!
        }
      if (count === 0) continue
      for (let k = 0; k < 3; k++) texels[at + k] = Math.round(sum[k]! / count)
      texels[at + 3] = 254
    }
}
