import { loopThrough } from '../plan/loop-through.ts'
import { canClose, draftAfter } from '../plan/points-draft.ts'
import { edits } from './edits.ts'
import { giveContour } from './floor-gestures.ts'
import { type Hands, isOnFirst, restingPlace } from './gestures.ts'
import type { Press } from './usePointerGestures.ts'

/** Drops a point where the sheet was pressed; on the first point it closes the outline. */
export function pressPoint(hands: Hands, press: Press): void {
  const { draft } = hands.local.getState()
  if (canClose(draft) && isOnFirst(hands, press)) {
    closeDraft(hands)
    return
  }
  const { at } = restingPlace(hands, press)
  const next = draftAfter(draft, { do: 'drop', at })
  hands.local.setState({ draft: next, guides: [], spoken: `Point ${next.points.length} placed.` })
}

/** Makes an outline of the points that were placed. */
export function closeDraft(hands: Pick<Hands, 'app' | 'local' | 'scene'>): void {
  const { app, local } = hands
  const { draft } = local.getState()
  const outline = canClose(draft) ? loopThrough(draft.points) : undefined
  if (!outline) {
    local.setState({ spoken: 'An outline needs three points.' })
    return
  }
  if (app.getState().tool === 'contour') {
    if (giveContour(hands, outline))
      local.setState({ draft: draftAfter(draft, { do: 'start-over' }), cursor: undefined, remarks: [] })
    return
  }
  if (app.getState().dispatch(edits.draw(outline, app.getState()))) return
  local.setState({
    draft: draftAfter(draft, { do: 'start-over' }),
    cursor: undefined,
    remarks: [],
    guides: [],
    spoken: `Outline closed with ${draft.points.length} points. It is a sketch until its size is said.`,
  })
  app.getState().setTool('select')
}
