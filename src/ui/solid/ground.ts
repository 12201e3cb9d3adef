import earcut from 'earcut'

/** Distance from the basin's rim over the ground around it, on a raster; past `reachM` it stays at the most. */
export interface RimDistance {
  readonly width: number
  readonly height: number
  readonly cellM: number
  readonly originX: number
  readonly originY: number
  readonly reachM: number
  /** 255 at `reachM` and beyond. */
  readonly texels: Uint8Array
}

export interface FlatMesh {
  /** xy pairs. */
  readonly points: Float32Array
  readonly indices: Uint32Array
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

function cut(rings: readonly Ring[]): FlatMesh {
  const points: number[] = []
  const holes: number[] = []
  rings.forEach((ring, index) => {
    if (index > 0) holes.push(points.length / 2)
    for (let i = 0; i < ring.length; i++) points.push(ring[i]!)
  })
  return { points: new Float32Array(points), indices: new Uint32Array(earcut(points, holes)) }
}

/** The water's surface: the outline without its islands. */
export function surfaceOf(rings: readonly Ring[]): FlatMesh {
  return cut(rings)
}

/** The ground around the basin as far as `marginM` beyond it, and the tops of its islands. */
export function groundOf(rings: readonly Ring[], marginM: number): FlatMesh {
  const [minX, minY, maxX, maxY] = boundsOfRings(rings)
  const frame = [
    minX - marginM, minY - marginM, maxX + marginM, minY - marginM,
    maxX + marginM, maxY + marginM, minX - marginM, maxY + marginM,
  ]
  const outline = rings[0]
  const pieces = [cut(outline ? [frame, outline] : [frame]), ...rings.slice(1).map((island) => cut([island]))]
  const points: number[] = []
  const indices: number[] = []
  for (const piece of pieces) {
    const first = points.length / 2
    points.push(...piece.points)
    for (const index of piece.indices) indices.push(first + index)
  }
  return { points: new Float32Array(points), indices: new Uint32Array(indices) }
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
  const texels = new Uint8Array(far.length)
  for (let i = 0; i < far.length; i++) texels[i] = Math.round((255 * far[i]!) / reachM)
  return { width, height, cellM, originX, originY, reachM, texels }
}
