import { memo } from 'react'
import { areaOf, boundsOf, type Path } from '../../../basin/index.ts'
import { assumedDepths, type Body } from '../../../document/index.ts'
import { formatQuantity } from '../../../units/index.ts'
import { useAppStore, useCanEdit, useUnits } from '../../context.tsx'
import { Button, Disclosure, LONGEST_M, QuantityField } from '../../fields/index.ts'
import { roundIn } from '../../sheet/edits.ts'
import styles from './basin.module.css'
import { floorUnder, middleOf } from './new-body.ts'
import { PointTable } from './PointTable.tsx'
import { islandIn, movedTo } from './place-path.ts'
import { nodesOf } from './ring.ts'
import { Section } from './Section.tsx'
import { SketchNote } from './SketchNote.tsx'
import { StartOutline } from './StartOutline.tsx'
import { lengthCaution } from './unusual.ts'
import { useBodyParts, useEdit } from './useBasin.ts'

const PARTS = ['id', 'outline', 'islands', 'sketch'] as const

/** The outline by its numbers: a starting form, its points, its islands. */
export const OutlineSection = memo(function OutlineSection({ number }: { readonly number: number }) {
  const body = useBodyParts(PARTS)
  const store = useAppStore()
  const edit = useEdit()
  const units = useUnits()
  const canEdit = useCanEdit()
  if (!body) {
    return (
      <Section number={number} title="Outline">
        <p className={styles['say']}>
          Drag a loop on the sheet, or set points one by one, or begin here: one outline that takes its form from its
          numbers and can be pulled about afterwards.
        </p>
        <StartOutline
          label="Put on the sheet"
          onPut={(outline) => edit('drawOutline', { outline, roundIn: roundIn(units) })}
        />
      </Section>
    )
  }
  const replace = (path: Path) => {
    const outline = movedTo(path, middleOf(body.outline))
    // Depths that nobody has measured are assumed anew.
    const now = store.getState().spec.bodies[0] ?? body
    const floor = assumedDepths(now).every(Boolean) ? {} : { floor: floorUnder(now.floor, now.outline, outline) }
    edit('drawOutline', { bodyId: body.id, outline, roundIn: roundIn(units), ...floor })
  }
  return (
    <Section number={number} title="Outline" aside={body.sketch ? 'a sketch' : undefined}>
      {body.sketch ? <SketchNote body={body} /> : <OverallFields body={body} />}
      <div>
        <Disclosure isLazy title="Points" aside={`${nodesOf(body.outline).length}`}>
          <PointTable bodyId={body.id} ring={{ of: 'outline' }} path={body.outline} label="Points of the outline" />
        </Disclosure>
        <Islands body={body} />
        {canEdit ? (
          <Disclosure title="Start again from numbers" isScreenOnly>
            <p className={styles['say']}>
              Takes the place of the outline; its islands, steps and shelves go with it. Depths are stretched along.
            </p>
            <StartOutline label="Put on the sheet" onPut={replace} />
          </Disclosure>
        ) : null}
      </div>
      {canEdit ? (
        <div className={styles['foot']}>
          <Button tone="quiet" onPress={() => edit('removeBody', { bodyId: body.id })}>
            Remove the drawing
          </Button>
        </div>
      ) : null}
    </Section>
  )
})

function OverallFields({ body }: { readonly body: Body }) {
  const edit = useEdit()
  const units = useUnits()
  const box = boundsOf(body.outline)
  const caution = lengthCaution(Math.max(box.maxX - box.minX, box.maxY - box.minY), units)
  const stretch = (axis: 'x' | 'y', lengthM: number | undefined) =>
    lengthM === undefined ? undefined : edit('stretchOutline', { bodyId: body.id, axis, lengthM })
  return (
    <div>
      <QuantityField
        label="Overall, across the sheet"
        quantity="length"
        value={box.maxX - box.minX}
        min={0.1}
        max={LONGEST_M}
        isRequired
        onChange={(m) => stretch('x', m)}
      />
      <QuantityField
        label="Overall, up the sheet"
        quantity="length"
        value={box.maxY - box.minY}
        min={0.1}
        max={LONGEST_M}
        isRequired
        onChange={(m) => stretch('y', m)}
        description={caution ?? 'A new figure stretches the whole plan that way.'}
      />
    </div>
  )
}

function Islands({ body }: { readonly body: Body }) {
  const units = useUnits()
  const edit = useEdit()
  const canEdit = useCanEdit()
  if (body.islands.length === 0 && !canEdit) return null
  return (
    <Disclosure isLazy title="Islands" aside={body.islands.length === 0 ? 'none' : `${body.islands.length}`}>
      <p className={styles['say']}>Dry land inside the water: a planter, a pillar, a raised spa.</p>
      {body.islands.map((island, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: an island is known by its place in the list
        <div key={index} className={styles['item']}>
          <div className={styles['itemHead']}>
            <h5>Island {index + 1}</h5>
            <span className={styles['aside']}>{formatQuantity('area', Math.abs(areaOf(island)), units)}</span>
            {canEdit ? (
              <Button
                tone="quiet"
                label={`Remove island ${index + 1}`}
                onPress={() => edit('removeIsland', { bodyId: body.id, index })}
              >
                Remove
              </Button>
            ) : null}
          </div>
          <PointTable
            bodyId={body.id}
            ring={{ of: 'island', index }}
            path={island}
            label={`Points of island ${index + 1}`}
          />
        </div>
      ))}
      {canEdit ? (
        <Button onPress={() => edit('addIsland', { bodyId: body.id, path: islandIn(body.outline) })}>
          Add an island
        </Button>
      ) : null}
    </Disclosure>
  )
}
