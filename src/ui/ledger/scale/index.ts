export { InkScale } from './InkScale.tsx'
export {
  formatMeasured,
  formatReading,
  formatSigned,
  READING_ROWS,
  type ReadingRow,
  readingRow,
} from './readings.ts'
export { ScaleLegend } from './ScaleLegend.tsx'
export { type Domain, domainOf, domainsOf, isWithin, placeOn } from './scale-map.ts'
export { scaleWords, shortValue } from './scale-words.ts'
