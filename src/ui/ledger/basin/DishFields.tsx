import type { DishFloor } from '../../../basin/index.ts'
import { assumedDepths, type Body } from '../../../document/index.ts'
import { useApp, useUnits } from '../../context.tsx'
import { coordinateRange, LONGEST_M, QuantityField, SegmentedField } from '../../fields/index.ts'
import styles from './basin.module.css'
import { DepthField } from './DepthField.tsx'
import { FromOrigin } from './FromOrigin.tsx'
import { hollowCaution, placeCaution, widthCaution } from './unusual.ts'
import { useEdit } from './useBasin.ts'

interface Props {
  readonly body: Body
  readonly floor: DishFloor
}

/** A dished floor: the level floor around, the hollow's form, place, width and depth. */
export function DishFields({ body, floor }: Props) {
  const edit = useEdit()
  const bodyId = body.id
  const assumed = assumedDepths(body)
  const [x, y] = floor.centre
  const units = useUnits()
  const outline = useApp((state) => state.spec.bodies.find(({ id }) => id === bodyId)?.outline) ?? body.outline
  const place = placeCaution(floor.centre, outline) ?? hollowCaution(floor.centre, floor.radiusM, outline)
  return (
    <>
      <SegmentedField
        label="Form of the hollow"
        value={floor.form}
        options={[
          { id: 'cap', label: 'round, a bowl' },
          { id: 'cone', label: 'straight, a cone' },
        ]}
        onChange={(form) => edit('setDish', { bodyId, form })}
      />
      <DepthField
        body={body}
        label="Depth at the walls"
        depthM={floor.edgeDepthM}
        isAssumed={assumed[0]}
        onChange={(depthM) => edit('setEdgeDepth', { bodyId, depthM })}
        description="The floor around the hollow is level at this depth."
      />
      <DepthField
        body={body}
        label="Depth in the middle of the hollow"
        depthM={floor.depthM}
        isAssumed={assumed[1]}
        onChange={(depthM) => edit('setDish', { bodyId, depthM })}
      />
      <QuantityField
        label="Radius of the hollow"
        quantity="length"
        value={floor.radiusM}
        min={0.01}
        max={LONGEST_M}
        isRequired
        onChange={(radiusM) => (radiusM === undefined ? undefined : edit('setDish', { bodyId, radiusM }))}
        description={widthCaution(floor.radiusM, outline, units) ?? ''}
      />
      <FromOrigin />
      <div className={styles['pair']}>
        <span>+</span>
        <QuantityField
          isCompact
          isRequired
          label="Middle, x"
          quantity="length"
          value={x}
          {...coordinateRange(x)}
          onChange={(to) => (to === undefined ? undefined : edit('setDish', { bodyId, centre: [to, y] }))}
        />
        <QuantityField
          isCompact
          isRequired
          label="Middle, y"
          quantity="length"
          value={y}
          {...coordinateRange(y)}
          onChange={(to) => (to === undefined ? undefined : edit('setDish', { bodyId, centre: [x, to] }))}
        />
      </div>
      {place ? <p className={styles['hint']}>{place}</p> : null}
    </>
  )
}
