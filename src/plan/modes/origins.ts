import type { Origin } from './types.ts'

export const PRACTICE: Origin = { source: 'common practice, no source', status: 'common practice, no source' }
export const OURS: Origin = {
  source: 'common practice, no source; practice differs, the day is our choice',
  status: 'common practice, no source',
}
export const MAKER: Origin = {
  source: 'common practice, no source; the maker of the part has the last word',
  status: 'common practice, no source',
}
export const MASS_BALANCE: Origin = { source: 'follows from the mass balance', status: 'derived' }
export const DRAINING: Origin = {
  source: 'relief valves seen described, the rest from memory',
  status: 'from memory',
}
