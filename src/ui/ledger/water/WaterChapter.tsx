import { deriveWater } from '../../../derive/index.ts'
import { useApp } from '../../context.tsx'
import { Section } from '../basin/Section.tsx'
import { ageWords } from '../opening/schedule.ts'
import { Balance } from './Balance.tsx'
import { Chlorine } from './Chlorine.tsx'
import { Excess } from './Excess.tsx'
import { FillWater } from './FillWater.tsx'
import { Metals } from './Metals.tsx'
import { Readings } from './Readings.tsx'
import { RegimeChoice } from './RegimeChoice.tsx'
import { Rules } from './Rules.tsx'
import { Targets } from './Targets.tsx'
import { useSystem } from './useSystem.ts'
import styles from './water.module.css'

/** What was measured, what it says of chlorine and balance, what rules hold, what fills the pool and what it should be. */
export function WaterChapter() {
  const system = useSystem()
  const spec = useApp((state) => state.spec)
  const nowMs = useApp((state) => state.nowMs)
  if (!system) return <p className={styles['intro']}>This document holds no water yet.</p>
  const { ageHours, from, sanitation } = deriveWater(spec, system.id, nowMs)
  const age = from === 'readings' && ageHours !== undefined ? `, ${ageWords(ageHours)}` : ''
  const hasMetals = sanitation.metals.holdBack.length > 0
  const next = hasMetals ? 3 : 2
  return (
    <div className={styles['chapter']}>
      <h2>The water{age}</h2>
      <Excess systemId={system.id} />
      <Readings system={system} number={1} />
      {hasMetals && (
        <Section number={2} title="Metals first">
          <Metals advice={sanitation.metals} />
        </Section>
      )}
      <Chlorine system={system} number={next} />
      <Balance system={system} number={next + 1} />
      <Rules system={system} number={next + 2} />
      <FillWater system={system} number={next + 3} />
      <RegimeChoice system={system} number={next + 4} />
      <Targets system={system} number={next + 5} />
    </div>
  )
}
