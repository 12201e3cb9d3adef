import type { DoseMove } from './moves.ts'
import { isInside } from './targets.ts'
import type { OpeningInput } from './types.ts'

/** Why acid or base goes into water whose pH was read inside its band; undefined where it was not. */
export function whyInside({ want, before }: DoseMove, input: OpeningInput): string | undefined {
  const band = input.targets.pH
  const { pH } = input.start
  if ((want.purpose !== 'acid' && want.purpose !== 'base') || !band || pH === undefined || !isInside(pH, band))
    return undefined
  const read = `pH was read at ${pH}, inside its band of ${band.low} to ${band.high}`
  return want.purpose === 'base' && isInside(before.equilibrium.pH, band)
    ? `${read}. This steadies it there: what else goes in by this plan pulls it down, or leaves the water hungry for lime.`
    : `${read}. What else goes in by this plan, or went in since, takes it out of that; counted together with it this brings it to its aim.`
}
