import type { Spec, System } from '../../../document/index.ts'
import { useApp } from '../../context.tsx'

/** The system that the ledger writes about: the one that the first body belongs to. */
function systemOf(spec: Spec): System | undefined {
  const id = spec.bodies[0]?.system
  return spec.systems.find((system) => system.id === id) ?? spec.systems[0]
}

/** That system of the open document. */
export function useSystem(): System | undefined {
  return useApp((state) => systemOf(state.spec))
}
