import { useMemo } from 'react'
import { type Partition, partition } from '../../basin/index.ts'
import type { DerivedBody } from '../../derive/index.ts'
import { useLocal } from './local.ts'

/**
 * What the tints and figures are taken from. Bands of a shaped wall cost a hundred times those of an upright one, so while a
 * hand drags, the tints run straight up to the wall; let go, they climb it again.
 */
export function useTintedParts(derived: DerivedBody): Partition | undefined {
  const isDragging = useLocal((state) => state.grabbed !== undefined)
  return useMemo(() => {
    if (!derived.partition.ok) return undefined
    const { shape } = derived
    const quick =
      isDragging && shape !== undefined && shape.wall.kind !== 'vertical'
        ? partition({ ...shape, wall: UPRIGHT })
        : derived.partition
    return quick.ok ? quick.value : derived.partition.value
  }, [derived, isDragging])
}

const UPRIGHT = { kind: 'vertical' } as const
