import type { Point } from '../../basin/index.ts'
import { axisNames } from '../plan/axis-names.ts'
import type { Box } from '../plan/labels.ts'
import { nodesOf } from '../plan/nodes.ts'
import { seenMiddle } from './place-items.ts'
import { axisEnds, planPx, pointOnAxis, type Scene } from './scene.ts'
import { sectionToScreen } from './view.ts'

/** Dashed lines from the plan to the section: from each station, and from where the line meets the outer walls. */
export function projectionLines(scene: Scene, stations: readonly (readonly [number, number])[]) {
  const { axis } = scene.section
  const ends = axisEnds(scene)
  const places: [number, number][] = stations.map(([sM, depthM]) => [sM, depthM])
  if (ends) places.push([ends[0], 0], [ends[1], 0])
  return places.flatMap(([sM, depthM]) => {
    if (ends && (sM < ends[0] - 1e-9 || sM > ends[1] + 1e-9)) return []
    const from = planPx(scene, pointOnAxis(axis, sM))
    const to = sectionToScreen(scene.view, scene.panes, axis.from, [sM, depthM])
    return from[1] < scene.panes.planHeight ? [{ from, to }] : []
  })
}

/** What figures in the plan keep off: points, the names and the line of the section. */
export function boxesInTheWay(scene: Scene, drawn: readonly [number, number]): Box[] {
  const { axis } = scene.section
  const around = (at: Point, half: number): Box => ({ x: at[0], y: at[1], halfWidth: half, halfHeight: half })
  const nodes = scene.canEdit ? nodesOf(scene.body.outline).map((p) => around(planPx(scene, p), 9)) : []
  const names = axisNames({ axis, drawn, view: scene.view, panes: scene.panes })
  const length = drawn[1] - drawn[0]
  const count = Math.min(400, Math.ceil((length * scene.view.scale) / 12))
  const line = Array.from({ length: count }, (_, i) =>
    around(planPx(scene, pointOnAxis(axis, drawn[0] + ((i + 0.5) / count) * length)), 5),
  )
  const grips = scene.canEdit
    ? scene.body.features.map((_, i) => seenMiddle(scene, i)).filter((p) => p !== undefined)
    : []
  return [...nodes, ...line, ...grips.map((p) => around(planPx(scene, p), 6)), around(names.a, 12), around(names.b, 12)]
}
