import type { Untangled } from '../../../derive/index.ts'
import { Button } from '../../fields/index.ts'
import { edits } from '../edits.ts'
import { Actions } from './parts.tsx'
import styles from './strip.module.css'
import type { StripProps } from './types.ts'

/** A line crosses itself: the dashed one on the plan may take its place. */
export function UntangleStrip({
  scene,
  hands,
  give,
  proposal,
  toSheet,
}: StripProps & { readonly proposal: Untangled; readonly toSheet: () => void }) {
  if (proposal.bodyId !== scene.body.id) return null
  const take = () => {
    if (give(edits.untangleLine(proposal.bodyId, proposal.ring, proposal.path))) return
    // Its points are other ones now.
    hands.app.getState().select(undefined)
    hands.local.setState({ spoken: 'The line is untangled.' })
    // This button goes with the trouble; the focus must not go with it.
    toSheet()
  }
  return (
    <div className={styles['offer']}>
      <p className={styles['say']}>Dashed: nearly the same line, free of itself.</p>
      <Actions>
        <Button tone="main" onPress={take}>
          Use the untangled line
        </Button>
      </Actions>
    </div>
  )
}
