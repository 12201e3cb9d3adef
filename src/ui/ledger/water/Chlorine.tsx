import { deriveWater } from '../../../derive/index.ts'
import type { ReadingValues } from '../../../document/index.ts'
import { useApp } from '../../context.tsx'
import { Section } from '../basin/Section.tsx'
import { ActiveChlorine } from './ActiveChlorine.tsx'
import { Combined } from './Combined.tsx'
import { Germs } from './Germs.tsx'
import type { NumberedProps } from './Readings.tsx'
import { OF_FILL_WATER } from './reading-words.ts'
import styles from './water.module.css'

/** What the chlorine in the water is worth: how much of it works, how long it lasts, what is used up. */
export function Chlorine({ system, number }: NumberedProps) {
  const spec = useApp((state) => state.spec)
  const nowMs = useApp((state) => state.nowMs)
  const water = deriveWater(spec, system.id, nowMs)
  const { solved, sanitation } = water
  const lacking = lackingWords(water.known, solved?.ok === false)
  return (
    <Section number={number} title="Chlorine">
      {water.from === 'fill' && <p className={styles['intro']}>{OF_FILL_WATER}</p>}
      {lacking && <p className={styles['intro']}>{lacking}</p>}
      {!lacking && solved?.ok && sanitation.active?.ok && (
        <ActiveChlorine
          system={system}
          account={sanitation.active.value}
          solved={solved.value}
          known={water.known}
          method={water.latest?.method ?? 'unknown'}
        />
      )}
      <Combined system={system} />
      <Germs known={water.known} />
    </Section>
  )
}

/** Why active chlorine can't be told; undefined where it can. */
function lackingWords(known: ReadingValues, isClash: boolean): string | undefined {
  const { fc_mg_per_L_as_Cl2: free, cya_mg_per_L: stabiliser, pH, ta_mg_per_L_as_CaCO3: alkalinity } = known
  if (free === undefined) return 'Free chlorine is not measured, so nothing can be said of it.'
  if (free === 0) return 'There is no free chlorine: nothing is being disinfected, and nobody bathes.'
  if (stabiliser === undefined)
    return 'How much of it is active can’t be told: stabiliser is not measured, and with it most chlorine is held in store.'
  if (pH === undefined || alkalinity === undefined)
    return 'How much of it is active can’t be told without pH and total alkalinity.'
  return isClash
    ? 'How much of it is active can’t be told: no water has these readings together (see Balance).'
    : undefined
}
