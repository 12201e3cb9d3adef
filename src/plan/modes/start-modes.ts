import { table } from '../../base/index.ts'
import { HEAVY_RAIN, PARTIAL_DRAIN } from './after-events.ts'
import { LINER_OR_SHELL } from './liner-or-shell.ts'
import { NEW_PLASTER } from './new-plaster.ts'
import { FILLED_POOL, MID_SEASON, UNKNOWN_POOL } from './ordinary.ts'
import { PARTY } from './party.ts'
import { SPRING_OPENING } from './spring-opening.ts'
import type { StartMode } from './types.ts'
import { WINTER_CLOSING } from './winter-closing.ts'

/** Every way of starting: what to do on which day, and what may not be dosed yet. A new one is a row. */
export const START_MODES = table<StartMode>([
  FILLED_POOL,
  NEW_PLASTER,
  LINER_OR_SHELL,
  SPRING_OPENING,
  UNKNOWN_POOL,
  MID_SEASON,
  HEAVY_RAIN,
  PARTIAL_DRAIN,
  PARTY,
  WINTER_CLOSING,
])
