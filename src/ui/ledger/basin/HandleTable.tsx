import type { Feature, FeatureHandle } from '../../../features/index.ts'
import type { Answer } from '../../fields/index.ts'
import styles from './basin.module.css'
import { CoordinateCells } from './Coordinate.tsx'
import { FromOrigin } from './FromOrigin.tsx'

interface Props {
  readonly name: string
  readonly feature: Feature
  readonly handles: readonly FeatureHandle<Feature>[]
  readonly onChange: (feature: Feature) => Answer
}

/** Handles that lie on an earlier one, as the last point of a closed path does on its first, are one place. */
function places(handles: readonly FeatureHandle<Feature>[], feature: Feature) {
  const all = handles.map((handle) => ({ handle, at: handle.at(feature) }))
  return all.filter(({ at }, i) => all.findIndex((other) => other.at[0] === at[0] && other.at[1] === at[1]) === i)
}

/** What can be dragged on the plan, as coordinates that can be typed. */
export function HandleTable({ name, feature, handles, onChange }: Props) {
  return (
    <>
      <FromOrigin />
      <table className={styles['table']} aria-label={`Places of ${name}`}>
        <thead>
          <tr>
            <th scope="col" className={styles['place']}>
              <span className="visually-hidden">Place</span>
            </th>
            <th scope="col">x</th>
            <th scope="col">y</th>
          </tr>
        </thead>
        <tbody>
          {places(handles, feature).map(({ handle, at }) => (
            <tr key={handle.id}>
              <th scope="row" className={styles['place']}>
                {handle.label}
              </th>
              <CoordinateCells of={handle.label} at={at} onMove={(to) => onChange(handle.moveTo(feature, to))} />
            </tr>
          ))}
        </tbody>
      </table>
    </>
  )
}
