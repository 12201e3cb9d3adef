import { fail, type Problem, type Result } from '../base/index.ts'
import type { Path, Point, Segment } from './types.ts'

export interface OutlineParameter {
  readonly id: string
  readonly label: string
  readonly defaultM: number
  readonly minM: number
  readonly maxM: number
}
export interface StartingOutline {
  readonly id: string
  readonly label: string
  readonly parameters: readonly OutlineParameter[]
  readonly make: (params: Readonly<Record<string, number>>) => Result<Path>
}
const p: Problem = { code: 'unfinished', path: '', what: '', why: '', hint: '' }
const no = (): never => {
  throw new Error('being built')
}
export const STARTING_OUTLINES: readonly StartingOutline[] = []
export const fitLoop = (_: readonly Point[], _toleranceM: number): Result<Path> => fail(p)
export const smoothThrough = (_: readonly Point[], _closed: boolean): Segment[] => no()
