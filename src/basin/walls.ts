import { never, type Problem } from '../base/index.ts'
import type { Wall } from './types.ts'
import { BATTERED } from './wall-battered.ts'
import { COVE } from './wall-cove.ts'
import type { WallLaw } from './wall-kind.ts'
import { VERTICAL } from './wall-vertical.ts'

/** What is wrong with a wall, if anything. */
export function checkWall(wall: Wall): Problem | undefined {
  switch (wall.kind) {
    case 'vertical':
      return VERTICAL.check(wall)
    case 'cove':
      return COVE.check(wall)
    case 'battered':
      return BATTERED.check(wall)
    default:
      return never(wall, 'unknown wall')
  }
}

const laws = new WeakMap<Wall, WallLaw>()

/** How a wall rules the water beside it; nothing where it is upright. Remembered for each wall. */
export function wallLaw(wall: Wall): WallLaw | undefined {
  const known = laws.get(wall)
  if (known) return known
  const law = make(wall)
  if (law) laws.set(wall, law)
  return law
}

function make(wall: Wall): WallLaw | undefined {
  switch (wall.kind) {
    case 'vertical':
      return VERTICAL.law(wall)
    case 'cove':
      return COVE.law(wall)
    case 'battered':
      return BATTERED.law(wall)
    default:
      return never(wall, 'unknown wall')
  }
}
