import { Fragment } from 'react'
import type { Axis, Point, ProfileFloor } from '../../../basin/index.ts'
import { assumedDepths, type Body } from '../../../document/index.ts'
import { useAppStore, useCanEdit, useUnits } from '../../context.tsx'
import { type Answer, Button, coordinateRange, Disclosure, QuantityField } from '../../fields/index.ts'
import { stationProblem } from '../../plan/station-place.ts'
import styles from './basin.module.css'
import { Coordinate } from './Coordinate.tsx'
import { DepthField } from './DepthField.tsx'
import { FromOrigin } from './FromOrigin.tsx'
import { nextStation } from './floors.ts'
import { HintRow } from './HintRow.tsx'
import { RowButton } from './RowButton.tsx'
import { slopeRemark } from './slope.ts'
import { depthCaution, stationCaution } from './unusual.ts'
import { useEdit } from './useBasin.ts'

const FEWEST = 1
const IN_THE_DRY = 'A beach does; for a depth below it, leave the minus sign out.'

interface Props {
  readonly body: Body
  readonly floor: ProfileFloor
}

/** Depths along the section A–A′, with the fall between them. */
export function StationTable({ body, floor }: Props) {
  const edit = useEdit()
  const canEdit = useCanEdit()
  const store = useAppStore()
  const units = useUnits()
  const { stations, axis } = floor
  const sectionM = Math.hypot(axis.to[0] - axis.from[0], axis.to[1] - axis.from[1])
  const bodyId = body.id
  const assumed = assumedDepths(body)
  const moveAxis = (next: Axis) => edit('setAxis', { bodyId: body.id, axis: next })
  return (
    <>
      <table className={styles['table']} aria-label="Stations of the section">
        <thead>
          <tr>
            <th scope="col" className={styles['order']}>
              <span className="visually-hidden">Station</span>
            </th>
            <th scope="col">from A</th>
            <th scope="col">depth</th>
            <th scope="col" className={styles['actions']}>
              <span className="visually-hidden">Remove</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {stations.map((station, i) => {
            const [sM, depthM] = station
            const next = stations[i + 1]
            const caution = [stationCaution(sM, sectionM), depthCaution(depthM, units), depthM < 0 ? IN_THE_DRY : '']
              .filter(Boolean)
              .join(' ')
            const fall = next ? slopeRemark(station, next) : undefined
            return (
              // biome-ignore lint/suspicious/noArrayIndexKey: a station is known by its place in the row
              <Fragment key={i}>
                <tr onFocus={() => store.getState().select({ kind: 'station', bodyId: body.id, station: i })}>
                  <th scope="row" className={styles['order']}>
                    {i + 1}
                  </th>
                  <td>
                    <QuantityField
                      hideLabel
                      isRequired
                      label={`Station ${i + 1}, distance from A`}
                      quantity="length"
                      value={sM}
                      {...coordinateRange(sM)}
                      onChange={(s) =>
                        s === undefined
                          ? undefined
                          : (stationProblem(stations, i, s, units) ??
                            edit('moveStation', { bodyId, station: i, sM: s, depthM }))
                      }
                    />
                  </td>
                  <td>
                    <DepthField
                      hideLabel
                      body={body}
                      label={`Station ${i + 1}, depth`}
                      depthM={depthM}
                      isAssumed={assumed[i]}
                      onChange={(said) =>
                        edit('moveStation', { bodyId, station: i, sM, depthM: said, saysDepth: true })
                      }
                    />
                  </td>
                  <td className={styles['actions']}>
                    {canEdit ? (
                      <RowButton
                        sign="cross"
                        label={`Remove station ${i + 1}`}
                        isDisabled={stations.length <= FEWEST}
                        onPress={() => edit('removeStation', { bodyId: body.id, station: i })}
                      />
                    ) : null}
                  </td>
                </tr>
                <HintRow columns={4} text={caution} />
                {fall ? (
                  <tr className={styles['between']}>
                    <td />
                    <td colSpan={3}>
                      {fall.words}
                      {fall.hint ? <span className={styles['hint']}>{fall.hint} Local codes differ.</span> : null}
                    </td>
                  </tr>
                ) : null}
              </Fragment>
            )
          })}
        </tbody>
      </table>
      {canEdit ? (
        <Button
          onPress={() => {
            edit('addStation', { bodyId, sM: nextStation(stations) })
          }}
        >
          Add a station
        </Button>
      ) : null}
      <Disclosure title="Ends of the section" aside="A, A′">
        <FromOrigin />
        <AxisEnd name="A" at={axis.from} onMove={(from) => moveAxis({ ...axis, from })} />
        <AxisEnd name="A′" at={axis.to} onMove={(to) => moveAxis({ ...axis, to })} />
      </Disclosure>
    </>
  )
}

interface EndProps {
  readonly name: string
  readonly at: Point
  readonly onMove: (to: Point) => Answer
}

function AxisEnd({ name, at, onMove }: EndProps) {
  return (
    <div className={styles['pair']}>
      <span>{name}</span>
      <Coordinate isCompact of={name} axis={0} at={at} onMove={onMove} />
      <Coordinate isCompact of={name} axis={1} at={at} onMove={onMove} />
    </div>
  )
}
