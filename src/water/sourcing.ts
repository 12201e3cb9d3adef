/**
 * How sure a figure's source is: read in the place named; read in a report about it; remembered and checked by nobody
 * here; what the trade does, for which no source was found; worked out from constants.
 */
export type SourceStatus = 'seen' | 'seen second-hand' | 'from memory' | 'common practice, no source' | 'derived'
