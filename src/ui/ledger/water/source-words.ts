import type { SourceStatus } from '../../../water/index.ts'

interface Sourced {
  readonly source: string
  readonly status: SourceStatus
}

/** Where it comes from and how sure that is, in brackets: "(DPD methods; from memory)"; once where both say the same. */
export function sourceWords({ source, status }: Sourced): string {
  return source.includes(status) ? `(${source})` : `(${source}; ${status})`
}
