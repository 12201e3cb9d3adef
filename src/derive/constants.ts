import type { System } from '../document/index.ts'

/** Names of the sets of constants that a plan can be computed with. */
export type ConstantsId = 'default' | 'oracle' | 'wahman'

/** The set that the owner chose for chlorine and stabiliser; one that is asked for stands over it. */
export function constantsOf(system: System | undefined, asked?: ConstantsId | undefined): ConstantsId {
  return asked ?? (system?.regime.chlorineConstants === 'wahman' ? 'wahman' : 'default')
}
