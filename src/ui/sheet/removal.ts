import type { Command } from '../../document/index.ts'
import { edits } from './edits.ts'
import type { Item } from './items.ts'

/** The edit that takes an item off the sheet, of those that can go. */
export function removalOf(item: Item, bodyId: string): Command | undefined {
  switch (item.kind) {
    case 'node':
      return edits.removePoint(bodyId, item.ring, item.node)
    case 'station':
      return edits.removeStation(bodyId, item.station)
    case 'contour':
      return edits.removeContour(bodyId, item.contour)
    case 'sounding':
      return edits.removeSounding(bodyId, item.sounding)
    case 'feature':
    case 'feature-handle':
      return edits.removeFeature(bodyId, item.feature)
    default:
      return undefined
  }
}
