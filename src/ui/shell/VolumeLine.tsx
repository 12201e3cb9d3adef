import { deriveBody, deriveVolume } from '../../derive/index.ts'
import { formatQuantity } from '../../units/index.ts'
import { useApp, useUnits } from '../context.tsx'
import { figuresOf, spreadWords } from '../ledger/basin/figures.ts'
import styles from './TitleBlock.module.css'

/** The volume over the drawing, for a phone: its title block lies below the first screen. */
export function VolumeLine() {
  const spec = useApp((state) => state.spec)
  const units = useUnits()
  const body = spec.bodies[0]
  const systemId = spec.systems[0]?.id
  const line = (value: string, note = '') => (
    <p className={styles['line']} data-screen-only>
      <span>Volume</span> <strong>{value}</strong> <span>{note}</span>
    </p>
  )
  if (body) {
    const derived = deriveBody(body)
    if (!derived.measures.ok) return line('not known')
    const { volume, spread } = figuresOf(body, derived, derived.measures.value, units)
    return line(volume, body.sketch ? 'a sketch, not to scale yet' : spread)
  }
  const stated = systemId === undefined ? undefined : deriveVolume(spec, systemId)
  if (!stated) return null
  const { m3, sigmaM3 } = stated
  return line(`about ${formatQuantity('volume', m3, units, { sigma: sigmaM3 })}`, spreadWords(m3, sigmaM3, units))
}
