import { table } from '../base/index.ts'
import type { Band, Purpose, TargetKey } from './types.ts'

export interface RegimeBand extends Band {
  readonly source: string
}

/** A way of keeping water sound. A new one is a row. */
export interface Regime {
  readonly id: string
  readonly label: string
  readonly summary: string
  /** Bands apart from calcium, which the surface sets. */
  readonly bands: { readonly [K in TargetKey]?: RegimeBand }
  readonly products: { readonly [P in Purpose]: string }
}

const PH =
  'Montana ARM 37.115.1308: 7.2 to 7.8, ideal 7.4 to 7.6 (seen); MAHC 5.7.3.4: 7.2 to 7.8 up to 2021, 7.0 to 7.8 since (from memory)'
const TA_WIDE = 'Wisconsin ATCP 76.14: 60 to 180 (seen)'
const OURS = 'narrowed by us'
const PRACTICE = 'common practice, no source'

const band = (low: number, aim: number, high: number, source: string): RegimeBand => ({ low, aim, high, source })

const BASE_PRODUCTS = {
  acid: 'muriatic-acid-31',
  alkalinity: 'sodium-bicarbonate',
  base: 'soda-ash',
  openingChlorine: 'liquid-chlorine-12',
  dailyChlorine: 'liquid-chlorine-12',
  calcium: 'calcium-chloride-flake',
  borate: 'boric-acid',
  stabiliser: 'cyanuric-acid',
  salt: 'salt',
} as const

export const REGIMES = table<Regime>([
  {
    id: 'unstabilised',
    label: 'Low chlorine without stabiliser, borate as buffer',
    summary: 'A small residual of strong chlorine, held by a cover and a slow feed. Sun takes it fast.',
    bands: {
      pH: band(7.2, 7.5, 7.8, PH),
      ta_mg_per_L_as_CaCO3: band(60, 80, 120, `${TA_WIDE}; low, since pH then creeps less; ${OURS}`),
      fc_mg_per_L_as_Cl2: band(1, 2, 3, 'CDC for public pools: 1 to 3 mg/L (seen); never below 1'),
      cya_mg_per_L: band(0, 0, 15, 'CDC: up to 15 mg/L still lets an incident be treated (seen second-hand)'),
      borate_mg_per_L_as_B: band(30, 45, 50, `${PRACTICE}: 30 to 50, never above 50`),
    },
    products: { ...BASE_PRODUCTS, dailyChlorine: 'cal-hypo-tablet' },
  },
  {
    id: 'stabilised',
    label: 'Stabilised chlorine, dosed by hand or pump',
    summary: 'Stabiliser shields the chlorine from the sun; the residual has to be higher for it.',
    bands: {
      pH: band(7.2, 7.5, 7.8, PH),
      ta_mg_per_L_as_CaCO3: band(70, 90, 120, `Montana: ideal 80 to 100 with hypochlorite (seen); ${OURS}`),
      fc_mg_per_L_as_Cl2: band(
        2,
        3,
        4,
        'MAHC 5.7.3.1.1: at least 2 with stabiliser (seen second-hand); labels: no bathing above 4 (from memory)',
      ),
      cya_mg_per_L: band(20, 30, 50, 'Montana: recommended 25 to 30, never above 50 (seen); other codes 30 to 100'),
    },
    products: BASE_PRODUCTS,
  },
  {
    id: 'slow-tablet',
    label: 'Stabilised tablets',
    summary: 'Tablets bring stabiliser with every dose; it only ever rises, and water has to be exchanged in time.',
    bands: {
      pH: band(7.2, 7.5, 7.8, PH),
      ta_mg_per_L_as_CaCO3: band(80, 110, 140, `Montana: ideal 100 to 120 with isocyanurates (seen); ${OURS}`),
      fc_mg_per_L_as_Cl2: band(
        2,
        3,
        4,
        'MAHC 5.7.3.1.1: at least 2 with stabiliser (seen second-hand); labels: no bathing above 4 (from memory)',
      ),
      cya_mg_per_L: band(20, 30, 90, 'MAHC 5.7.3.1.3: at most 90 (seen second-hand)'),
    },
    products: { ...BASE_PRODUCTS, dailyChlorine: 'trichlor-tablet' },
  },
  {
    id: 'salt',
    label: 'Salt-water generator',
    summary: 'Chlorine is made from salt as the pump runs; pH rises steadily.',
    bands: {
      pH: band(7.2, 7.6, 7.8, PH),
      ta_mg_per_L_as_CaCO3: band(60, 80, 100, `${TA_WIDE}; low, since pH then creeps less; ${OURS}`),
      fc_mg_per_L_as_Cl2: band(
        2,
        3,
        4,
        'MAHC 5.7.3.1.1: at least 2 with stabiliser (seen second-hand); labels: no bathing above 4 (from memory)',
      ),
      cya_mg_per_L: band(30, 50, 80, `${PRACTICE}: generators 50 to 80; codes cap it at 30 to 100`),
      salt_mg_per_L_as_NaCl: band(2700, 3200, 3600, `${PRACTICE}: about 3200; the generator's maker has the last word`),
    },
    products: BASE_PRODUCTS,
  },
])
