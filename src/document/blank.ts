import { DEFAULTS } from './schema/spec.ts'
import type { Spec } from './types.ts'
import { emptySystem } from './validate.ts'

/** A sheet with nothing drawn and nothing known, and one system for the water to come, bought for in these package sizes. */
export function blankSpec(packages: 'metric' | 'us' = 'metric'): Spec {
  const system = emptySystem(DEFAULTS.systemId)
  return {
    format: 'shoalbook-spec',
    version: 1,
    name: 'My pool',
    bodies: [],
    systems: [{ ...system, regime: { ...system.regime, packages } }],
    site: {},
  }
}
