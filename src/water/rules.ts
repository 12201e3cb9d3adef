import { type Table, table } from '../base/index.ts'
import type { RuleId } from './rule-ids.ts'
import type { SourceStatus } from './sourcing.ts'

/** The figures a set of rules may lay down; one that it does not is absent, and the default's holds. */
export interface RuleFigures {
  /** Least free chlorine for bathing in water without stabiliser [mg/L]. */
  readonly floorWithoutStabiliserMgPerL?: number
  /** Least free chlorine for bathing in water with stabiliser [mg/L]. */
  readonly floorWithStabiliserMgPerL?: number
  /** Nobody bathes above this much free chlorine [mg/L]. */
  readonly ceilingMgPerL?: number
  readonly pHLow?: number
  readonly pHHigh?: number
  /** Combined chlorine at which something has to be done [mg/L]. */
  readonly combinedHighMgPerL?: number
  readonly combinedHighIndoorMgPerL?: number
  readonly stabiliserHighMgPerL?: number
  readonly alkalinityLowMgPerL?: number
  readonly alkalinityHighMgPerL?: number
  readonly calciumLowMgPerL?: number
  readonly calciumHighMgPerL?: number
}

/** One set of rules for bathing water: a table row each. */
export interface RuleProfile extends RuleFigures {
  readonly id: RuleId
  readonly label: string
  readonly edition: string
  readonly source: string
  readonly status: SourceStatus
  /** Figures surer or less sure than the row's own status. */
  readonly statuses?: { readonly [figure in keyof RuleFigures]?: SourceStatus }
  /** True where its figures hold only in water without stabiliser; with any, the default's hold. */
  readonly onlyWithoutStabiliser: boolean
  readonly note: string
}

/** The default, every figure present: what holds where a row is silent. */
export type DefaultRules = RuleProfile &
  Required<Omit<RuleFigures, 'combinedHighIndoorMgPerL' | 'calciumLowMgPerL' | 'calciumHighMgPerL'>>

export const LOCAL_CODE_FIRST = 'Your local code comes first.'

/** Numeric floors of the US model code, with the upper end of pool labels. */
export const DEFAULT_RULES: DefaultRules = Object.freeze<DefaultRules>({
  id: 'default',
  label: 'Numeric floor: 1 mg/L without stabiliser, 2 with it',
  edition: 'floors as in the US CDC Model Aquatic Health Code 5.7.3.1.1',
  source:
    'US CDC Model Aquatic Health Code 5.7.3.1.1 (floors) and 5.7.3.1.3 (stabiliser); pH: CDC, operating public pools, hot tubs and splash pads; upper limit: pool labels',
  status: 'seen second-hand',
  statuses: {
    ceilingMgPerL: 'from memory',
    pHLow: 'seen',
    pHHigh: 'seen',
    combinedHighMgPerL: 'from memory',
    alkalinityLowMgPerL: 'from memory',
    alkalinityHighMgPerL: 'from memory',
  },
  floorWithoutStabiliserMgPerL: 1,
  floorWithStabiliserMgPerL: 2,
  ceilingMgPerL: 4,
  pHLow: 7.0,
  pHHigh: 7.8,
  combinedHighMgPerL: 0.4,
  stabiliserHighMgPerL: 90,
  alkalinityLowMgPerL: 60,
  alkalinityHighMgPerL: 180,
  onlyWithoutStabiliser: false,
  note: `For public pools written, used here as the least for any. ${LOCAL_CODE_FIRST}`,
})

