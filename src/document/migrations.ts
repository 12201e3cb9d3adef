import { fail, ok, type Result } from '../base/index.ts'
import { problem } from './problems.ts'

type Written = { readonly [key: string]: unknown }

export const NEWEST_VERSION = 1

/**
 * One step a version: MIGRATIONS[n] makes a document of version n into one of version n + 1 and never changes what it
 * means. A frozen sample of each version is kept beside the tests and has to load for ever.
 */
const MIGRATIONS: { readonly [fromVersion: number]: (written: Written) => Written } = {}

/** The document in the newest version's shape; not yet checked beyond its format and version. */
export function migrate(json: unknown): Result<unknown> {
  if (typeof json !== 'object' || json === null || Array.isArray(json)) return fail(problem('not-a-spec', ''))
  let written = json as Written
  if (written['format'] !== 'shoalbook-spec') return fail(problem('not-a-spec', 'format'))
  const version = written['version']
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) {
    const detail = version === undefined ? 'missing' : JSON.stringify(version)?.slice(0, 40)
    return fail(problem('unknown-version', 'version', { detail: detail ?? typeof version }))
  }
  if (version > NEWEST_VERSION)
    return fail(problem('newer-version', 'version', { detail: version, newest: NEWEST_VERSION }))
  for (let from = version; from < NEWEST_VERSION; from++) {
    const step = MIGRATIONS[from]
    if (!step) return fail(problem('unknown-version', 'version', { detail: from }))
    written = { ...step(written), version: from + 1 }
  }
  return ok(written)
}
