import type { SourceStatus } from '../../../water/index.ts'

interface Sourced {
  readonly source: string
  readonly status: SourceStatus
}

/** Where it comes from and how sure that is, in brackets: "(DPD methods; from memory)". */
export function sourceWords({ source, status }: Sourced): string {
  return `(${source}; ${status})`
}
