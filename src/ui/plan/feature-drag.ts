import { depthAt, type Partition, type Path, type Point } from '../../basin/index.ts'
import type { Feature } from '../../features/index.ts'
import type { Tool } from '../../state/index.ts'
import { snapLength, type UnitSystem } from '../../units/index.ts'
import { dragInFrame, footprintFrom, type WallFrame, wallFrameAt } from './footprint.ts'
import { flightFor, TREAD_LEAST_M, treadsOf } from './treads.ts'

export type FeatureTool = Extract<Tool, 'shelf' | 'steps' | 'round-steps' | 'ramp'>

export function isFeatureTool(tool: Tool): tool is FeatureTool {
  return tool === 'shelf' || tool === 'steps' || tool === 'round-steps' || tool === 'ramp'
}

/** A sun shelf's usual depth; common practice, no source [m]. */
const SHELF_DEPTH_M = 0.3
const SHELF_RUN_M = 1.5
/** A new ramp falls no steeper than the usual limit of a floor in shallow water (see section/slopes.ts). */
const RAMP_FALL = 1 / 7
const RAMP_RUN_M = 2.5
const LEAST_FALL_M = 0.05
/** Depth at the foot where the drawing can't tell yet [m]. */
const FOOT_DEPTH_M = 1.1

interface Ground {
  readonly outline: Path
  readonly parts: Partition | undefined
  readonly units: UnitSystem
}

/** A feature against the wall nearest to where a drag began, as far into the water as it went; without `to`, of usual size. */
export function featureFrom(ground: Ground, tool: FeatureTool, from: Point, to: Point | undefined): Feature {
  const frame = wallFrameAt(ground.outline, from)
  const drag = to && dragInFrame(frame, to)
  const whole = (si: number) => snapLength(si, ground.units)
  const alongM = drag ? whole(drag.alongM) : 0
  if (tool === 'shelf') {
    const runM = drag ? Math.max(TREAD_LEAST_M, whole(drag.inwardM)) : SHELF_RUN_M
    const { path } = footprintFrom(ground.outline, frame, alongM, runM)
    return { kind: 'shelf', path, depthM: whole(SHELF_DEPTH_M) }
  }
  if (tool === 'ramp') {
    const runM = drag ? Math.max(TREAD_LEAST_M, whole(drag.inwardM)) : RAMP_RUN_M
    const { path, axis } = footprintFrom(ground.outline, frame, alongM, runM, 'behind')
    const toDepthM = whole(Math.min(footDepth(ground, frame, runM), runM * RAMP_FALL))
    return { kind: 'ramp', path, axis, fromDepthM: 0, toDepthM: Math.max(toDepthM, LEAST_FALL_M) }
  }
  const isRound = tool === 'round-steps'
  const reach = drag && (isRound ? Math.hypot(drag.alongM, drag.inwardM) : drag.inwardM)
  const runM = reach === undefined ? undefined : Math.max(TREAD_LEAST_M, whole(reach))
  const flight = flightFor(footDepth(ground, frame, runM ?? 1), runM)
  if (isRound) return { kind: 'roundSteps', centre: frame.at, treads: treadsOf(flight, true) }
  const { path, axis } = footprintFrom(ground.outline, frame, alongM, flight.runM)
  return { kind: 'steps', path, axis, treads: treadsOf(flight, false) }
}

/** Depth of the floor where a flight ends [m]. */
function footDepth({ parts }: Ground, frame: WallFrame, runM: number): number {
  if (!parts) return FOOT_DEPTH_M
  for (const reach of [runM, runM * 0.8, runM * 0.5, 0.3]) {
    const x = frame.at[0] + frame.inward[0] * reach
    const y = frame.at[1] + frame.inward[1] * reach
    const sample = depthAt(parts, x, y)
    if (sample && sample.depthM > 0) return sample.depthM
  }
  return FOOT_DEPTH_M
}
