import type * as v from 'valibot'
import type { Result } from '../../base/index.ts'
import type { Spec } from '../types.ts'

/** The same, with nothing in it that can be changed. */
export type Frozen<T> = T extends object ? { readonly [K in keyof T]: Frozen<T[K]> } : T

/** One edit: what it is called in undo, what it needs, and what it makes of a document. It never changes the old one. */
export interface Edit<Id extends string, Args> {
  readonly id: Id
  /** "Undo: Move point". */
  readonly label: string
  readonly args: v.GenericSchema<unknown, unknown>
  readonly apply: (spec: Spec, args: Args) => Result<Spec>
}

/** An edit whose arguments are checked by `args` before it sees them. */
export function defineEdit<const Id extends string, const Schema extends v.GenericSchema>(edit: {
  readonly id: Id
  readonly label: string
  readonly args: Schema
  readonly apply: (spec: Spec, args: Frozen<v.InferOutput<Schema>>) => Result<Spec>
}): Edit<Id, Frozen<v.InferOutput<Schema>>> {
  return edit
}
