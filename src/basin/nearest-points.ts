import type { Shares } from './tin-types.ts'

interface Place {
  readonly x: number
  readonly y: number
}

/**
 * For each place asked for, the points nearest to it with even shares: one point, or several that are equally near within
 * a slack. Points lie in a grid of squares that is searched from the place outward.
 */
export function meanOfNearest(points: readonly Place[], slackM: number): (x: number, y: number) => Shares {
  let minX = Infinity
  let minY = Infinity
  let maxX = -Infinity
  let maxY = -Infinity
  for (const { x, y } of points) {
    minX = Math.min(minX, x)
    minY = Math.min(minY, y)
    maxX = Math.max(maxX, x)
    maxY = Math.max(maxY, y)
  }
  const count = Math.max(1, Math.ceil(Math.sqrt(points.length / 2)))
  const side = Math.max(maxX - minX, maxY - minY) / count || 1
  const column = (x: number): number => Math.min(count, Math.max(0, Math.floor((x - minX) / side)))
  const row = (y: number): number => Math.min(count, Math.max(0, Math.floor((y - minY) / side)))
  const squares = new Map<number, number[]>()
  points.forEach(({ x, y }, i) => {
    const key = column(x) * (count + 1) + row(y)
    const here = squares.get(key)
    if (here) here.push(i)
    else squares.set(key, [i])
  })
  return (x, y) => {
    const cx = column(x)
    const cy = row(y)
    let best = Infinity
    let found: [number, number][] = []
    // A square n steps away holds nothing nearer than n − 1 sides to the place, or to where it would enter the grid.
    for (let n = 0; n <= count + 1 && (n - 1) * side <= best + slackM; n++)
      for (let i = Math.max(0, cx - n); i <= Math.min(count, cx + n); i++)
        for (let k = Math.max(0, cy - n); k <= Math.min(count, cy + n); k++) {
          if (Math.max(Math.abs(i - cx), Math.abs(k - cy)) !== n) continue
          for (const index of squares.get(i * (count + 1) + k) ?? []) {
            const d = Math.hypot(points[index]!.x - x, points[index]!.y - y)
            if (d > best + slackM) continue
            best = Math.min(best, d)
            found.push([index, d])
          }
        }
    found = found.filter(([, d]) => d <= best + slackM)
    return new Map(found.map(([index]) => [index, 1 / found.length]))
  }
}
