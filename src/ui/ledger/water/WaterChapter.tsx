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
  if (!system) return <p className={styles['intro']}>This document holds no water yet.</p>
  return (
    <div className={styles['chapter']}>
      <Readings system={system} />
      <WaterState system={system} />
      <FillWater system={system} />
      <RegimeChoice system={system} />
      <Targets system={system} />
    </div>
  )
}
