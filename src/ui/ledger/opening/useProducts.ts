import type { ProductList } from '../../../chemicals/index.ts'
import { deriveProducts } from '../../../derive/index.ts'
import { useApp } from '../../context.tsx'
import { useSystem } from '../water/useSystem.ts'

/** The generic products and this pool's own, with its prices; undefined while there is no pool. */
export function useProducts(): ProductList | undefined {
  const system = useSystem()
  const spec = useApp((state) => state.spec)
  const nowMs = useApp((state) => state.nowMs)
  return system && deriveProducts(spec, system.id, nowMs)
}
