import type { Floor } from '../../../basin/index.ts'
import { assumedDepths, type Body } from '../../../document/index.ts'
import { ChoiceField } from '../../fields/index.ts'
import styles from './basin.module.css'
import { ContourFields } from './ContourFields.tsx'
import { DepthField } from './DepthField.tsx'
import { DishFields } from './DishFields.tsx'
import { FLOOR_CHOICES } from './floor-choices.tsx'
import { SoundingFields } from './SoundingFields.tsx'
import { StationTable } from './StationTable.tsx'
import { useEdit } from './useBasin.ts'

/** What kind of floor it is, and its depths. */
export function FloorFields({ body }: { readonly body: Body }) {
  const edit = useEdit()
  const { floor } = body
  return (
    <div className={styles['group']}>
      <ChoiceField
        label="Floor"
        value={floor.kind}
        options={FLOOR_CHOICES}
        onChange={(kind) => edit('setFloorKind', { bodyId: body.id, kind })}
        description={FLOOR_CHOICES.find((choice) => choice.id === floor.kind)?.note}
      />
      <KindFields body={body} floor={floor} />
    </div>
  )
}

function KindFields({ body, floor }: { readonly body: Body; readonly floor: Floor }) {
  const edit = useEdit()
  switch (floor.kind) {
    case 'flat':
      return (
        <DepthField
          body={body}
          label="Depth"
          depthM={floor.depthM}
          isAssumed={assumedDepths(body)[0]}
          onChange={(depthM) => edit('setFloor', { bodyId: body.id, floor: { kind: 'flat', depthM } })}
        />
      )
    case 'profile':
      return <StationTable body={body} floor={floor} />
    case 'contours':
      return <ContourFields body={body} floor={floor} />
    case 'soundings':
      return <SoundingFields body={body} floor={floor} />
    case 'dish':
      return <DishFields body={body} floor={floor} />
  }
}
