import type { Part } from './types.ts'

/** The parts of a shell, in the order that a mesh numbers them. */
export const PARTS: readonly Part[] = Object.freeze(['floor', 'wall', 'riser', 'feature', 'rim'] as const)
