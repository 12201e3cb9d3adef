import type { Path, Point } from '../../../basin/index.ts'
import { closed, isSmooth } from '../../../document/index.ts'
import { Button, coordinateRange, QuantityField } from '../../fields/index.ts'
import { nodesOf } from '../../plan/nodes.ts'
import { edits } from '../edits.ts'
import type { Ring } from '../items.ts'
import { fromSheet, toSheet } from '../view.ts'
import { Actions, Cell, Kinds, PlaceHere, ringNote, Title } from './parts.tsx'
import type { StripProps } from './types.ts'

const KINDS = [
  { id: 'corner', label: 'Corner' },
  { id: 'smooth', label: 'Smooth' },
] as const

interface Props extends StripProps {
  readonly ring: Ring
  readonly path: Path
  readonly node: number
}

/** A point of the outline: its place as numbers, its kind, what can be done with it. */
export function NodeStrip({ scene, hands, give, remove, ring, path, node }: Props) {
  const nodes = nodesOf(path)
  const at = nodes[node]
  if (!at) return null
  const { turn } = scene.view
  const bodyId = scene.body.id
  const [u, v] = toSheet(at, turn)
  const move = (to: Point) => give(edits.movePoint(bodyId, ring, node, fromSheet(to, turn)))
  const round = closed(path)
  return (
    <>
      <Title name={`Point ${node + 1} of ${nodes.length}`} note={ringNote(ring)} />
      <Cell>
        <QuantityField
          label="Right of 0"
          isCompact
          isRequired
          quantity="length"
          value={u}
          {...coordinateRange(u)}
          onChange={(si) => (si === undefined ? undefined : move([si, v]))}
        />
      </Cell>
      <Cell>
        <QuantityField
          label="Up from 0"
          isCompact
          isRequired
          quantity="length"
          value={v}
          {...coordinateRange(v)}
          onChange={(si) => (si === undefined ? undefined : move([u, si]))}
        />
      </Cell>
      <Kinds
        label="Kind of point"
        value={isSmooth(round, node) ? 'smooth' : 'corner'}
        options={KINDS}
        onChange={(kind) => give(edits.setPointKind(bodyId, ring, node, kind))}
      />
      <Actions>
        {ring.of === 'outline' ? <PlaceHere scene={scene} hands={hands} at={at} /> : null}
        <Button
          onPress={() => {
            if (give(edits.insertPoint(bodyId, ring, node, 0.5))) return
            hands.app.getState().select({ kind: 'node', bodyId, ring, node: node + 1 })
          }}
        >
          Add after
        </Button>
        <Button onPress={() => remove(edits.removePoint(bodyId, ring, node))}>Delete</Button>
      </Actions>
    </>
  )
}
