import * as v from 'valibot'
import { fail, ok, type Problem, type Result } from '../base/index.ts'
import { problemOfIssue } from './issues.ts'
import { OWNER } from './schema/owner.ts'
import type { LabelledProduct } from './types.ts'

/** A list of own products out of anything: every complaint with its path below `path`, or the list; nothing gives an empty one. */
export function ownProductsFrom(json: unknown, path: string): Result<readonly LabelledProduct[], readonly Problem[]> {
  const parsed = v.safeParse(OWNER.ownProducts, json)
  if (!parsed.success) return fail(parsed.issues.map((issue) => problemOfIssue(issue, path)))
  return ok((parsed.output as readonly LabelledProduct[] | undefined) ?? [])
}
