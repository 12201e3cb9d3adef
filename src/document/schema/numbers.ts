import * as v from 'valibot'
import { isMoment } from '../moment.ts'

/** What a document may hold at most: far beyond any pool, and small enough that nothing stalls (each measures in a few seconds at most). */
export const LIMITS = {
  coordinateM: 1e8,
  depthM: 1000,
  /** Of one ring. */
  segments: 100_000,
  /** Of outline and islands together, under a wall that isn’t upright. */
  leaningWallSides: 5000,
  /** Of outline and islands together, where a floor by contours or soundings or a bench follows them. */
  followedSides: 20_000,
  rings: 200,
  bodies: 50,
  systems: 50,
  stations: 500,
  soundings: 2000,
  features: 200,
  readings: 5000,
  log: 10_000,
  stock: 500,
  estimates: 100,
  ownProducts: 200,
  packages: 50,
  prices: 1000,
  devices: 100,
  held: 1000,
  startValues: 100,
  currencyLength: 12,
  idLength: 80,
  nameLength: 200,
  textLength: 4000,
} as const

export const finite = v.pipe(v.number(), v.finite())
/** A finite number from `low` to `high`. */
export const between = (low: number, high: number) => v.pipe(v.number(), v.finite(), v.minValue(low), v.maxValue(high))
export const atLeastZero = (high = 1e9) => between(0, high)

export const Id = v.pipe(v.string(), v.minLength(1), v.maxLength(LIMITS.idLength))
export const Name = v.pipe(v.string(), v.maxLength(LIMITS.nameLength))
export const Text = v.pipe(v.string(), v.maxLength(LIMITS.textLength))
/** A whole number that counts from 0. */
export const Index = v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(1e6))
/** A moment, ISO 8601 with an offset or Z. */
export const Moment = v.pipe(v.string(), v.maxLength(40), v.check(isMoment, 'not-a-moment'))
