import { table } from '../base/index.ts'
import type { SourceStatus } from '../water/index.ts'
import { type Origin, PRACTICE } from './sources.ts'

/** What to do when it has happened, and whom to ask. Numbers differ by country, so none is printed. */
export interface FirstAid {
  readonly id: string
  readonly when: string
  readonly act: string
  readonly source: string
  readonly status: SourceStatus
}

const row = (id: string, when: string, act: string, from: Origin): FirstAid => ({ id, when, act, ...from })

export const FIRST_AID = table<FirstAid>([
  row(
    'whom-to-ask',
    'In any emergency',
    'Call your country’s emergency number, for poisoning its poison centre; have the container with its label in your hand. Write both numbers where the chemicals stand.',
    PRACTICE,
  ),
  row(
    'eyes',
    'In the eyes',
    'Rinse at once with much clean running water, lids held open, for 15 minutes or longer; lenses out; then to a doctor.',
    PRACTICE,
  ),
  row(
    'skin',
    'On the skin',
    'Clothes off, rinse with much water for 15 minutes; a doctor where it hurts or blisters.',
    PRACTICE,
  ),
  row(
    'breathed',
    'Fumes breathed in',
    'Into fresh air, upwind, sitting up and at rest; call for help where breathing is hard. Lungs can swell hours later.',
    PRACTICE,
  ),
  row(
    'swallowed',
    'Swallowed',
    'Rinse the mouth, do not make anyone vomit, call the poison centre at once and do as it says.',
    PRACTICE,
  ),
  row(
    'gas-or-fire',
    'A container hisses, smokes, bulges or burns',
    'Everybody away and upwind, call the fire service, name the chemical. Do not pour a little water on it, do not move or close it.',
    PRACTICE,
  ),
  row(
    'spilt',
    'Spilt',
    'Keep others away. Dry grains: a clean dry scoop into a clean dry bucket, never back into the tub, never into the bin. Liquid: much water, away from other chemicals.',
    PRACTICE,
  ),
])
