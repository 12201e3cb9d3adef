import { flushSync } from 'react-dom'
import type { Tool } from '../../state/index.ts'
import { isFeatureTool } from '../plan/feature-drag.ts'
import { drawContour, pickBenchSide, placeSounding, previewBench } from './floor-gestures.ts'
import { freehand, grab, type Hands, itemAt, NO_STROKE, placeFeature, restingPlace } from './gestures.ts'
import { keyOf, selectionOf } from './items.ts'
import { pickAt } from './pick.ts'
import { pressPoint } from './place-points.ts'
import { pointOnAxis } from './scene.ts'
import type { Gesture, Press } from './usePointerGestures.ts'
import { fromScreen, sectionFromScreen } from './view.ts'

/** Tools that place points one by one. */
export function placesPoints(tool: Tool): boolean {
  return tool === 'points' || tool === 'contour'
}

/** What begins where the sheet is pressed: a drag of what is there, or what the tool does; nothing means the paper moves. */
export function begin(hands: Hands, press: Press): Gesture | undefined {
  const { tool, selection } = hands.app.getState()
  const scene = hands.scene()
  hands.local.setState({ cursor: undefined, remarks: [], wallFrom: undefined, benchAt: undefined, ...NO_STROKE })
  if (tool === 'freehand') return freehand(hands, press)
  if (tool === 'contour') return drawContour(hands, press)
  if (isFeatureTool(tool)) return placeFeature(hands, tool, press)
  if (tool !== 'select' || !scene?.canEdit) return undefined
  const placed = itemAt(hands, press)
  if (placed) return grab(hands, placed, press)
  const under = pickAt(scene, press, selection)
  if (under?.kind !== 'feature' || selection?.kind !== 'feature' || selection.feature !== under.feature)
    return undefined
  const whole = hands.items().find((p) => p.key === keyOf(under))
  return whole && grab(hands, whole, press)
}

export function tap(hands: Hands, press: Press): void {
  const { tool, select, selection } = hands.app.getState()
  const scene = hands.scene()
  if (tool === 'points') pressPoint(hands, press)
  else if (tool === 'bench') pickBenchSide(hands, press)
  else if (tool === 'sounding') {
    // A depth that was typed for the last place is taken first, as on leaving any field.
    if (document.activeElement instanceof HTMLInputElement) document.activeElement.blur()
    // At once, so that the field that asks for the depth can have the focus, and a phone its keys, within the press itself.
    flushSync(() => placeSounding(hands, press))
  } else if (scene) {
    if (press.pointerType === 'touch') hover(hands, press)
    const under = scene.canEdit ? pickAt(scene, press, selection) : undefined
    select(under && selectionOf(under, scene.body.id))
  }
}

export function hover(hands: Hands, press: Press | undefined): void {
  const { view, panes } = hands.look()
  const scene = hands.scene()
  if (!press) {
    hands.local.setState({ hover: undefined, guides: [] })
    return
  }
  if (press.at[1] > panes.planHeight) {
    // Over the section the depth is that of the place on A–A′ above.
    const axis = scene?.section.axis
    const s = axis && sectionFromScreen(view, panes, axis.from, press.at)[0]
    hands.local.setState({ hover: axis && s !== undefined ? pointOnAxis(axis, s) : undefined, guides: [] })
    return
  }
  const { tool } = hands.app.getState()
  if (tool === 'bench') previewBench(hands, press)
  if (placesPoints(tool)) {
    const { at, guides } = restingPlace(hands, press)
    hands.local.setState({ hover: at, guides: hands.local.getState().draft.points.length > 0 ? guides : [] })
    return
  }
  hands.local.setState({ hover: fromScreen(view, panes, press.at) })
}
