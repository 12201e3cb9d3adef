import type { Point } from '../../basin/index.ts'
import { nodesOf } from '../plan/nodes.ts'
import type { PlacedItem } from './items.ts'
import { pathOfRing } from './place-items.ts'
import { planPx, type Scene } from './scene.ts'

/** Marks of the plan don't lie over the section, nor those of the section over the plan. */
export function isInPane(placed: PlacedItem, scene: Scene): boolean {
  const isBelow = placed.at[1] > scene.panes.planHeight
  return placed.item.kind === 'station' ? isBelow : !isBelow
}

/** From each control point in sight to the node that it belongs to. */
export function armsOf(scene: Scene | undefined, items: readonly PlacedItem[]): { from: Point; to: Point }[] {
  if (!scene) return []
  return items.flatMap(({ item, at }) => {
    if (item.kind !== 'control') return []
    const path = pathOfRing(scene, item.ring)
    const nodes = path ? nodesOf(path) : []
    const node = nodes[item.which === 'c1' ? item.segment : (item.segment + 1) % nodes.length]
    return node ? [{ from: planPx(scene, node), to: at }] : []
  })
}
