import { depthFromReference, depthToReference } from '../../../document/index.ts'
import { Button, coordinateRange, LONGEST_M, QuantityField } from '../../fields/index.ts'
import { depthCaution } from '../../ledger/basin/unusual.ts'
import { edits } from '../edits.ts'
import { fromSheet, toSheet } from '../view.ts'
import { Actions, Cell, Kinds, Title } from './parts.tsx'
import type { StripProps } from './types.ts'

/** A depth line: its depth, and what can be done with the whole of it. */
export function ContourStrip({ scene, hands, give, remove, contour }: StripProps & { readonly contour: number }) {
  const { body } = scene
  const rings = body.floor.kind === 'contours' ? body.floor.rings : []
  const ring = rings[contour]
  if (!ring) return null
  return (
    <>
      <Title
        name={`Depth line ${contour + 1} of ${rings.length}`}
        note={depthCaution(ring.depthM, scene.units) ?? 'drag its points, or all of it'}
      />
      <Cell>
        <QuantityField
          label="Depth"
          isCompact
          isRequired
          quantity="length"
          value={depthToReference(body, ring.depthM)}
          onChange={(si) =>
            si === undefined ? undefined : give(edits.setContourDepth(body.id, contour, depthFromReference(body, si)))
          }
        />
      </Cell>
      <Actions>
        <Button
          onPress={() => {
            if (give(edits.addContourInside(body.id))) return
            hands.app.getState().select({ kind: 'contour', bodyId: body.id, contour: rings.length })
          }}
        >
          Add inside
        </Button>
        <Button onPress={() => remove(edits.removeContour(body.id, contour))}>Delete</Button>
      </Actions>
    </>
  )
}

/** A sounding: where it was taken and how deep it is there. */
export function SoundingStrip({ scene, hands, give, remove, sounding }: StripProps & { readonly sounding: number }) {
  const { body } = scene
  const points = body.floor.kind === 'soundings' ? body.floor.points : []
  const point = points[sounding]
  if (!point) return null
  const { turn } = scene.view
  const [u, v] = toSheet([point[0], point[1]], turn)
  const move = (to: readonly [number, number]) => give(edits.moveSounding(body.id, sounding, fromSheet(to, turn)))
  return (
    <>
      <Title name={`Sounding ${sounding + 1} of ${points.length}`} note={depthCaution(point[2], scene.units)} />
      <Cell>
        <QuantityField
          label="Depth"
          isCompact
          isRequired
          quantity="length"
          value={depthToReference(body, point[2])}
          onChange={(si) =>
            si === undefined ? undefined : give(edits.setSoundingDepth(body.id, sounding, depthFromReference(body, si)))
          }
        />
      </Cell>
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
      <Actions>
        <Button onPress={() => hands.app.getState().setTool('sounding')}>Take more</Button>
        <Button onPress={() => remove(edits.removeSounding(body.id, sounding))}>Delete</Button>
      </Actions>
    </>
  )
}

const FORMS = [
  { id: 'cap', label: 'Bowl' },
  { id: 'cone', label: 'Cone' },
] as const

/** The hollow of a dished floor. */
export function DishStrip({ scene, give }: StripProps) {
  const { body } = scene
  const { floor } = body
  if (floor.kind !== 'dish') return null
  return (
    <>
      <Title name="Dished floor" note="drag its middle or its rim" />
      <Kinds
        label="Form of the hollow"
        value={floor.form}
        options={FORMS}
        onChange={(form) => give(edits.setDish(body.id, { form }))}
      />
      <Cell>
        <QuantityField
          label="Radius"
          isCompact
          isRequired
          quantity="length"
          min={0.01}
          max={LONGEST_M}
          value={floor.radiusM}
          onChange={(radiusM) => (radiusM === undefined ? undefined : give(edits.setDish(body.id, { radiusM })))}
        />
      </Cell>
      <Cell>
        <QuantityField
          label="In the middle"
          isCompact
          isRequired
          quantity="length"
          value={depthToReference(body, floor.depthM)}
          onChange={(si) =>
            si === undefined ? undefined : give(edits.setDish(body.id, { depthM: depthFromReference(body, si) }))
          }
        />
      </Cell>
      <Cell>
        <QuantityField
          label="At the walls"
          isCompact
          isRequired
          quantity="length"
          value={depthToReference(body, floor.edgeDepthM)}
          onChange={(si) =>
            si === undefined ? undefined : give(edits.setEdgeDepth(body.id, depthFromReference(body, si)))
          }
        />
      </Cell>
    </>
  )
}
