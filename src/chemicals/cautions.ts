import { table } from '../base/index.ts'
import type { SourceStatus } from '../water/index.ts'
import {
  DECAY_1999,
  ECHA_2019,
  EPA_ALERT,
  MARYLAND,
  MASS_BALANCE,
  MMWR_2017,
  type Origin,
  PRACTICE,
  STOICHIOMETRY,
} from './sources.ts'
import type { CautionId, Product } from './types.ts'

/** What a caution is about, for those who show only some of them. */
type Topic = 'apart' | 'adding' | 'body' | 'bathing' | 'surface' | 'storing' | 'overshoot' | 'label'

export interface Caution {
  readonly id: CautionId
  readonly topic: Topic
  readonly text: string
  readonly source: string
  readonly status: SourceStatus
}

const row = (id: CautionId, topic: Topic, text: string, from: Origin): Caution => ({ id, topic, text, ...from })

/** Said beside a dose, gravest first. The product's own label always rules. */
export const CAUTIONS = table<Caution>([
  row('gas-licensed', 'body', 'Chlorine gas kills. It is for licensed plants only, never for a home pool.', PRACTICE),
  row(
    'no-acid-near',
    'apart',
    'Never near any acid, in the water or in the shed: together they give off chlorine gas.',
    MMWR_2017,
  ),
  row(
    'never-mix',
    'apart',
    'Never mix it with any other product, wet or dry; a clean, dry scoop or jug for each.',
    EPA_ALERT,
  ),
  row('own-feeder', 'apart', 'Its feeder or basket has never held any other chlorine, and never will.', EPA_ALERT),
  row(
    'skimmer-pump-off',
    'apart',
    'Tablets in a skimmer make strong acid and chlorine gas while the pump is off, and it all goes through pump and heater at the next start: take them out, or use a floater.',
    PRACTICE,
  ),
  row('into-water', 'adding', 'Always the chemical into water, never water into the chemical.', MARYLAND),
  row('pump-running', 'adding', 'Only while the pump runs and water truly flows; nobody in the water.', MMWR_2017),
  row(
    'acid-burns',
    'body',
    'Acid burns eyes and skin and its fumes hurt: goggles, gloves, outdoors, face away, rinse spills with much water.',
    PRACTICE,
  ),
  row(
    'lye-burns',
    'body',
    'Lye eats eyes and skin before it hurts: goggles, gloves, long clothes, and much running water at hand.',
    PRACTICE,
  ),
  row('gear', 'body', 'Gloves and goggles, fresh air, children and animals away; lock it up afterwards.', PRACTICE),
  row('dust', 'body', 'Do not breathe the dust; pour low and downwind.', PRACTICE),
  row(
    'borate',
    'body',
    'Boric acid and borax are classed as harmful to reproduction (EU Repr. 1B): no dust, gloves, not by anyone pregnant, and nobody, child or animal, drinks the water.',
    ECHA_2019,
  ),
  row('hot-dissolving', 'adding', 'It gets hot as it dissolves: small amounts into a big bucket of water.', PRACTICE),
  row(
    'open-cover',
    'bathing',
    'After a big dose leave the cover off until chlorine is back in its band: what comes off the water eats the cover and collects under it.',
    PRACTICE,
  ),
  row(
    'wait-to-bathe',
    'bathing',
    'Nobody bathes until it is mixed through and a test shows chlorine and pH inside their limits.',
    PRACTICE,
  ),
  row(
    'not-on-surface',
    'surface',
    'Undissolved grains bleach and stain a liner or shell: dissolve first or brush at once.',
    PRACTICE,
  ),
  row(
    'keep-dry',
    'storing',
    'Keep it dry, cool and in its own container, away from acids and anything that burns.',
    EPA_ALERT,
  ),
  row(
    'reducer-overshoot',
    'overshoot',
    'Too much leaves the water without chlorine; give half, measure, then the rest.',
    STOICHIOMETRY,
  ),
  row('hard-to-undo', 'overshoot', 'Too much of it can only be undone by exchanging water.', MASS_BALANCE),
  row(
    'stabiliser-stays',
    'overshoot',
    'Stabiliser does not leave by itself; only an exchange of water lowers it.',
    PRACTICE,
  ),
  row(
    'slow-dissolving',
    'adding',
    'It dissolves over days; do not wash the filter until it is gone, and do not repeat the dose on an early reading.',
    PRACTICE,
  ),
  row('old-liquid', 'storing', 'Liquid chlorine weakens in weeks, faster when warm: buy it fresh.', DECAY_1999),
  row('label', 'label', "The product's label and local rules come before anything said here.", PRACTICE),
])

/** Every caution that these products carry, each once, gravest first. */
export function cautionsOf(products: readonly Product[]): readonly Caution[] {
  const ids = new Set<string>([...products.flatMap((product) => product.cautions), 'label'])
  return CAUTIONS.rows.filter((caution) => ids.has(caution.id))
}
