import type { Tool } from '../../state/index.ts'
import { isFeatureTool } from '../plan/feature-drag.ts'
import { placesPoints } from './presses.ts'

/** What the drawing is called for those who can't see it, with the keys that the tool in hand takes. */
export function sheetLabel(tool: Tool): string {
  if (tool === 'sounding')
    return 'Plan and section, taking soundings. Arrow keys move the cross hairs along the grid, Shift for five lines, Control finely, Enter asks for the depth there, Escape ends.'
  if (tool === 'bench')
    return 'Plan and section, placing a bench. Arrow keys go round the outline side by side, Enter begins the bench, Enter again ends and places it, Escape takes back.'
  if (isFeatureTool(tool))
    return 'Plan and section, placing against the wall. Arrow keys move the cross hairs, Shift for ten steps, Enter begins at the nearest wall, arrows draw out, Enter places, Escape takes back.'
  if (placesPoints(tool))
    return 'Placing points. Arrow keys move the cross hairs along the grid, Shift or Page up and down for five lines, Control finely, plus and minus zoom, Enter places a point, Enter again on it closes, C corner or smooth, Backspace takes back, Escape cancels.'
  return 'Plan and section. Arrow keys move the cross hairs along the grid and read the depth, Shift for five lines, Control finely, plus and minus zoom, 0 fits. Tab goes to points, stations and features.'
}
