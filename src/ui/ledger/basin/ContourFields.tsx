import { Fragment, useMemo } from 'react'
import { areaOf, type ContoursFloor } from '../../../basin/index.ts'
import { assumedDepths, type Body, isLineAssumed } from '../../../document/index.ts'
import { formatQuantity } from '../../../units/index.ts'
import { useAppStore, useCanEdit, useUnits } from '../../context.tsx'
import { Button, Disclosure } from '../../fields/index.ts'
import styles from './basin.module.css'
import { DepthField } from './DepthField.tsx'
import { HintRow } from './HintRow.tsx'
import { PointTable } from './PointTable.tsx'
import { RowButton } from './RowButton.tsx'
import { nodesOf } from './ring.ts'
import { depthCaution } from './unusual.ts'
import { useEdit } from './useBasin.ts'

interface Props {
  readonly body: Body
  readonly floor: ContoursFloor
}

/** A floor by lines of equal depth: the depth at the walls, then each line with its depth and its points. */
export function ContourFields({ body, floor }: Props) {
  const edit = useEdit()
  const canEdit = useCanEdit()
  const units = useUnits()
  const store = useAppStore()
  const bodyId = body.id
  const assumed = assumedDepths(body)
  const { outline, islands } = body
  const isAssumed = useMemo(() => isLineAssumed({ outline, islands, floor }), [outline, islands, floor])
  return (
    <>
      <DepthField
        body={body}
        label="Depth at the walls"
        depthM={floor.edgeDepthM}
        isAssumed={assumed[0]}
        onChange={(depthM) => edit('setEdgeDepth', { bodyId, depthM })}
      />
      {floor.rings.length === 0 ? (
        <p className={styles['say']}>No line yet, so the floor is flat at that depth.</p>
      ) : (
        <table className={styles['table']} aria-label="Depth lines">
          <thead>
            <tr>
              <th scope="col" className={styles['order']}>
                <span className="visually-hidden">Line</span>
              </th>
              <th scope="col">depth</th>
              <th scope="col">encloses</th>
              <th scope="col" className={styles['actions']}>
                <span className="visually-hidden">Remove</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {floor.rings.map((ring, contour) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a line is known by its place in the list
              <Fragment key={contour}>
                <tr onFocus={() => store.getState().select({ kind: 'contour', bodyId, contour })}>
                  <th scope="row" className={styles['order']}>
                    {contour + 1}
                  </th>
                  <td>
                    <DepthField
                      hideLabel
                      body={body}
                      label={`Depth line ${contour + 1}, depth`}
                      depthM={ring.depthM}
                      isAssumed={assumed[contour + 1]}
                      onChange={(depthM) => edit('setContourDepth', { bodyId, contour, depthM })}
                    />
                  </td>
                  <td className={styles['figureCell']}>{formatQuantity('area', Math.abs(areaOf(ring.path)), units)}</td>
                  <td className={styles['actions']}>
                    {canEdit ? (
                      <RowButton
                        sign="cross"
                        label={`Remove depth line ${contour + 1}`}
                        onPress={() => edit('removeContour', { bodyId, contour })}
                      />
                    ) : null}
                  </td>
                </tr>
                <HintRow columns={4} text={depthCaution(ring.depthM, units)} />
              </Fragment>
            ))}
          </tbody>
        </table>
      )}
      {isAssumed ? (
        <p className={styles['say']}>
          Where line 1 runs is assumed. The first line that you draw takes its place; or pull its points to where they
          belong.
        </p>
      ) : null}
      {canEdit ? (
        <div className={styles['buttons']}>
          <Button onPress={() => store.getState().setTool('contour')}>Draw a line</Button>
          <Button onPress={() => edit('addContour', { bodyId })}>
            {floor.rings.length === 0 ? 'Start inside the outline' : 'Add one inside'}
          </Button>
        </div>
      ) : null}
      {floor.rings.map((ring, contour) => (
        <Disclosure
          // biome-ignore lint/suspicious/noArrayIndexKey: a line is known by its place in the list
          key={contour}
          isLazy
          title={`Points of line ${contour + 1}`}
          aside={`${nodesOf(ring.path).length}`}
        >
          <PointTable
            bodyId={bodyId}
            ring={{ of: 'contour', index: contour }}
            path={ring.path}
            label={`Points of depth line ${contour + 1}`}
          />
        </Disclosure>
      ))}
    </>
  )
}
