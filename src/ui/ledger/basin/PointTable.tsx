import type { Path } from '../../../basin/index.ts'
import type { RingRef, SegmentKind } from '../../../document/index.ts'
import { useAppStore, useCanEdit } from '../../context.tsx'
import { ChoiceField } from '../../fields/index.ts'
import styles from './basin.module.css'
import { CoordinateCells } from './Coordinate.tsx'
import { FromOrigin } from './FromOrigin.tsx'
import { RowButton } from './RowButton.tsx'
import { nodesOf } from './ring.ts'
import { useEdit } from './useBasin.ts'

const FEWEST = 2

const KINDS: readonly { readonly id: SegmentKind; readonly label: string }[] = [
  { id: 'line', label: 'line' },
  { id: 'arc', label: 'arc' },
  { id: 'curve', label: 'curve' },
]

interface Props {
  readonly bodyId: string
  readonly ring: RingRef
  readonly path: Path
  readonly label: string
}

/** The points of a ring by their coordinates, each of which can be typed. */
export function PointTable({ bodyId, ring, path, label }: Props) {
  const edit = useEdit()
  const canEdit = useCanEdit()
  const store = useAppStore()
  const nodes = nodesOf(path)
  const select = (node: number) => store.getState().select({ kind: 'node', bodyId, ring, node })
  return (
    <>
      <FromOrigin />
      <table className={styles['table']} aria-label={label}>
        <thead>
          <tr>
            <th scope="col" className={styles['order']}>
              <span className="visually-hidden">Point</span>
            </th>
            <th scope="col">x</th>
            <th scope="col">y</th>
            <th scope="col">then</th>
            <th scope="col" className={styles['actions']}>
              <span className="visually-hidden">Insert or remove</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {nodes.map(({ at, next }, node) => {
            const no = node + 1
            return (
              // biome-ignore lint/suspicious/noArrayIndexKey: a point is known by its place in the ring
              <tr key={node} onFocus={() => select(node)}>
                <th scope="row" className={styles['order']}>
                  {no}
                </th>
                <CoordinateCells
                  of={`Point ${no}`}
                  at={at}
                  onMove={(to) => edit('movePoint', { bodyId, ring, node, to })}
                />
                <td className={styles['word']}>
                  <ChoiceField
                    hideLabel
                    label={`From point ${no} on`}
                    value={next}
                    options={KINDS}
                    onChange={(kind) => edit('setSegmentKind', { bodyId, ring, segment: node, kind })}
                  />
                </td>
                <td className={styles['actions']}>
                  {canEdit ? (
                    <>
                      <RowButton
                        sign="plus"
                        label={`Insert a point after point ${no}`}
                        onPress={() => edit('insertPoint', { bodyId, ring, segment: node, t: 0.5 })}
                      />
                      <RowButton
                        sign="cross"
                        label={`Remove point ${no}`}
                        isDisabled={nodes.length <= FEWEST}
                        onPress={() => edit('removePoint', { bodyId, ring, node })}
                      />
                    </>
                  ) : null}
                </td>
              </tr>
            )
          })}
        </tbody>
      </table>
    </>
  )
}
