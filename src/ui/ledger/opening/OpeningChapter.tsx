import { type DerivedVolume, deriveOpening, deriveVolume, deriveWater } from '../../../derive/index.ts'
import type { System } from '../../../document/index.ts'
import type { OpeningPlan } from '../../../plan/index.ts'
import { formatQuantity } from '../../../units/index.ts'
import { useApp, useAppStore, useUnits } from '../../context.tsx'
import { Button, ProblemNote } from '../../fields/index.ts'
import { spreadWords } from '../basin/figures.ts'
import { NoVolume } from '../NoVolume.tsx'
import { Excess } from '../water/Excess.tsx'
import { useSystem } from '../water/useSystem.ts'
import { Choices } from './Choices.tsx'
import { DeckCardSection } from './card/DeckCardSection.tsx'
import { EndWater } from './EndWater.tsx'
import { NeverMeet } from './NeverMeet.tsx'
import styles from './opening.module.css'
import { PlanLines } from './PlanLines.tsx'
import { PlanNotes } from './PlanNotes.tsx'
import { dateOf } from './schedule.ts'
import { Devices } from './shed/Devices.tsx'
import { OwnProducts } from './shed/OwnProducts.tsx'
import { StartSection } from './start/StartSection.tsx'
import { ToBuy } from './ToBuy.tsx'

/** The first-fill doses: an ordered list, each line with what it should leave behind. */
export function OpeningChapter() {
  const system = useSystem()
  const spec = useApp((state) => state.spec)
  const volume = system && deriveVolume(spec, system.id)
  if (!system || !volume)
    return (
      <NoVolume
        title="Opening loads"
        why="A dose is a weight for so much water, so the volume comes first."
        styles={styles}
      />
    )
  return (
    <div className={styles['chapter']}>
      <OpeningHead volume={volume} system={system} />
      <Excess systemId={system.id} />
      <StartSection system={system} />
      <OpeningBody system={system} />
      <section
        className={styles['section']}
        aria-label="Products and devices"
        {...(system.ownProducts || system.equipment.devices ? {} : { 'data-screen-only': true })}
      >
        <h2>Products and devices</h2>
        <OwnProducts system={system} />
        <Devices system={system} />
      </section>
      <DeckCardSection systemId={system.id} />
    </div>
  )
}

function OpeningHead({ volume, system }: { readonly volume: DerivedVolume; readonly system: System }) {
  const units = useUnits()
  const spec = useApp((state) => state.spec)
  const nowMs = useApp((state) => state.nowMs)
  const water = deriveWater(spec, system.id, nowMs)
  const pipes =
    volume.plumbingM3 > 0 ? ` with ${formatQuantity('volume', volume.plumbingM3, units)} in pipes and filter` : ''
  const from = volume.from === 'drawing' ? `from the drawing${pipes}` : 'as stated, not drawn yet'
  return (
    <header className={styles['section']}>
      <h2>
        {system.start?.mode === 'winter-closing' ? 'Closing' : 'Opening loads'} for{' '}
        {formatQuantity('volume', volume.m3, units, { sigma: volume.sigmaM3 })}
      </h2>
      <p className={styles['intro']}>
        {spreadWords(volume.m3, volume.sigmaM3, units)} (95 %), {from}.{' '}
        {water.measuredAtMs !== undefined &&
          `From ${water.from === 'fill' ? 'fill water' : 'readings'} of ${dateOf(water.measuredAtMs, nowMs)}. Each line says what it should leave behind; measure again where a line says so, and whenever something looks off.`}
      </p>
    </header>
  )
}

function OpeningBody({ system }: { readonly system: System }) {
  const spec = useApp((state) => state.spec)
  const nowMs = useApp((state) => state.nowMs)
  const store = useAppStore()
  const water = deriveWater(spec, system.id, nowMs)
  const result = deriveOpening(spec, system.id, nowMs)
  if (!result.ok)
    return (
      <>
        <ProblemNote problem={result.problem} />
        <div className={styles['buttons']}>
          <Button onPress={() => store.getState().openChapter('water')}>Go to Water</Button>
        </div>
      </>
    )
  const plan: OpeningPlan = result.value
  const isMeasured = water.measuredAtMs !== undefined
  return (
    <>
      <section className={styles['section']} aria-label="The plan">
        <h2>The plan</h2>
        <Choices system={system} />
      </section>
      <PlanNotes plan={plan} isMeasured={isMeasured} />
      {isMeasured && <PlanLines plan={plan} system={system} />}
      {plan.lines.some((line) => line.kind === 'dose') && <NeverMeet plan={plan} system={system} />}
      <ToBuy plan={plan} system={system} />
      <EndWater plan={plan} />
    </>
  )
}