/** Sets of rules that a pool may be run by. They disagree; which one counts is a matter of where the pool lies. */
export const RULES: Table<RuleProfile> = table<RuleProfile>([
  DEFAULT_RULES,
  {
    id: 'us-model-code',
    label: 'US model code for public pools',
    edition: '2023/24; editions to 2021 have pH 7.2–7.8',
    source: 'US CDC Model Aquatic Health Code 5.7.3.1.1, 5.7.3.1.3, 5.7.3.4, 5.7.3.5',
    status: 'seen second-hand',
    statuses: {
      pHLow: 'from memory',
      pHHigh: 'from memory',
      combinedHighMgPerL: 'from memory',
      alkalinityLowMgPerL: 'from memory',
      alkalinityHighMgPerL: 'from memory',
    },
    floorWithoutStabiliserMgPerL: 1,
    floorWithStabiliserMgPerL: 2,
    ceilingMgPerL: 10,
    pHLow: 7.0,
    pHHigh: 7.8,
    combinedHighMgPerL: 0.4,
    stabiliserHighMgPerL: 90,
    alkalinityLowMgPerL: 60,
    alkalinityHighMgPerL: 180,
    onlyWithoutStabiliser: false,
    note: `A model: it holds where a state or county has adopted it. Labels of products often set 4 mg/L as the most for bathing. ${LOCAL_CODE_FIRST}`,
  },
  {
    id: 'us-public-guidance',
    label: 'US health agency, guidance for public pools',
    edition: 'web page, undated',
    source: 'CDC, Operating Public Pools, Hot Tubs and Splash Pads',
    status: 'seen',
    statuses: { floorWithStabiliserMgPerL: 'seen second-hand' },
    floorWithoutStabiliserMgPerL: 1,
    // the page itself says 1 to 3 for all; the model code's 2 with stabiliser is kept, since it is the safer
    floorWithStabiliserMgPerL: 2,
    ceilingMgPerL: 3,
    pHLow: 7.0,
    pHHigh: 7.8,
    onlyWithoutStabiliser: false,
    note: `1 to 3 mg/L at all times; tested at least twice a day and hourly in heavy use. ${LOCAL_CODE_FIRST}`,
  },
  {
    id: 'wisconsin',
    label: 'Wisconsin, public pools',
    edition: 'ATCP 76, register of 2023',
    source: 'Wisconsin Administrative Code ATCP 76.14(4)',
    status: 'seen',
    pHLow: 7.2,
    pHHigh: 7.8,
    combinedHighMgPerL: 0.5,
    combinedHighIndoorMgPerL: 0.8,
    stabiliserHighMgPerL: 30,
    alkalinityLowMgPerL: 60,
    alkalinityHighMgPerL: 180,
    onlyWithoutStabiliser: false,
    note: `Breakpoint chlorination above 0.5 mg/L of combined chlorine outdoors, 0.8 indoors. Its chlorine floor was not read: the default's holds here. ${LOCAL_CODE_FIRST}`,
  },
  {
    id: 'montana',
    label: 'Montana, public pools',
    edition: 'ARM 37.115.1308 table 6, a version marked obsolete',
    source: 'Administrative Rules of Montana 37.115.1308, table 6',
    status: 'seen',
    floorWithoutStabiliserMgPerL: 2,
    floorWithStabiliserMgPerL: 2,
    ceilingMgPerL: 8,
    pHLow: 7.2,
    pHHigh: 7.8,
    combinedHighMgPerL: 0.5,
    stabiliserHighMgPerL: 50,
    alkalinityLowMgPerL: 60,
    alkalinityHighMgPerL: 220,
    calciumLowMgPerL: 150,
    calciumHighMgPerL: 1000,
    onlyWithoutStabiliser: false,
    note: `Its table allows 100 mg/L of stabiliser, its text never over 50: the text is used. ${LOCAL_CODE_FIRST}`,
  },
  {
    id: 'anne-arundel',
    label: 'Anne Arundel County, Maryland',
    edition: 'county code as read, undated',
    source: 'Anne Arundel County Code, public swimming pools',
    status: 'seen',
    floorWithoutStabiliserMgPerL: 1.5,
    floorWithStabiliserMgPerL: 1.5,
    ceilingMgPerL: 5,
    pHLow: 7.2,
    pHHigh: 7.8,
    combinedHighMgPerL: 0.2,
    stabiliserHighMgPerL: 100,
    onlyWithoutStabiliser: false,
    note: `Asks for 30 to 100 mg/L of stabiliser where it is used. ${LOCAL_CODE_FIRST}`,
  },
  {
    id: 'albuquerque',
    label: 'Albuquerque, New Mexico',
    edition: 'city code as read, undated',
    source: 'Albuquerque code of ordinances, public swimming pools',
    status: 'seen',
    floorWithoutStabiliserMgPerL: 0.4,
    floorWithStabiliserMgPerL: 1,
    ceilingMgPerL: 4,
    onlyWithoutStabiliser: false,
    note: `0.4 to 1.5 mg/L plain, 1.0 to 4.0 with isocyanurates. ${LOCAL_CODE_FIRST}`,
  },
  {
    id: 'who-2006',
    label: 'WHO guidelines for pools',
    edition: '2006, volume 2, chapter 5',
    source: 'World Health Organization, Guidelines for safe recreational water environments, volume 2',
    status: 'from memory',
    floorWithoutStabiliserMgPerL: 1,
    floorWithStabiliserMgPerL: 2.5,
    ceilingMgPerL: 5,
    pHLow: 7.2,
    pHHigh: 7.8,
    combinedHighMgPerL: 0.2,
    stabiliserHighMgPerL: 100,
    onlyWithoutStabiliser: false,
    note: `Up to 3 mg/L in public pools, 5 in hot tubs and with stabiliser (2.5 to 5). Combined chlorine: aim for 0.2, never over half the free. ${LOCAL_CODE_FIRST}`,
  },
  {
    id: 'us-consensus-standard',
    label: 'US consensus standard for public pools',
    edition: 'ANSI/APSP/ICC-11',
    source: 'ANSI/APSP/ICC-11, water quality in public pools and spas',
    status: 'from memory',
    floorWithoutStabiliserMgPerL: 1,
    floorWithStabiliserMgPerL: 1,
    ceilingMgPerL: 4,
    pHLow: 7.2,
    pHHigh: 7.8,
    combinedHighMgPerL: 0.4,
    stabiliserHighMgPerL: 100,
    alkalinityLowMgPerL: 60,
    alkalinityHighMgPerL: 180,
    calciumLowMgPerL: 150,
    calciumHighMgPerL: 1000,
    onlyWithoutStabiliser: false,
    note: `Secondary and supplemental devices need a chlorine residual too. ${LOCAL_CODE_FIRST}`,
  },
  {
    id: 'din-19643',
    label: 'DIN 19643-1, treated bathing water',
    edition: 'DIN 19643-1',
    source: 'DIN 19643-1, pool water table',
    status: 'from memory',
    floorWithoutStabiliserMgPerL: 0.3,
    ceilingMgPerL: 0.6,
    pHLow: 6.5,
    pHHigh: 7.5,
    combinedHighMgPerL: 0.2,
    onlyWithoutStabiliser: true,
    note: `So little chlorine is enough only with the treatment plant, flow and flocculation of that standard, and without stabiliser (pH to 7.2 with aluminium, 7.5 with iron flocculant; hot whirlpools 0.7 to 1.0). ${LOCAL_CODE_FIRST}`,
  },
])
