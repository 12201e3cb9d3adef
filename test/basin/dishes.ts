import type { BasinShape, DishFloor, Path } from '../../src/basin/index.ts'
import type { Feature } from '../../src/features/index.ts'
import { divided, shape } from './shapes.ts'

export type Parts = Partial<Omit<DishFloor, 'kind'>>

/** A cap 1 m deep and 6 m wide about the origin but for what is given. */
export function dish(parts: Parts): DishFloor {
  return { kind: 'dish', form: 'cap', centre: [0, 0], radiusM: 3, edgeDepthM: 0, depthM: 1, ...parts }
}

/** A pool with that floor, divided. */
export function pool(outline: Path, parts: Parts, features: readonly Feature[] = [], more: Partial<BasinShape> = {}) {
  return divided(shape(outline, { ...more, floor: dish(parts), features }))
}

/** Volume of a cap of height h over a circle of radius r. */
export const cap = (h: number, r: number) => (Math.PI * h * (3 * r * r + h * h)) / 6
