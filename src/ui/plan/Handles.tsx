import { memo } from 'react'
import { classes } from '../fields/index.ts'
import type { PlacedItem } from '../sheet/items.ts'
import styles from './plan.module.css'

interface Props {
  readonly items: readonly PlacedItem[]
  readonly selectedKey: string | undefined
  readonly isCoarse: boolean
  /** The one item that the Tab key comes to from outside. */
  readonly tabKey: string | undefined
  readonly onFocus: (item: PlacedItem) => void
}

/** The marks of everything that can be taken hold of; each can be reached by Tab and says what it is. */
export const Handles = memo(function Handles({ items, selectedKey, isCoarse, tabKey, onFocus }: Props) {
  return (
    <>
      {items.map((placed) => (
        // biome-ignore lint/a11y/useSemanticElements: a button element can't stand inside an SVG
        <g
          key={placed.key}
          className={classes(styles['item'], placed.key === selectedKey && styles['selected'])}
          transform={`translate(${placed.at[0]} ${placed.at[1]})`}
          role="button"
          tabIndex={placed.key === tabKey ? 0 : -1}
          aria-label={placed.label}
          aria-pressed={placed.key === selectedKey}
          data-item={placed.key}
          onFocus={() => onFocus(placed)}
        >
          {isCoarse && placed.item.kind !== 'axis' ? <circle className={styles['touchRing']} r={14} /> : null}
          <circle className={styles['halo']} r={isCoarse ? 15 : placed.item.kind === 'axis' ? 13.5 : 9.5} />
          <Mark placed={placed} isSelected={placed.key === selectedKey} />
        </g>
      ))}
    </>
  )
})

/** Corner: square. Smooth point or station: round. Middle of an arc: a lozenge. Curve handle: a small disc. */
function Mark({ placed, isSelected }: { readonly placed: PlacedItem; readonly isSelected: boolean }) {
  const { kind } = placed.item
  if (kind === 'node' && !placed.label.endsWith('smooth')) {
    return <rect className={styles['handle']} x={-4.5} y={-4.5} width={9} height={9} />
  }
  if (kind === 'middle') return <path className={styles['handle']} d="M0 -5.5L5.5 0L0 5.5L-5.5 0Z" />
  // The drawing's own cross is the mark.
  if (kind === 'sounding' || (kind === 'dish' && placed.item.part === 'centre'))
    return <circle className={styles['soundingGrip']} r={9} />
  if (kind === 'contour') return <circle className={styles['handle']} r={3.2} />
  if (kind === 'control') return <circle className={styles['handle']} r={3.6} />
  // The drawing's own A and A′ are the marks.
  if (kind === 'axis') return <circle className={styles['axisGrip']} r={10.5} />
  if (kind === 'feature') {
    return isSelected ? (
      <path className={styles['handle']} d="M-6 0H6M0 -6V6" />
    ) : (
      <circle className={styles['handle']} r={2.2} opacity={0.75} />
    )
  }
  return <circle className={styles['handle']} r={4.8} />
}

interface ArmsProps {
  readonly arms: readonly { readonly from: readonly [number, number]; readonly to: readonly [number, number] }[]
}

/** The arms from a node to the handles of its curves. */
export function ControlArms({ arms }: ArmsProps) {
  return (
    <path
      className={styles['controlArm']}
      d={arms.map(({ from, to }) => `M${from[0]} ${from[1]}L${to[0]} ${to[1]}`).join('')}
    />
  )
}
