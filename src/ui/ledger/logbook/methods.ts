import type { ReadingMethod } from '../../../document/index.ts'

/** How readings were taken, in words. */
export const METHOD_WORDS: Readonly<Record<ReadingMethod, string>> = {
  strip: 'by test strip',
  'drop-kit': 'by drop kit',
  photometer: 'by photometer',
  sensor: 'by sensor',
  laboratory: 'by a laboratory',
  supplier: 'from the supplier',
  unknown: '',
}
