import { deriveWater } from '../../../derive/index.ts'
import { useApp } from '../../context.tsx'
import { ageWords } from '../opening/schedule.ts'
import { FillWater } from './FillWater.tsx'
import { Readings } from './Readings.tsx'
import { RegimeChoice } from './RegimeChoice.tsx'
import { Targets } from './Targets.tsx'
import { useSystem } from './useSystem.ts'
import { WaterState } from './WaterState.tsx'
import styles from './water.module.css'

/** What the water is, what it is filled with, and what it should be. */
export function WaterChapter() {
  const system = useSystem()
  const spec = useApp((state) => state.spec)
  const nowMs = useApp((state) => state.nowMs)
  if (!system) return <p className={styles['intro']}>This document holds no water yet.</p>
  const { ageHours, from } = deriveWater(spec, system.id, nowMs)
  const age = from === 'readings' && ageHours !== undefined ? `, ${ageWords(ageHours)}` : ''
  return (
    <div className={styles['chapter']}>
      <h2>The water{age}</h2>
      <Readings system={system} number={1} />
      <WaterState system={system} number={2} />
      <FillWater system={system} number={3} />
      <RegimeChoice system={system} number={4} />
      <Targets system={system} number={5} />
    </div>
  )
}
