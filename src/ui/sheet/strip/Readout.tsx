import { depthAt } from '../../../basin/index.ts'
import { depthToReference } from '../../../document/index.ts'
import { FEATURES } from '../../../features/index.ts'
import { formatQuantity, formatSlope } from '../../../units/index.ts'
import { MANY_POINTS } from '../handles-shown.ts'
import { useLocal } from '../local.ts'
import { alongAxis, type Scene } from '../scene.ts'
import styles from './strip.module.css'

/** The depth under the pointer or under the keyboard's cross hairs. */
export function Readout({ scene }: { readonly scene: Scene }) {
  const hover = useLocal((state) => state.hover)
  const cursor = useLocal((state) => state.cursor)
  const at = cursor ?? hover
  const { partition } = scene.derived
  const sample = at && partition.ok ? depthAt(partition.value, at[0], at[1]) : undefined
  if (!at || !sample) {
    const press = scene.isCoarse ? 'Tap the water' : 'Point at the water'
    const more = scene.canEdit ? ` ${scene.isCoarse ? 'Tap' : 'Click'} a point, side or station for its numbers.` : ''
    const count = scene.body.outline.segments.length
    const some =
      count > MANY_POINTS && scene.canEdit
        ? ` Of ${count.toLocaleString('en')} points those that lie apart have marks; come nearer for more.`
        : ''
    return <p className={styles['say']}>{`${press} to read its depth.${more}${some}`}</p>
  }
  const say = (si: number) => formatQuantity('length', si, scene.units)
  const feature = sample.feature === undefined ? undefined : scene.body.features[sample.feature]
  const what = feature
    ? (FEATURES.get(feature.kind)?.label ?? '')
    : sample.slope > 0
      ? `falls ${formatSlope(sample.slope)}`
      : 'level'
  return (
    <p className={styles['say']}>
      <span className={styles['depth']}>{say(depthToReference(scene.body, sample.depthM))}</span> deep here · {what} ·{' '}
      {say(alongAxis(scene.section.axis, at))} from A
    </p>
  )
}
