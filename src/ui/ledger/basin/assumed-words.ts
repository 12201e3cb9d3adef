import { assumedDepths, type Body } from '../../../document/index.ts'
import { FLOOR_CHOICES } from './floor-choices.tsx'

type Known = Pick<Body, 'floor' | 'depthsAssumed' | 'otherFloors'>

/** What is to be known of depths that nobody has said, and what to do; nothing where all were. */
export function assumedWords(body: Known): string | undefined {
  const assumed = assumedDepths(body)
  if (!assumed.some(Boolean)) return undefined
  const from = (body.otherFloors ?? []).findLast((other) => !assumedDepths(other).every(Boolean))
  const kind = FLOOR_CHOICES.find(({ id }) => id === from?.floor.kind)?.label
  if (kind !== undefined)
    return `Depths marked as assumed were reckoned so that the pool holds as much as before; nobody measured them, and the volume is less sure. Type your own. Those of “${kind}” are kept and come back with it.`
  if (assumed.every(Boolean))
    return 'Nobody has said a depth yet: those below are assumed, and so is the volume. Type them, or drag them in the drawing.'
  return 'Some depths are still assumed, and the volume is less sure for it. Type them too, or drag them in the drawing.'
}

/** The same in short, for the drawing. */
export function assumedNote(body: Known): string {
  const assumed = assumedDepths(body)
  if (!assumed.some(Boolean)) return ''
  return assumed.every(Boolean)
    ? 'depths assumed: drag or type them'
    : `${assumed.filter(Boolean).length} of ${assumed.length} depths assumed: drag or type them`
}
