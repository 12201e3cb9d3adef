/** Where a new station would help most: in the middle of the longest stretch [m from A]. */
export function nextStation(stations: readonly (readonly [number, number])[]): number {
  const first = stations[0] ?? [0, 0]
  const last = stations[stations.length - 1] ?? first
  let best = last[0] + 1
  let longest = 0
  stations.forEach((to, i) => {
    const from = stations[i - 1]
    if (!from || to[0] - from[0] <= longest) return
    longest = to[0] - from[0]
    best = (from[0] + to[0]) / 2
  })
  return best
}
