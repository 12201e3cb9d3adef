import { table } from '../base/index.ts'
import type { CautionId } from './types.ts'

export interface Caution {
  readonly id: CautionId
  readonly text: string
  readonly source: string
}

const EPA = 'US EPA chemical safety alert 550-F-01-003 (2001)'
const MARYLAND = 'Maryland Department of Health, safety requirements for pool operators'
const MMWR = 'CDC, MMWR 66(19), 2017: gas after a pump restarted'

const row = (id: CautionId, text: string, source: string): Caution => ({ id, text, source })

/** Said beside a dose. The product's own label always comes first. */
export const CAUTIONS = table<Caution>([
  row('label', "The product's label and local rules come before anything said here.", 'common practice, no source'),
  row(
    'gear',
    'Gloves and goggles, fresh air, children and animals away; lock it up afterwards.',
    'common practice, no source; the label says what is needed',
  ),
  row('no-acid-near', 'Never near any acid, in the water or in the shed: together they give off chlorine gas.', MMWR),
  row('into-water', 'Always the chemical into water, never water into the chemical.', MARYLAND),
  row(
    'acid-burns',
    'Acid burns eyes and skin and its fumes hurt: goggles, gloves, outdoors, face away, rinse spills with much water.',
    'common practice, no source',
  ),
  row('never-mix', 'Never mix it with any other product, wet or dry; a clean, dry scoop or jug for each.', EPA),
  row('pump-running', 'Only while the pump runs and water truly flows; nobody in the water.', MMWR),
  row('keep-dry', 'Keep it dry, cool and in its own container, away from acids and anything that burns.', EPA),
  row(
    'not-on-surface',
    'Undissolved grains bleach and stain a liner or shell: dissolve first or brush at once.',
    'common practice, no source',
  ),
  row('own-feeder', 'Its feeder or basket has never held any other chlorine, and never will.', EPA),
  row('dust', 'Do not breathe the dust; pour low and downwind.', 'common practice, no source'),
  row(
    'borate',
    'Boric acid and borax are classed as harmful to reproduction (EU Repr. 1B): no dust, gloves, and nobody or no animal drinks the water.',
    'ECHA committee for risk assessment, 2019 (news seen)',
  ),
  row(
    'hot-dissolving',
    'It gets hot as it dissolves: small amounts into a big bucket of water.',
    'common practice, no source',
  ),
  row(
    'slow-dissolving',
    'It dissolves over days; do not wash the filter until it is gone, and do not repeat the dose on an early reading.',
    'common practice, no source',
  ),
  row(
    'stabiliser-stays',
    'Stabiliser does not leave by itself; only an exchange of water lowers it.',
    'common practice, no source',
  ),
  row(
    'old-liquid',
    'Liquid chlorine weakens in weeks, faster when warm: buy it fresh.',
    'Gordon, Adam et al., bleach decomposition, J. AWWA (existence seen)',
  ),
  row(
    'gas-licensed',
    'Chlorine gas kills. It is for licensed plants only, never for a home pool.',
    'common practice, no source',
  ),
  row('hard-to-undo', 'Too much of it can only be undone by exchanging water.', 'follows from the mass balance'),
  row(
    'reducer-overshoot',
    'Too much leaves the water without chlorine; give half, measure, then the rest.',
    'follows from the stoichiometry',
  ),
])
