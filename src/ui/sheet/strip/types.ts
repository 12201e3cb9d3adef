import type { Problem } from '../../../base/index.ts'
import type { Command } from '../../../document/index.ts'
import type { Hands } from '../gestures.ts'
import type { Scene } from '../scene.ts'

/** What every part of the strip works with. */
export interface StripProps {
  readonly scene: Scene
  readonly hands: Pick<Hands, 'app' | 'local' | 'scene'>
  readonly give: (command: Command) => Problem | undefined
  /** Gives a removal; what is gone leaves the focus to the sheet. */
  readonly remove: (command: Command) => void
}
