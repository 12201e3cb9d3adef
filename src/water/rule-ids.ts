/** The ids of all sets of rules, apart from their figures, so that a document can be checked without loading these. */
export const RULE_IDS = [
  'default',
  'us-model-code',
  'us-public-guidance',
  'wisconsin',
  'montana',
  'anne-arundel',
  'albuquerque',
  'who-2006',
  'us-consensus-standard',
  'din-19643',
] as const

export type RuleId = (typeof RULE_IDS)[number]
