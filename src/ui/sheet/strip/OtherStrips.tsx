import { boundsOf } from '../../../basin/index.ts'
import { depthFromReference, depthToReference } from '../../../document/index.ts'
import { FEATURES } from '../../../features/index.ts'
import { formatSlope } from '../../../units/index.ts'
import { Button, coordinateRange, LONGEST_M, NumberField, QuantityField } from '../../fields/index.ts'
import { depthCaution } from '../../ledger/basin/unusual.ts'
import { featureRange } from '../../plan/feature-range.ts'
import { nodesOf } from '../../plan/nodes.ts'
import { stationProblem } from '../../plan/station-place.ts'
import { runsOf } from '../../section/slopes.ts'
import { edits } from '../edits.ts'
import { addStation } from '../gestures.ts'
import { axisLength } from '../scene.ts'
import { fromSheet, toSheet } from '../view.ts'
import { Actions, Cell, Title } from './parts.tsx'
import type { StripProps } from './types.ts'

/** A station: how far from A and how deep, and how the floor goes on from it. */
export function StationStrip({ scene, hands, give, remove, station }: StripProps & { readonly station: number }) {
  const { body } = scene
  const stations = body.floor.kind === 'profile' ? body.floor.stations : []
  const here = stations[station]
  if (!here) return null
  const [sM, depthM] = here
  const run = runsOf(stations).find((r) => r.fromM === sM)
  const limit = run?.usualLimit === undefined ? '' : `; usual limit 1 : ${run.usualLimit}`
  const note = depthCaution(depthM, scene.units) ?? (run ? `next run ${formatSlope(run.slope)}${limit}` : undefined)
  const next = stations[station + 1] ?? stations[station - 1]
  return (
    <>
      <Title name={`Station ${station + 1} of ${stations.length}`} note={note} />
      <Cell>
        <QuantityField
          label="From A"
          isCompact
          isRequired
          quantity="length"
          value={sM}
          {...coordinateRange(sM)}
          onChange={(si) =>
            si === undefined
              ? undefined
              : (stationProblem(stations, station, si, scene.units) ??
                give(edits.moveStation(body.id, station, si, depthM)))
          }
        />
      </Cell>
      <Cell>
        <QuantityField
          label="Depth"
          isCompact
          isRequired
          quantity="length"
          value={depthToReference(body, depthM)}
          onChange={(si) =>
            si === undefined
              ? undefined
              : give(edits.setStationDepth(body.id, station, sM, depthFromReference(body, si)))
          }
        />
      </Cell>
      <Actions>
        <Button
          isDisabled={!next}
          onPress={() => {
            if (next) addStation(hands, scene, (sM + next[0]) / 2)
          }}
        >
          Add station
        </Button>
        <Button isDisabled={stations.length < 2} onPress={() => remove(edits.removeStation(body.id, station))}>
          Delete
        </Button>
      </Actions>
    </>
  )
}

/** An end of the section line. */
export function AxisStrip({ scene, give, end }: StripProps & { readonly end: 'from' | 'to' }) {
  const { axis } = scene.section
  const { turn } = scene.view
  const [u, v] = toSheet(axis[end], turn)
  const other = end === 'from' ? axis.to : axis.from
  const length = axisLength(axis)
  const move = (to: readonly [number, number]) => give(edits.moveAxis(scene.body.id, end, to))
  return (
    <>
      <Title name={`Section end ${end === 'from' ? 'A' : 'A′'}`} note="stations keep their distance from A" />
      <Cell>
        <QuantityField
          label="Right of 0"
          isCompact
          isRequired
          quantity="length"
          value={u}
          {...coordinateRange(u)}
          onChange={(si) => (si === undefined ? undefined : move(fromSheet([si, v], turn)))}
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
          onChange={(si) => (si === undefined ? undefined : move(fromSheet([u, si], turn)))}
        />
      </Cell>
      <Cell>
        <QuantityField
          label="A to A′"
          isCompact
          isRequired
          quantity="length"
          min={0.1}
          max={LONGEST_M}
          value={length}
          onChange={(si) => {
            if (si === undefined || length === 0) return undefined
            const by = si / length
            const here = axis[end]
            return move([other[0] + (here[0] - other[0]) * by, other[1] + (here[1] - other[1]) * by])
          }}
        />
      </Cell>
    </>
  )
}

/** A feature: every number that its kind knows. */
export function FeatureStrip({ scene, give, remove, feature: index }: StripProps & { readonly feature: number }) {
  const { body } = scene
  const feature = body.features[index]
  const row = feature && FEATURES.get(feature.kind)
  if (!feature || !row) return null
  const sides = nodesOf(body.outline).length
  return (
    <>
      <Title name={row.label} note={`${index + 1} of ${body.features.length}`} />
      {row.fields.map((field) => {
        if (field.belongsTo && !field.belongsTo(feature)) return null
        const value = field.get(feature)
        const set = (next: number) => give(edits.setFeature(body.id, index, field.set(feature, next)))
        return (
          <Cell key={field.id} width={field.unit === 'count' && !isSide(field.id) ? 'count' : 'narrow'}>
            {field.unit === 'count' ? (
              <NumberField
                label={SHORT[field.id] ?? field.label}
                isCompact
                isRequired
                digits={0}
                min={1}
                max={isSide(field.id) ? sides : 40}
                value={value}
                onChange={(n) => (n === undefined ? undefined : set(n))}
              />
            ) : (
              <QuantityField
                label={SHORT[field.id] ?? field.label}
                isCompact
                isRequired
                quantity="length"
                value={field.isDepth ? depthToReference(body, value) : value}
                {...featureRange(field, body)}
                onChange={(si) =>
                  si === undefined ? undefined : set(field.isDepth ? depthFromReference(body, si) : si)
                }
              />
            )}
          </Cell>
        )
      })}
      <Actions>
        <Button onPress={() => remove(edits.removeFeature(body.id, index))}>Delete</Button>
      </Actions>
    </>
  )
}

/** Labels that fit the strip; the ledger has the long ones. */
const SHORT: Readonly<Record<string, string>> = {
  depthM: 'Depth',
  count: 'Treads',
  goingM: 'Front to back',
  riseM: 'Drop',
  firstDepthM: 'First tread',
  firstRadiusM: 'First radius',
  widthM: 'Width',
  fromSegment: 'From side',
  toSegment: 'To side',
  fromDepthM: 'Begins at',
  toDepthM: 'Ends at',
}

/** Sides of the outline are counted, and there are only so many. */
const isSide = (id: string) => id === 'fromSegment' || id === 'toSegment'

/** An overall dimension, typed. */
export function DimensionStrip({ scene, give, axis }: StripProps & { readonly axis: 'x' | 'y' }) {
  const box = boundsOf(scene.body.outline)
  const isAcross = (axis === 'x') === (scene.view.turn % 2 === 0)
  const value = axis === 'x' ? box.maxX - box.minX : box.maxY - box.minY
  return (
    <>
      <Title name={isAcross ? 'Overall length' : 'Overall width'} note="stretches the plan and what is in it" />
      <Cell>
        <QuantityField
          label={isAcross ? 'Length' : 'Width'}
          isCompact
          isRequired
          quantity="length"
          min={0.1}
          max={LONGEST_M}
          value={value}
          onChange={(si) => (si === undefined ? undefined : give(edits.stretchOutline(scene.body.id, axis, si)))}
        />
      </Cell>
    </>
  )
}
