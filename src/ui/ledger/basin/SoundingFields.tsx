import { Fragment, useEffect, useRef, useState } from 'react'
import type { SoundingsFloor } from '../../../basin/index.ts'
import { assumedDepths, type Body, depthFromReference, firstPointOf } from '../../../document/index.ts'
import { snapLength, type UnitSystem } from '../../../units/index.ts'
import { useAppStore, useCanEdit, useUnits } from '../../context.tsx'
import { Button, QuantityField, SwitchField } from '../../fields/index.ts'
import styles from './basin.module.css'
import { CoordinateCells } from './Coordinate.tsx'
import { DepthField } from './DepthField.tsx'
import { FromOrigin } from './FromOrigin.tsx'
import { HintRow } from './HintRow.tsx'
import { RowButton } from './RowButton.tsx'
import { depthCaution } from './unusual.ts'
import { useBasin, useEdit } from './useBasin.ts'

interface Props {
  readonly body: Body
  readonly floor: SoundingsFloor
}

/** Depth at the walls that is offered before anyone has measured it [m]. */
const USUAL_EDGE_M = 1

const OUTSIDE = 'Outside the water: correct its place, or the outline.'

/** A floor by soundings: each place with its depth, and how deep it is along the walls. */
export function SoundingFields({ body, floor }: Props) {
  const edit = useEdit()
  const canEdit = useCanEdit()
  const store = useAppStore()
  const bodyId = body.id
  const assumed = assumedDepths(body)
  const units = useUnits()
  const measures = useBasin().derived?.measures
  const problem = measures?.ok === false ? measures.problem : undefined
  const isOutside = (sounding: number) =>
    problem?.code === 'sounding-outside' && problem.path === `floor.points[${sounding}]`
  return (
    <>
      <SwitchField
        label="One depth all along the walls"
        value={floor.edgeDepthM !== null}
        onChange={(isOne) =>
          edit(
            'setEdgeDepth',
            isOne ? { bodyId, depthM: edgeOf(floor, units), isAssumed: true } : { bodyId, depthM: null },
          )
        }
        {...(floor.edgeDepthM === null ? { description: 'The walls take the depth of the nearest sounding.' } : {})}
      />
      {floor.edgeDepthM === null ? null : (
        <DepthField
          body={body}
          label="Depth at the walls"
          depthM={floor.edgeDepthM}
          isAssumed={assumed[0]}
          onChange={(depthM) => edit('setEdgeDepth', { bodyId, depthM })}
        />
      )}
      {canEdit ? (
        <div className={styles['buttons']}>
          <Button onPress={() => store.getState().setTool('sounding')}>Sound on the plan</Button>
        </div>
      ) : null}
      <FromOrigin />
      <table className={styles['table']} aria-label="Soundings">
        <thead>
          <tr>
            <th scope="col" className={styles['order']}>
              <span className="visually-hidden">Sounding</span>
            </th>
            <th scope="col">x</th>
            <th scope="col">y</th>
            <th scope="col" className={styles['figureHead']}>
              depth
            </th>
            <th scope="col" className={styles['actions']}>
              <span className="visually-hidden">Remove</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {floor.points.map(([x, y, depthM], sounding) => {
            const no = sounding + 1
            return (
              // biome-ignore lint/suspicious/noArrayIndexKey: a sounding is known by its place in the list
              <Fragment key={sounding}>
                <tr onFocus={() => store.getState().select({ kind: 'sounding', bodyId, sounding })}>
                  <th scope="row" className={styles['order']}>
                    {no}
                  </th>
                  <CoordinateCells
                    of={`Sounding ${no}`}
                    at={[x, y]}
                    onMove={(to) => edit('moveSounding', { bodyId, sounding, to })}
                  />
                  <td>
                    <DepthField
                      hideLabel
                      body={body}
                      label={`Sounding ${no}, depth`}
                      depthM={depthM}
                      isAssumed={assumed[sounding + firstPointOf(floor)]}
                      onChange={(to) => edit('setSoundingDepth', { bodyId, sounding, depthM: to })}
                    />
                  </td>
                  <td className={styles['actions']}>
                    {canEdit ? (
                      <RowButton
                        sign="cross"
                        label={`Remove sounding ${no}`}
                        onPress={() => edit('removeSounding', { bodyId, sounding })}
                      />
                    ) : null}
                  </td>
                </tr>
                <HintRow columns={5} text={isOutside(sounding) ? OUTSIDE : depthCaution(depthM, units)} />
              </Fragment>
            )
          })}
          {canEdit ? <NewSounding body={body} no={floor.points.length + 1} /> : null}
        </tbody>
      </table>
    </>
  )
}

const NO_PLACE = {
  code: 'sounding-without-place',
  path: '',
  what: 'Its place comes first.',
  why: 'A depth belongs to a place.',
  hint: 'Type x and y.',
}

/** The last row, empty: its depth, typed after its place, makes a sounding of it. */
function NewSounding({ body, no }: { readonly body: Body; readonly no: number }) {
  const edit = useEdit()
  const [x, setX] = useState<number>()
  const [y, setY] = useState<number>()
  const [added, setAdded] = useState(0)
  const row = useRef<HTMLTableRowElement>(null)
  // Typed one after the other: with the depth taken, the next place is asked for.
  useEffect(() => {
    if (added > 0 && row.current?.contains(document.activeElement)) row.current.querySelector('input')?.focus()
  }, [added])
  const add = (typed: number | undefined) => {
    if (typed === undefined) return undefined
    if (x === undefined || y === undefined) return NO_PLACE
    const problem = edit('addSounding', { bodyId: body.id, at: [x, y], depthM: depthFromReference(body, typed) })
    if (problem) return problem
    setX(undefined)
    setY(undefined)
    setAdded(added + 1)
    return undefined
  }
  return (
    <tr ref={row}>
      <th scope="row" className={styles['order']}>
        +
      </th>
      <td>
        <QuantityField hideLabel label={`New sounding ${no}, x`} quantity="length" value={x} onChange={setX} />
      </td>
      <td>
        <QuantityField hideLabel label={`New sounding ${no}, y`} quantity="length" value={y} onChange={setY} />
      </td>
      <td>
        <QuantityField
          hideLabel
          label={`New sounding ${no}, depth`}
          quantity="length"
          value={undefined}
          onChange={add}
        />
      </td>
      <td className={styles['actions']} />
    </tr>
  )
}

/** What the depth at the walls starts from: the shallowest sounding. */
function edgeOf(floor: SoundingsFloor, units: UnitSystem): number {
  return floor.points.length > 0 ? Math.min(...floor.points.map((point) => point[2])) : snapLength(USUAL_EDGE_M, units)
}
