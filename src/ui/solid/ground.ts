/** Distance from the basin's rim over the ground around it, on a raster; past `reachM` it stays at the most. */
export interface RimDistance {
  readonly width: number
  readonly height: number
  readonly cellM: number
  readonly originX: number
  readonly originY: number
  readonly reachM: number
  /** Metres, `reachM` and beyond alike. */
  readonly texels: Float32Array
}

type Ring = ArrayLike<number>

function boundsOfRings(rings: readonly Ring[]): [number, number, number, number] {
  const box: [number, number, number, number] = [Infinity, Infinity, -Infinity, -Infinity]
  for (const ring of rings)
    for (let i = 0; i < ring.length; i += 2) {
      box[0] = Math.min(box[0], ring[i]!)
      box[1] = Math.min(box[1], ring[i + 1]!)
      box[2] = Math.max(box[2], ring[i]!)
      box[3] = Math.max(box[3], ring[i + 1]!)
    }
  return box
}

/**
 * Triangles that cover each place of the opening an odd number of times: a fan over every ring. Drawn into a stencil that
 * flips, they fill outline and islands exactly, with no triangulation that could leave a crack.
 */
export function openingOf(rings: readonly Ring[]): Float32Array {
  const corners: number[] = []
  for (const ring of rings)
    for (let i = 2; i + 3 < ring.length; i += 2)
      corners.push(ring[0]!, ring[1]!, ring[i]!, ring[i + 1]!, ring[i + 2]!, ring[i + 3]!)
  return new Float32Array(corners)
}

/** Two triangles over the basin's box and a margin around it. */
export function sheetOf(rings: readonly Ring[], marginM: number): Float32Array {
  const [minX, minY, maxX, maxY] = boundsOfRings(rings)
  const [left, low, right, high] = [minX - marginM, minY - marginM, maxX + marginM, maxY + marginM]
  return new Float32Array([left, low, right, low, right, high, left, low, right, high, left, high])
}

/** The distance field is built segment by segment, each touching only the cells within reach of it. */
export function rimDistanceOf(rings: readonly Ring[], reachM: number, raster: number): RimDistance {
  const [minX, minY, maxX, maxY] = boundsOfRings(rings)
  const cellM = (Math.max(maxX - minX, maxY - minY) + 2 * reachM) / raster
  const width = Math.ceil((maxX - minX + 2 * reachM) / cellM) + 2
  const height = Math.ceil((maxY - minY + 2 * reachM) / cellM) + 2
  const originX = (minX + maxX - width * cellM) / 2
  const originY = (minY + maxY - height * cellM) / 2
  const far = new Float32Array(width * height).fill(reachM)
  for (const ring of rings)
    for (let k = 0; k < ring.length; k += 2) {
      const next = (k + 2) % ring.length
      const [ax, ay, bx, by] = [ring[k]!, ring[k + 1]!, ring[next]!, ring[next + 1]!] as const
      const [dx, dy] = [bx - ax, by - ay] as const
      const square = dx * dx + dy * dy
      const fromI = Math.max(0, Math.floor((Math.min(ax, bx) - reachM - originX) / cellM))
      const toI = Math.min(width - 1, Math.ceil((Math.max(ax, bx) + reachM - originX) / cellM))
      const fromJ = Math.max(0, Math.floor((Math.min(ay, by) - reachM - originY) / cellM))
      const toJ = Math.min(height - 1, Math.ceil((Math.max(ay, by) + reachM - originY) / cellM))
      for (let j = fromJ; j <= toJ; j++)
        for (let i = fromI; i <= toI; i++) {
          const [px, py] = [originX + (i + 0.5) * cellM - ax, originY + (j + 0.5) * cellM - ay] as const
          const t = square > 0 ? Math.min(1, Math.max(0, (px * dx + py * dy) / square)) : 0
          const [ex, ey] = [px - t * dx, py - t * dy] as const
          const distance = Math.sqrt(ex * ex + ey * ey)
          const at = j * width + i
          if (distance < far[at]!) far[at] = distance
        }
    }
  return { width, height, cellM, originX, originY, reachM, texels: far }
}
