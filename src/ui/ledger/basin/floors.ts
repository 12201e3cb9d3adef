/** Where a new station would help most: in the middle of the longest stretch, at the depth that is there now. */
export function nextStation(stations: readonly (readonly [number, number])[]): readonly [number, number] {
  const first = stations[0] ?? [0, 0]
  const last = stations[stations.length - 1] ?? first
  let best: readonly [number, number] = [last[0] + 1, last[1]]
  let longest = 0
  stations.forEach((to, i) => {
    const from = stations[i - 1]
    if (!from || to[0] - from[0] <= longest) return
    longest = to[0] - from[0]
    best = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2]
  })
  return best
}
