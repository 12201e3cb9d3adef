import type { Point } from '../../basin/index.ts'
import { planPx, type Scene } from './scene.ts'

/** A ring of more points than this shows only those that can be told apart. */
export const MANY_POINTS = 300
/** How far apart two of them have to lie on the screen [px]. */
const APART_PX = 14

/**
 * Which of a ring's points get a mark, all where undefined: of a great many those in sight that lie apart, and the one that
 * is held. Coming nearer shows more.
 */
export function handlesShown(
  scene: Pick<Scene, 'view' | 'panes'>,
  nodes: readonly Point[],
  held: number | undefined,
): ReadonlySet<number> | undefined {
  if (nodes.length <= MANY_POINTS) return undefined
  const { width, height } = scene.panes
  const shown = new Set<number>()
  const taken = new Set<string>()
  const mark = (node: number): void => {
    const [x, y] = planPx(scene, nodes[node]!)
    if (x < -APART_PX || y < -APART_PX || x > width + APART_PX || y > height + APART_PX) return
    const place = `${Math.floor(x / APART_PX)} ${Math.floor(y / APART_PX)}`
    if (taken.has(place)) return
    taken.add(place)
    shown.add(node)
  }
  if (held !== undefined && held < nodes.length) {
    mark(held)
    shown.add(held)
  }
  for (let node = 0; node < nodes.length; node++) mark(node)
  return shown
}
