import { DEFAULTS } from './schema/spec.ts'
import type { Spec } from './types.ts'
import { emptySystem } from './validate.ts'

/** A sheet with nothing drawn and nothing known, and one system for the water to come. */
export function blankSpec(): Spec {
  return {
    format: 'shoalbook-spec',
    version: 1,
    name: 'My pool',
    bodies: [],
    systems: [emptySystem(DEFAULTS.systemId)],
    site: {},
  }
}
