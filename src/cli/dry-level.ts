import type { Problem } from '../base/index.ts'
import type { Measures } from '../basin/index.ts'
import { deriveBody } from '../derive/index.ts'
import type { Body } from '../document/index.ts'

/** A notice where a body holds no water at the level that was asked for: its zeros are true, but a slip of the sign looks the same. */
export function dryNotices(body: Body, { levelM, volumeM3, errorBoundM3 }: Measures, path: string): readonly Problem[] {
  if (!(volumeM3 <= errorBoundM3)) return []
  const own = deriveBody(body).measures
  const lies = own.ok ? `: its deepest place is at ${metres(body.levelM - own.value.maxDepthM)}` : ''
  return [
    {
      code: 'dry-at-level',
      path,
      what: `${body.name} is dry at a level of ${metres(levelM)}${lies}.`,
      why: 'Its figures there are those of an empty basin.',
      hint: 'Give metres above (+) or below (−) the datum.',
    },
  ]
}

/** To the millimetre, as far as it has any. */
const metres = (value: number): string => `${String(Number(value.toFixed(3))).replace('-', '−')} m`
