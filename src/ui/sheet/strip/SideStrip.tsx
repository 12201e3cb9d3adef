import type { Path } from '../../../basin/index.ts'
import { kindOf } from '../../../document/index.ts'
import { Button, LONGEST_M, QuantityField } from '../../fields/index.ts'
import { bulgeOfRadius, middleOf, nodesOf, radiusOf, segmentAt, segmentLength } from '../../plan/nodes.ts'
import { edits } from '../edits.ts'
import type { Ring } from '../items.ts'
import { Actions, Cell, Kinds, PlaceHere, ringNote, Title } from './parts.tsx'
import type { StripProps } from './types.ts'

const KINDS = [
  { id: 'line', label: 'Line' },
  { id: 'arc', label: 'Arc' },
  { id: 'curve', label: 'Curve' },
] as const

interface Props extends StripProps {
  readonly ring: Ring
  readonly path: Path
  readonly segment: number
}

/** A side of the outline: its length, and of an arc its radius and rise. */
export function SideStrip({ scene, hands, give, ring, path, segment }: Props) {
  const side = segmentAt(path, segment)
  if (!side) return null
  const bodyId = scene.body.id
  const count = nodesOf(path).length
  const chord = Math.hypot(side.to[0] - side.from[0], side.to[1] - side.from[1])
  const bulge = side.bulge ?? 0
  const bend = (next: number) => give(edits.setBulge(bodyId, ring, segment, next))
  return (
    <>
      <Title name={`Side ${segment + 1} to ${((segment + 1) % count) + 1}`} note={ringNote(ring)} />
      <Cell>
        <QuantityField
          label="Length"
          isCompact
          isRequired
          quantity="length"
          min={0.01}
          max={LONGEST_M}
          value={segmentLength(side)}
          onChange={(si) => (si === undefined ? undefined : give(edits.setSegmentLength(bodyId, ring, segment, si)))}
        />
      </Cell>
      {kindOf(side) === 'arc' ? (
        <>
          <Cell>
            <QuantityField
              label="Radius"
              isCompact
              isRequired
              quantity="length"
              min={chord / 2}
              value={radiusOf(chord, bulge)}
              onChange={(si) => {
                const next = si === undefined ? undefined : bulgeOfRadius(chord, si, bulge)
                return next === undefined ? undefined : bend(next)
              }}
            />
          </Cell>
          <Cell>
            <QuantityField
              label="Rise"
              isCompact
              isRequired
              quantity="length"
              value={(Math.abs(bulge) * chord) / 2}
              onChange={(si) => (si === undefined ? undefined : bend((Math.sign(bulge) * 2 * si) / chord))}
            />
          </Cell>
        </>
      ) : null}
      <Kinds
        label="Kind of side"
        value={kindOf(side)}
        options={KINDS}
        onChange={(kind) => give(edits.setSegmentKind(bodyId, ring, segment, kind))}
      />
      <Actions>
        {ring.of === 'outline' ? <PlaceHere scene={scene} hands={hands} at={middleOf(path, segment)} /> : null}
        <Button
          onPress={() => {
            if (give(edits.insertPoint(bodyId, ring, segment, 0.5))) return
            hands.app.getState().select({ kind: 'node', bodyId, ring, node: segment + 1 })
          }}
        >
          Add point
        </Button>
      </Actions>
    </>
  )
}
