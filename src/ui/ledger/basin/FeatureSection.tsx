import { memo } from 'react'
import { buriedFeatures } from '../../../basin/index.ts'
import { deriveBody } from '../../../derive/index.ts'
import { type Body, depthFromReference, depthToReference } from '../../../document/index.ts'
import { FEATURES, type Feature, type FeatureField } from '../../../features/index.ts'
import { snapLength } from '../../../units/index.ts'
import { useAppStore, useCanEdit, useUnits } from '../../context.tsx'
import { type Answer, Button, ChoiceField, Disclosure, NumberField, QuantityField } from '../../fields/index.ts'
import { featureRange } from '../../plan/feature-range.ts'
import { roundFeature } from '../../plan/round-feature.ts'
import styles from './basin.module.css'
import { HandleTable } from './HandleTable.tsx'
import { placeFeature } from './placement.ts'
import { nodesOf } from './ring.ts'
import { Section } from './Section.tsx'
import { depthCaution, riseCaution, widthCaution } from './unusual.ts'
import { REFERENCE_PARTS, useBodyParts, useEdit } from './useBasin.ts'

const PARTS = [...REFERENCE_PARTS, 'features', 'floor', 'outline'] as const

/** Whatever stands in the water: a line each, with the numbers that their kind has. */
export const FeatureSection = memo(function FeatureSection({ number }: { readonly number: number }) {
  const body = useBodyParts(PARTS)
  const store = useAppStore()
  const edit = useEdit()
  const canEdit = useCanEdit()
  const units = useUnits()
  if (!body) return null
  const add = (id: string) => {
    const now = store.getState().spec.bodies[0] ?? body
    const feature = placeFeature(now, (place) => {
      const usual = FEATURES.get(id)?.defaults({ ...place, sizeM: snapLength(place.sizeM, units) })
      return usual && roundFeature(usual, units, depthToReference(now, 0))
    })
    if (!feature || edit('addFeature', { bodyId: now.id, feature })) return
    store.getState().select({ kind: 'feature', bodyId: now.id, feature: now.features.length })
  }
  return (
    <Section
      number={number}
      title="Steps, shelves, benches, ramps"
      aside={body.features.length === 0 ? 'none' : undefined}
    >
      {body.features.length === 0 ? (
        <p className={styles['say']}>
          Nothing stands in the water. Where one thing stands over another, the shallower one rules.
        </p>
      ) : null}
      {body.features.map((feature, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a feature is known by its place in the list
        <FeatureItem key={index} body={body} feature={feature} index={index} />
      ))}
      {canEdit ? (
        <ChoiceField
          label="Add"
          placeholder="steps, a bench, a ramp…"
          value={undefined}
          options={FEATURES.rows.map(({ id, label, help }) => ({ id, label: label.toLowerCase(), note: help }))}
          onChange={add}
        />
      ) : null}
    </Section>
  )
})

interface ItemProps {
  readonly body: Body
  readonly feature: Feature
  readonly index: number
}

function FeatureItem({ body, feature, index }: ItemProps) {
  const edit = useEdit()
  const canEdit = useCanEdit()
  const store = useAppStore()
  const kind = FEATURES.get(feature.kind)
  if (!kind) return null
  const { partition } = deriveBody(body)
  const isBuried = partition.ok && buriedFeatures(partition.value).includes(index)
  const name = `${kind.label} ${index + 1}`
  const change = (next: Feature) => edit('setFeature', { bodyId: body.id, index, feature: next })
  const select = () => store.getState().select({ kind: 'feature', bodyId: body.id, feature: index })
  return (
    <fieldset className={styles['item']} onFocus={select} aria-label={name}>
      <div className={styles['itemHead']}>
        <h4>{kind.label}</h4>
        {canEdit ? (
          <Button
            tone="quiet"
            label={`Remove ${name}`}
            onPress={() => edit('removeFeature', { bodyId: body.id, index })}
          >
            Remove
          </Button>
        ) : null}
      </div>
      {isBuried ? (
        <p className={styles['remark']} role="note">
          The floor is as shallow as this everywhere under it, so it changes nothing. Make it shallower, or move it.
        </p>
      ) : null}
      {kind.fields.map((field) =>
        field.belongsTo && !field.belongsTo(feature) ? null : (
          <FeatureNumber key={field.id} body={body} field={field} feature={feature} onChange={change} />
        ),
      )}
      <Disclosure isLazy title="Where it stands">
        <HandleTable name={name} feature={feature} handles={kind.handles(feature, body.outline)} onChange={change} />
      </Disclosure>
    </fieldset>
  )
}

interface NumberProps {
  readonly body: Body
  readonly field: FeatureField<Feature>
  readonly feature: Feature
  readonly onChange: (feature: Feature) => Answer
}

function FeatureNumber({ body, field, feature, onChange }: NumberProps) {
  const units = useUnits()
  const value = field.get(feature)
  const set = (next: number | undefined) => (next === undefined ? undefined : onChange(field.set(feature, next)))
  if (field.unit === 'count') {
    const isSide = field.id === 'fromSegment' || field.id === 'toSegment'
    const max = isSide ? nodesOf(body.outline).length : 40
    return <NumberField label={field.label} value={value} digits={0} min={1} max={max} isRequired onChange={set} />
  }
  // Depths of a feature are converted as all others are; its other lengths stand for themselves.
  const { isDepth } = field
  const caution = isDepth
    ? depthCaution(value, units)
    : field.id === 'riseM'
      ? riseCaution(value, body, units)
      : widthCaution(value, body.outline, units)
  return (
    <QuantityField
      label={field.label}
      quantity="length"
      value={isDepth ? depthToReference(body, value) : value}
      {...featureRange(field, body)}
      description={caution ?? ''}
      isRequired
      onChange={(typed) => set(isDepth && typed !== undefined ? depthFromReference(body, typed) : typed)}
    />
  )
}
