import { assumedDepths, depthFromReference, firstPointOf } from '../../../document/index.ts'
import { formatQuantity } from '../../../units/index.ts'
import { useApp } from '../../context.tsx'
import { Button, QuantityField } from '../../fields/index.ts'
import { edits } from '../edits.ts'
import type { Hands } from '../gestures.ts'
import { useLocal } from '../local.ts'
import { Actions, Cell, Title } from './parts.tsx'
import styles from './strip.module.css'

interface Props {
  readonly hands: Pick<Hands, 'app' | 'local'>
  readonly onLeave: () => void
}

/** One sounding after the other: a place is pressed, its depth typed, the next place pressed. */
export function SoundingToolStrip({ hands, onLeave }: Props) {
  const sounded = useLocal((state) => state.sounded)
  const body = useApp((state) => state.spec.bodies[0])
  if (body?.floor.kind !== 'soundings') return null
  const guesses = assumedDepths(body).slice(firstPointOf(body.floor)).filter(Boolean).length
  const count = body.floor.points.length - guesses
  const taken = count === 0 ? 'none yet' : `${count} taken`
  const take = (depthM: number) => {
    if (!sounded) return undefined
    const { dispatch, settings } = hands.app.getState()
    const problem = dispatch(edits.addSounding(body.id, sounded, depthFromReference(body, depthM)))
    if (problem) return problem
    const said = formatQuantity('length', depthM, settings.units, { style: 'long' })
    hands.local.setState({ sounded: undefined, spoken: `Sounding ${count + 1}, ${said}. Press the next place.` })
    return undefined
  }
  return (
    <>
      <Title name="Soundings" note={guesses === 0 ? taken : `${taken}, ${guesses} assumed`} />
      <Cell>
        <QuantityField
          // Each place is asked for anew.
          key={sounded?.join()}
          label="Depth here"
          isCompact
          isRequired
          isDisabled={!sounded}
          quantity="length"
          value={undefined}
          onChange={(si) => (si === undefined ? undefined : take(si))}
        />
      </Cell>
      <p className={styles['say']}>
        {sounded ? 'Type the depth at the mark, then Enter.' : 'Tap a place in the water, then type its depth.'}
      </p>
      <Actions>
        {sounded ? <Button onPress={() => hands.local.setState({ sounded: undefined })}>Not here</Button> : null}
        <Button tone="main" onPress={onLeave}>
          Done
        </Button>
      </Actions>
    </>
  )
}
