import { addBody } from './add-body.ts'
import { addContour } from './add-contour.ts'
import { addDevice } from './add-device.ts'
import { addFeature } from './add-feature.ts'
import { addIsland } from './add-island.ts'
import { addNote } from './add-note.ts'
import { addOwnProduct } from './add-own-product.ts'
import { addReadings } from './add-readings.ts'
import { addSounding } from './add-sounding.ts'
import { addStation } from './add-station.ts'
import { clearStart } from './clear-start.ts'
import { correctReference } from './correct-reference.ts'
import { deepenReadings } from './deepen-readings.ts'
import type { Edit } from './define.ts'
import { drawOutline } from './draw-outline.ts'
import { holdInDevice } from './hold-in-device.ts'
import { insertPoint } from './insert-point.ts'
import { logDose } from './log-dose.ts'
import { moveAxis } from './move-axis.ts'
import { moveBasin } from './move-basin.ts'
import { moveContour } from './move-contour.ts'
import { moveFeature } from './move-feature.ts'
import { moveHandle } from './move-handle.ts'
import { movePoint } from './move-point.ts'
import { moveSounding } from './move-sounding.ts'
import { moveStation } from './move-station.ts'
import { removeBody } from './remove-body.ts'
import { removeContour } from './remove-contour.ts'
import { removeDevice } from './remove-device.ts'
import { removeFeature } from './remove-feature.ts'
import { removeIsland } from './remove-island.ts'
import { removeLog } from './remove-log.ts'
import { removeOwnProduct } from './remove-own-product.ts'
import { removePoint } from './remove-point.ts'
import { removeReadings } from './remove-readings.ts'
import { removeSounding } from './remove-sounding.ts'
import { removeStation } from './remove-station.ts'
import { removeVolumeEstimate } from './remove-volume-estimate.ts'
import { replaceDocument } from './replace-document.ts'
import { resetTarget } from './reset-target.ts'
import { scaleSketch } from './scale-sketch.ts'
import { scaleUniform } from './scale-uniform.ts'
import { setAxis } from './set-axis.ts'
import { setBody } from './set-body.ts'
import { setBulge } from './set-bulge.ts'
import { setContourDepth } from './set-contour-depth.ts'
import { setCurrency } from './set-currency.ts'
import { setDepthReference } from './set-depth-reference.ts'
import { setDevice } from './set-device.ts'
import { setDish } from './set-dish.ts'
import { setEdgeDepth } from './set-edge-depth.ts'
import { setEquipment } from './set-equipment.ts'
import { setFeature } from './set-feature.ts'
import { setFill } from './set-fill.ts'
import { setFloor } from './set-floor.ts'
import { setFloorKind } from './set-floor-kind.ts'
import { setFreeboard } from './set-freeboard.ts'
import { setLevel } from './set-level.ts'
import { setLog } from './set-log.ts'
import { setName } from './set-name.ts'
import { setOutline } from './set-outline.ts'
import { setOwnProduct } from './set-own-product.ts'
import { setPlanStart } from './set-plan-start.ts'
import { setPlumbing } from './set-plumbing.ts'
import { setPointKind } from './set-point-kind.ts'
import { setPrice } from './set-price.ts'
import { setProduct } from './set-product.ts'
import { setRegime } from './set-regime.ts'
import { setRules } from './set-rules.ts'
import { setSegmentKind } from './set-segment-kind.ts'
import { setSegmentLength } from './set-segment-length.ts'
import { setSite } from './set-site.ts'
import { setSoundingDepth } from './set-sounding-depth.ts'
import { setStart } from './set-start.ts'
import { setStartValue } from './set-start-value.ts'
import { setStock } from './set-stock.ts'
import { setTarget } from './set-target.ts'
import { setTolerance } from './set-tolerance.ts'
import { setVolumeEstimate } from './set-volume-estimate.ts'
import { setWall } from './set-wall.ts'
import { shiftDepths } from './shift-depths.ts'
import { stretchOutline } from './stretch-outline.ts'
import { tickLine } from './tick-line.ts'
import { untangleLine } from './untangle-line.ts'
import { updateReadings } from './update-readings.ts'

/** Every edit there is, by id: an edit is its file and its line here. */
export const COMMANDS = {
  setName,
  addBody,
  setBody,
  removeBody,
  drawOutline,
  setOutline,
  movePoint,
  moveHandle,
  setSegmentKind,
  setPointKind,
  setBulge,
  setSegmentLength,
  insertPoint,
  removePoint,
  addIsland,
  removeIsland,
  stretchOutline,
  untangleLine,
  scaleSketch,
  moveBasin,
  scaleUniform,
  setFloor,
  moveStation,
  addStation,
  removeStation,
  setAxis,
  moveAxis,
  setFloorKind,
  setEdgeDepth,
  addContour,
  setContourDepth,
  moveContour,
  removeContour,
  addSounding,
  moveSounding,
  setSoundingDepth,
  removeSounding,
  setDish,
  shiftDepths,
  setWall,
  addFeature,
  setFeature,
  moveFeature,
  removeFeature,
  setLevel,
  setFreeboard,
  setTolerance,
  setDepthReference,
  correctReference,
  deepenReadings,
  setVolumeEstimate,
  removeVolumeEstimate,
  setPlumbing,
  addReadings,
  updateReadings,
  removeReadings,
  setFill,
  setTarget,
  resetTarget,
  setRegime,
  setProduct,
  setEquipment,
  setStock,
  addOwnProduct,
  setOwnProduct,
  removeOwnProduct,
  setPrice,
  setCurrency,
  addDevice,
  setDevice,
  removeDevice,
  holdInDevice,
  setPlanStart,
  setStart,
  setStartValue,
  clearStart,
  logDose,
  tickLine,
  addNote,
  setLog,
  removeLog,
  setSite,
  setRules,
  replaceDocument,
} as const

export type CommandId = keyof typeof COMMANDS
type ArgsOf<E> = E extends Edit<string, infer Args> ? Args : never
/** What an edit needs. */
export type CommandArgs<Id extends CommandId> = ArgsOf<(typeof COMMANDS)[Id]>

/** An edit and what it needs. */
export type Command = { readonly [Id in CommandId]: { readonly id: Id; readonly args: CommandArgs<Id> } }[CommandId]

/** A command of one edit, its arguments checked by the compiler. */
export function command<Id extends CommandId>(id: Id, args: CommandArgs<Id>): Command {
  // The pair is of one edit, which a union over all of them can't be told.
  return { id, args } as Command
}
