import type { Verb } from '../verb.ts'
import { blend } from './blend.ts'
import { card } from './card.ts'
import { dose } from './dose.ts'
import { inspect } from './inspect.ts'
import { link, unlink } from './link.ts'
import { measure } from './measure.ts'
import { plan } from './plan.ts'
import { season } from './season.ts'
import { speciate } from './speciate.ts'
import { target } from './target.ts'
import { water } from './water.ts'

/** All verbs; a new one is a file and its line here. */
export const VERBS: readonly Verb[] = [
  measure,
  inspect,
  speciate,
  dose,
  blend,
  target,
  water,
  plan,
  card,
  season,
  link,
  unlink,
]
