import { useState } from 'react'
import { deriveUpkeep, deriveVolume, upkeepBasisOf } from '../../../derive/index.ts'
import { useApp, useAppStore } from '../../context.tsx'
import { Button, Disclosure, ProblemNote } from '../../fields/index.ts'
import { NoVolume } from '../NoVolume.tsx'
import { dateOf } from '../opening/schedule.ts'
import { Excess } from '../water/Excess.tsx'
import { andList } from '../water/reading-words.ts'
import { useSystem } from '../water/useSystem.ts'
import { ChlorineFloor } from './ChlorineFloor.tsx'
import { Conditions } from './Conditions.tsx'
import { assumedNames } from './climate.ts'
import styles from './season.module.css'
import { UpkeepLines } from './UpkeepLines.tsx'

/** The upkeep: what keeps the water as it should be, a day, a week and a fortnight. */
export function SeasonChapter() {
  const system = useSystem()
  const spec = useApp((state) => state.spec)
  const nowMs = useApp((state) => state.nowMs)
  const store = useAppStore()
  const [chosenDay, setChosenDay] = useState<number | undefined>()
  const dayMs = chosenDay ?? nowMs
  const volume = system && deriveVolume(spec, system.id)
  if (!system || !volume)
    return (
      <NoVolume
        title="Upkeep"
        why="What the water needs from week to week depends on how much of it there is."
        styles={styles}
      />
    )
  const basis = upkeepBasisOf(spec, system.id, dayMs)
  const isWaterMeasured = basis.ok && basis.value.input.water.temperature_C !== undefined
  const isDrawn = volume.meanDepthM !== undefined
  const assumed = assumedNames(spec.site, system, new Date(dayMs).getUTCMonth(), isWaterMeasured, isDrawn)
  const result = deriveUpkeep(spec, system.id, dayMs)
  return (
    <div className={styles['chapter']}>
      <header className={styles['section']}>
        <h2>Upkeep {chosenDay === undefined ? 'today' : `on ${dateOf(dayMs, nowMs)}`}</h2>
        <p className={styles['intro']}>
          An estimate to start from, with how sure it is. What you measure from day to day is worth more than any
          reckoning.
        </p>
        {assumed.length > 0 && (
          <p className={styles['faint']}>Assumed until you say otherwise, below: {andList(assumed)}.</p>
        )}
      </header>
      <Excess systemId={system.id} />
      {result.ok && basis.ok ? (
        <>
          {result.value.blocked?.map((words) => (
            <p key={words} className={styles['note']} role="alert">
              <span>
                <strong>Not as it stands.</strong> {words}
              </span>
            </p>
          ))}
          {result.value.blocked ? (
            // Amounts under words that forbid them would be followed all the same; on paper nothing can be opened.
            <Disclosure level={3} title="What it would take otherwise" isScreenOnly isLazy>
              <UpkeepLines upkeep={result.value} input={basis.value.input} />
            </Disclosure>
          ) : (
            <UpkeepLines upkeep={result.value} input={basis.value.input} />
          )}
          <ChlorineFloor upkeep={result.value} />
        </>
      ) : (
        !result.ok && (
          <>
            <ProblemNote problem={result.problem} />
            <div className={styles['buttons']}>
              <Button onPress={() => store.getState().openChapter('water')}>Go to Water</Button>
            </div>
          </>
        )
      )}
      <Conditions system={system} dayMs={dayMs} onDay={setChosenDay} isToday={chosenDay === undefined} />
    </div>
  )
}
