import { boundsOf, type Path, type Point, pointOn } from '../../basin/index.ts'
import { closed, depthToReference } from '../../document/index.ts'
import type { Selection } from '../../state/index.ts'
import { formatQuantity } from '../../units/index.ts'
import { type Item, keyOf, type PlacedItem } from './items.ts'
import { ringItems, sayPlace } from './place-items.ts'
import { planPx, type Scene } from './scene.ts'
import { fromSheet, toSheet } from './view.ts'

/** Where a depth line is written and taken hold of: the middle of its side that lies highest on the sheet. */
export function contourGrip(path: Path, turn: Scene['view']['turn']): Point {
  const middles = closed(path).segments.map((_, i) => pointOn(path, i, 0.5))
  return middles.reduce((a, b) => (toSheet(b, turn)[1] > toSheet(a, turn)[1] ? b : a), middles[0] ?? path.start)
}

/** Where the hollow's radius is taken hold of: at its right on the sheet. */
function dishRim(centre: Point, radiusM: number, turn: Scene['view']['turn']): Point {
  const [dx, dy] = fromSheet([radiusM, 0], turn)
  return [centre[0] + dx, centre[1] + dy]
}

/** Whether a depth line, or a point or side of it, is selected: its points show only then. */
export function isContourSelected(selection: Selection | undefined, contour: number): boolean {
  if (selection?.kind === 'contour') return selection.contour === contour
  return (
    (selection?.kind === 'node' || selection?.kind === 'segment') &&
    selection.ring.of === 'contour' &&
    selection.ring.index === contour
  )
}

/** What of a floor can be taken hold of in the plan: depth lines with their points, soundings, the hollow of a dish. */
export function floorItems(scene: Scene, selection: Selection | undefined): PlacedItem[] {
  const { floor } = scene.body
  const say = (si: number) => formatQuantity('length', si, scene.units, { style: 'long' })
  const deep = (depthM: number) => `${say(depthToReference(scene.body, depthM))} deep`
  const place = (item: Item, at: Point, rank: number, label: string): PlacedItem => {
    return { key: keyOf(item), item, at: planPx(scene, at), rank, label }
  }
  switch (floor.kind) {
    case 'flat':
    case 'profile':
      return []
    case 'contours':
      return floor.rings.flatMap(({ path, depthM }, contour) => {
        const box = boundsOf(path)
        const size = `${say(box.maxX - box.minX)} by ${say(box.maxY - box.minY)}`
        const label = `Depth line ${contour + 1} of ${floor.rings.length}, ${deep(depthM)}, ${size}`
        const whole = place({ kind: 'contour', contour }, contourGrip(path, scene.view.turn), 2, label)
        if (!isContourSelected(selection, contour)) return [whole]
        return [whole, ...ringItems(scene, { of: 'contour', index: contour }, path, selection)]
      })
    case 'soundings':
      return floor.points.map(([x, y, depthM], sounding) => {
        const label = `Sounding ${sounding + 1} of ${floor.points.length}, ${deep(depthM)}, ${sayPlace(scene, [x, y])}`
        return place({ kind: 'sounding', sounding }, [x, y], 1, label)
      })
    case 'dish': {
      const { centre, radiusM, depthM } = floor
      return [
        place(
          { kind: 'dish', part: 'centre' },
          centre,
          1,
          `Middle of the hollow, ${deep(depthM)}, ${sayPlace(scene, centre)}`,
        ),
        place(
          { kind: 'dish', part: 'radius' },
          dishRim(centre, radiusM, scene.view.turn),
          1,
          `Rim of the hollow, radius ${say(radiusM)}`,
        ),
      ]
    }
  }
}
