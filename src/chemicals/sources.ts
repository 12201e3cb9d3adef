import type { SourceStatus } from '../water/index.ts'

/** Where a rule comes from and how sure that is. */
export interface Origin {
  readonly source: string
  readonly status: SourceStatus
}

export const EPA_ALERT: Origin = {
  source: 'US EPA chemical safety alert 550-F-01-003 (2001)',
  status: 'seen',
}
export const EPA_AND_CSB: Origin = {
  source:
    'US EPA chemical safety alert 550-F-01-003 (2001); US Chemical Safety Board, as quoted in the trade press (seen second-hand)',
  status: 'seen',
}
export const CSB: Origin = {
  source: 'US Chemical Safety Board, as quoted in the trade press',
  status: 'seen second-hand',
}
export const MMWR_2017: Origin = {
  source: 'CDC, MMWR 66(19), 2017: gas after a pump restarted, 34 ill',
  status: 'seen',
}
export const MARYLAND: Origin = {
  source: 'Maryland Department of Health, safety requirements for pool operators',
  status: 'seen',
}
export const FIRE_SHEET: Origin = {
  source: 'a fire department’s sheet on storing pool chemicals; US EPA alert 550-F-01-003 (2001)',
  status: 'seen',
}
export const FIRE_PRESS: Origin = {
  source: 'fire-service press on pool disinfectants; US EPA alert 550-F-01-003 (2001)',
  status: 'seen',
}
export const ECHA_2019: Origin = {
  source: 'ECHA committee for risk assessment, 2019 (news seen)',
  status: 'seen second-hand',
}
export const BORON_DOSE: Origin = {
  source: 'US EPA reference dose of boron 0.2 mg per kg a day (2004), in a health department’s summary',
  status: 'seen',
}
export const DECAY_1999: Origin = {
  source: 'Adam & Gordon 1999, Inorg. Chem. 38, 1299 (abstract)',
  status: 'seen',
}
export const PRACTICE: Origin = {
  source: 'common practice, no source',
  status: 'common practice, no source',
}
export const MEMORY: Origin = { source: 'from memory', status: 'from memory' }
export const STOICHIOMETRY: Origin = { source: 'follows from the stoichiometry', status: 'derived' }
export const MASS_BALANCE: Origin = { source: 'follows from the mass balance', status: 'derived' }
