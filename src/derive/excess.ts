import type { Problem } from '../base/index.ts'
import { momentMs, type Spec } from '../document/index.ts'
import type { DoseLine } from '../plan/index.ts'
import { excessChlorine } from '../water/index.ts'
import { deriveOpening } from './plans.ts'
import { systemById } from './volume.ts'
import { deriveWater } from './water.ts'

/**
 * What has to be said before anything else where free chlorine is far too high, as read or, after doses since, by the sums;
 * undefined where it is not. What was read that high stands until it is read again.
 */
export function deriveExcess(spec: Spec, systemId: string, nowMs: number): Problem | undefined {
  const { known, from, measuredAtMs } = deriveWater(spec, systemId, nowMs)
  const read = from === 'readings' ? excessChlorine(known.fc_mg_per_L_as_Cl2, true) : undefined
  const since = systemById(spec, systemId)?.log.some(
    (entry) => entry.kind === 'dose' && momentMs(entry.at) >= (measuredAtMs ?? Number.NEGATIVE_INFINITY),
  )
  if (read || !since) return read
  const plan = deriveOpening(spec, systemId, nowMs)
  if (!plan.ok) return undefined
  const given = plan.value.lines.flatMap((line): DoseLine[] => (line.kind === 'dose' && line.given ? [line] : []))
  return excessChlorine(given.at(-1)?.after.reading.fc_mg_per_L_as_Cl2, false)
}
