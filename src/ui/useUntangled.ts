import { useEffect, useState } from 'react'
import { deriveProblems, deriveUntangled, type Untangled } from '../derive/index.ts'
import type { Spec } from '../document/index.ts'
import { useApp, useCanEdit } from './context.tsx'

/** A tangled line is looked at when the hand rests: each step of a drag would wait for it [ms]. */
const REST_MS = 150

/** What could take the place of the line that crosses itself, a moment after the last change. */
export function useUntangled(): Untangled | undefined {
  const spec = useApp((state) => state.spec)
  const canEdit = useCanEdit()
  const [found, setFound] = useState<{ readonly spec: Spec; readonly proposal: Untangled | undefined }>()
  useEffect(() => {
    if (!canEdit || deriveProblems(spec).length === 0) return undefined
    const timer = setTimeout(() => setFound({ spec, proposal: deriveUntangled(spec)[0] }), REST_MS)
    return () => clearTimeout(timer)
  }, [spec, canEdit])
  return canEdit && found?.spec === spec ? found.proposal : undefined
}
