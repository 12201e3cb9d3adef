import type { ReactNode } from 'react'
import { Menu, MenuItem, MenuTrigger, Popover, ToggleButton, ToggleButtonGroup } from 'react-aria-components'
import { nearestOn, type Point } from '../../../basin/index.ts'
import { Button, classes } from '../../fields/index.ts'
import { type FeatureTool, featureFrom } from '../../plan/feature-drag.ts'
import { benchAlong } from '../floor-gestures.ts'
import { addFeature } from '../gestures.ts'
import type { Ring } from '../items.ts'
import styles from './strip.module.css'
import type { StripProps } from './types.ts'

/** What is selected, and a word about it. */
export function Title({ name, note }: { readonly name: string; readonly note?: string | undefined }) {
  return (
    <p className={styles['title']}>
      <strong>{name}</strong>
      {note ? <span>{note}</span> : null}
    </p>
  )
}

/** Whose a point or side is, where it isn't the outline's. */
export function ringNote(ring: Ring): string | undefined {
  if (ring.of === 'outline') return undefined
  return ring.of === 'island' ? `of island ${ring.index + 1}` : `of depth line ${ring.index + 1}`
}

/** One field of the strip. */
export function Cell({ children, width }: { readonly children: ReactNode; readonly width?: 'narrow' | 'count' }) {
  return <div className={classes(styles['cell'], width && styles[width])}>{children}</div>
}

export function Actions({ children }: { readonly children: ReactNode }) {
  return <div className={styles['actions']}>{children}</div>
}

interface KindsProps<Id extends string> {
  readonly label: string
  readonly value: Id
  readonly options: readonly { readonly id: Id; readonly label: string }[]
  readonly onChange: (id: Id) => unknown
}

/** One of a few kinds, side by side. */
export function Kinds<Id extends string>({ label, value, options, onChange }: KindsProps<Id>) {
  return (
    <ToggleButtonGroup
      className={styles['kinds'] ?? ''}
      aria-label={label}
      selectionMode="single"
      disallowEmptySelection
      selectedKeys={[value]}
      onSelectionChange={(keys) => {
        const picked = options.find((option) => keys.has(option.id))
        if (picked && picked.id !== value) onChange(picked.id)
      }}
    >
      {options.map((option) => (
        <ToggleButton key={option.id} id={option.id} className={styles['kind'] ?? ''}>
          {option.label}
        </ToggleButton>
      ))}
    </ToggleButtonGroup>
  )
}

const PLACEABLE: readonly { readonly id: FeatureTool | 'bench'; readonly label: string }[] = [
  { id: 'steps', label: 'Steps' },
  { id: 'round-steps', label: 'Round steps' },
  { id: 'shelf', label: 'Shelf' },
  { id: 'bench', label: 'Bench along this side' },
  { id: 'ramp', label: 'Ramp' },
]

/** Steps, a shelf, a bench or a ramp against the wall at a place of the outline, without dragging. */
export function PlaceHere({ scene, hands, at }: Pick<StripProps, 'scene' | 'hands'> & { readonly at: Point }) {
  const place = (tool: FeatureTool | 'bench') => {
    if (tool === 'bench') {
      const side = nearestOn(scene.body.outline, at[0], at[1]).segmentIndex
      const bench = benchAlong(scene, side, side)
      if (bench) addFeature(hands, bench)
      return
    }
    const { partition } = scene.derived
    const parts = partition.ok ? partition.value : undefined
    addFeature(hands, featureFrom({ outline: scene.body.outline, parts, units: scene.units }, tool, at, undefined))
  }
  return (
    <MenuTrigger>
      <Button onPress={() => undefined}>Place here…</Button>
      <Popover className={styles['popover'] ?? ''} placement="top end">
        <Menu
          className={styles['menu'] ?? ''}
          aria-label="Place against the wall here"
          onAction={(key) => {
            const tool = PLACEABLE.find((row) => row.id === key)
            if (tool) place(tool.id)
          }}
        >
          {PLACEABLE.map((row) => (
            <MenuItem key={row.id} id={row.id} className={styles['menuItem'] ?? ''}>
              {row.label}
            </MenuItem>
          ))}
        </Menu>
      </Popover>
    </MenuTrigger>
  )
}
