import { flatten, nearestOn, type Path, type Point } from '../../basin/index.ts'
import { depthToReference, isInside } from '../../document/index.ts'
import { FEATURES, type Feature } from '../../features/index.ts'
import { snapLength } from '../../units/index.ts'
import { nodesOf } from '../plan/nodes.ts'
import { roundFeature } from '../plan/round-feature.ts'
import { edits } from './edits.ts'
import { featureShapes } from './feature-shapes.ts'
import { addFeature, type Hands, loopGesture } from './gestures.ts'
import { pressPoint } from './place-points.ts'
import type { Scene } from './scene.ts'
import type { Gesture, Press } from './usePointerGestures.ts'
import { fromScreen } from './view.ts'

/** A depth line in one stroke, or, where the pointer is only pressed, point by point. */
export function drawContour(hands: Hands, press: Press): Gesture {
  const loop = loopGesture(hands, press, 'Go once around, or tap point by point.', (path) => giveContour(hands, path))
  return {
    ...loop,
    end: (now, hasMoved) => {
      if (hasMoved) loop.end(now, hasMoved)
      else {
        hands.local.setState({ stroke: [] })
        pressPoint(hands, now)
      }
    },
  }
}

/** Adds a depth line and takes hold of it, so that its depth can be typed. Answers whether it was taken. */
export function giveContour({ app, local, scene }: Pick<Hands, 'app' | 'local' | 'scene'>, path: Path): boolean {
  const body = scene()?.body
  if (body?.floor.kind !== 'contours') return false
  if (app.getState().dispatch(edits.addContour(body.id, path))) return false
  // The first line that is drawn takes the place of one that was only assumed.
  const drawn = scene()?.body.floor
  const contour = drawn?.kind === 'contours' ? drawn.rings.length - 1 : body.floor.rings.length
  app.getState().setTool('select')
  app.getState().select({ kind: 'contour', bodyId: body.id, contour })
  local.setState({ isAsking: true, spoken: `Depth line ${contour + 1} drawn. Type its depth.` })
  return true
}

/** Says where the next sounding is; its depth is asked for then. */
export function placeSounding(hands: Hands, press: Press): void {
  const { view, panes } = hands.look()
  if (press.at[1] > panes.planHeight) return
  const at = fromScreen(view, panes, press.at)
  soundAt(hands, press.isFree ? at : wholePlace(hands, at))
}

/** Asks for the depth at a place, if it lies in the basin. */
export function soundAt({ app, local, scene }: Pick<Hands, 'app' | 'local' | 'scene'>, at: Point): void {
  const body = scene()?.body
  if (!body) return
  const isIn = (path: Path) => isInside(flatten(path, 0.01), at)
  if (!isIn(body.outline) || body.islands.some(isIn)) {
    local.setState({ sounded: undefined, spoken: 'Dry land: press in the water.' })
    app.getState().notify({ tone: 'info', text: 'That is dry land: soundings are taken in the water.' })
    return
  }
  app.getState().notify(undefined)
  local.setState({ sounded: at, spoken: 'Type the depth here.' })
}

function wholePlace({ app }: Pick<Hands, 'app'>, [x, y]: Point): Point {
  const { units } = app.getState().settings
  return [snapLength(x, units), snapLength(y, units)]
}

/** The first press says where a bench begins, the second where it ends; the same side twice is a bench along that side. */
export function pickBenchSide(hands: Hands, press: Press): void {
  const scene = hands.scene()
  if (!scene || press.at[1] > scene.panes.planHeight) return
  const side = outlineSideAt(scene, press)
  if (side === undefined) {
    hands.local.setState({ spoken: 'Press on a side of the outline.' })
    return
  }
  takeBenchSide(hands, scene, side, 'Press where the bench ends.')
}

/** Begins a bench at a side, or ends it there. */
export function takeBenchSide(hands: Hands, scene: Scene, side: number, next: string): void {
  const { benchFrom } = hands.local.getState()
  if (benchFrom === undefined) {
    hands.local.setState({ benchFrom: side, spoken: `From side ${side + 1}. ${next}` })
    showBench(hands, scene, side, side)
    return
  }
  const bench = benchAlong(scene, benchFrom, side)
  hands.local.setState({ benchFrom: undefined, benchAt: undefined, ghost: [] })
  if (bench) addFeature(hands, bench)
}

/** A bench as it would be from one side to another. */
export function showBench({ local }: Pick<Hands, 'local'>, scene: Scene, from: number, to: number): void {
  const bench = benchAlong(scene, from, to)
  if (bench) local.setState({ ghost: featureShapes(bench, scene.body.outline) })
}

/** While the end of a bench is looked for, the bench as it would be. */
export function previewBench(hands: Hands, press: Press): void {
  const scene = hands.scene()
  const { benchFrom } = hands.local.getState()
  const side = scene && benchFrom !== undefined ? outlineSideAt(scene, press) : undefined
  if (!scene || benchFrom === undefined || side === undefined) return
  showBench(hands, scene, benchFrom, side)
}

/** A bench of usual size along sides of the outline, the shorter way round from one to the other. */
export function benchAlong(
  { body, units }: Pick<Scene, 'body' | 'units'>,
  one: number,
  other: number,
): Feature | undefined {
  const kind = FEATURES.get('bench')
  if (!kind) return undefined
  const start = body.outline.start
  const usual = kind.defaults({ at: start, toward: [1, 0], sizeM: 1, outline: body.outline })
  const bench = roundFeature(usual, units, depthToReference(body, 0))
  if (!('along' in bench)) return undefined
  const count = nodesOf(body.outline).length
  const onward = (other - one + count) % count
  const isOnward = onward <= count - onward
  return { ...bench, along: { fromSegment: isOnward ? one : other, toSegment: isOnward ? other : one } }
}

/** Benches are picked with a generous reach: the side nearest to the press, if one is near at all [px]. */
const BENCH_REACH_PX = 60

function outlineSideAt(scene: Scene, press: Press): number | undefined {
  const { view, panes, body } = scene
  const [x, y] = fromScreen(view, panes, press.at)
  const near = nearestOn(body.outline, x, y)
  return near.distanceM * view.scale <= BENCH_REACH_PX ? near.segmentIndex : undefined
}
