import type { ReadingMethod } from '../../../document/index.ts'

/** How a water was measured, best known first by the people who do it. */
export const METHODS: readonly { readonly id: ReadingMethod; readonly label: string; readonly note?: string }[] = [
  { id: 'strip', label: 'Test strip', note: 'Quick and coarse: alkalinity and hardness within a quarter or so.' },
  { id: 'drop-kit', label: 'Drop kit' },
  { id: 'photometer', label: 'Photometer' },
  { id: 'sensor', label: 'Sensor in the water' },
  { id: 'laboratory', label: 'Laboratory' },
  { id: 'supplier', label: 'Water supplier’s report' },
  { id: 'unknown', label: 'Not known' },
]

/** Its name inside a sentence. */
export function methodWords(method: ReadingMethod): string | undefined {
  if (method === 'unknown') return undefined
  const label = METHODS.find((row) => row.id === method)?.label
  return label && label.charAt(0).toLowerCase() + label.slice(1)
}
