import { useId, useRef } from 'react'
import { volumeAtLevel } from '../../basin/index.ts'
import { deriveBody } from '../../derive/index.ts'
import { formatQuantity } from '../../units/index.ts'
import { useApp, useAppStore, useCanEdit, useUnits } from '../context.tsx'
import { Button, QuantityField } from '../fields/index.ts'
import styles from './level.module.css'
import { isSameLevel, levelOfTick, levelScale, placeOfLevel, shareWords, tickOfLevel, waterWords } from './level.ts'

/** Fills and empties the basin to look at it: nothing is saved until the level is made today's. */
export function LevelSlider({ bodyId }: { readonly bodyId: string }) {
  const store = useAppStore()
  const units = useUnits()
  const canEdit = useCanEdit()
  const body = useApp((state) => state.spec.bodies.find((each) => each.id === bodyId))
  const preview = useApp((state) => state.previewLevelM)
  const id = useId()
  const range = useRef<HTMLInputElement>(null)
  if (!body) return null
  const derived = deriveBody(body)
  if (!derived.partition.ok) return null
  const parts = derived.partition.value
  const deepestM = parts.cells.reduce((most, cell) => Math.max(most, cell.maxDepthM), 0)
  const scale = levelScale(deepestM, body.freeboardM, units)
  const levelM = preview ?? body.levelM
  const isAway = !isSameLevel(levelM, body.levelM)
  const { volumeM3 } = volumeAtLevel(parts, levelM)
  const { volumeM3: todayM3 } = volumeAtLevel(parts, body.levelM)
  const isKnown = isAway || derived.measures.ok || derived.measures.problem.code === 'no-water'
  const volume = isKnown ? waterWords(volumeM3, derived.sigmaM3, units) : 'not known'
  const share = shareWords(volumeM3, todayM3, units)
  const place = (at: number) => ({ '--place': placeOfLevel(scale, at) }) as React.CSSProperties

  const look = (to: number | undefined) => {
    const at = to === undefined ? undefined : Math.min(scale.highM, Math.max(scale.lowM, to))
    store.getState().previewLevel(at === undefined || isSameLevel(at, body.levelM) ? undefined : at)
  }
  const keep = () => {
    const problem = store.getState().dispatch({ id: 'setLevel', args: { bodyId, levelM } })
    if (!problem) back()
  }
  // Both buttons go with the press: the focus stays at the level.
  const back = () => {
    range.current?.focus({ preventScroll: true })
    look(undefined)
  }
  const say = (metres: number) => formatQuantity('length', metres, units, { style: 'long' })
  return (
    <section className={styles['slider']} aria-label="Water level" data-away={isAway}>
      <div className={styles['line']}>
        <span className={styles['name']} aria-hidden="true">
          Level
        </span>
        <div className={styles['track']} style={place(levelM)}>
          <span className={styles['today']} style={place(body.levelM)} aria-hidden="true" />
          <input
            ref={range}
            id={id}
            type="range"
            className={styles['range']}
            aria-label="Level to look at"
            aria-valuetext={`${levelWords(levelM, say)}, ${volume}`}
            min={scale.lowTick}
            max={scale.highTick}
            step={1}
            value={tickOfLevel(scale, levelM)}
            onChange={(event) => look(levelOfTick(scale, Number(event.currentTarget.value)))}
          />
        </div>
        <span className={styles['away']}>
          <Button tone="quiet" onPress={back} label="Back to today’s level" isDisabled={!isAway}>
            Back
          </Button>
        </span>
      </div>
      <div className={styles['line']}>
        <div className={styles['level']}>
          <QuantityField
            label="Level to look at, from the waterline"
            quantity="length"
            value={levelM}
            min={scale.lowM}
            max={scale.highM}
            isRequired
            isExact
            hideLabel
            isDisabled={false}
            onChange={look}
          />
        </div>
        <output className={styles['volume']} htmlFor={id}>
          {volume}
          {isAway && share ? <span className={styles['share']}> · {share}</span> : null}
        </output>
        {canEdit ? (
          <span className={styles['away']}>
            <Button tone="quiet" onPress={keep} label="Set as today’s level" isDisabled={!isAway}>
              Set as today’s
            </Button>
          </span>
        ) : null}
      </div>
    </section>
  )
}

function levelWords(levelM: number, say: (metres: number) => string): string {
  if (isSameLevel(levelM, 0)) return 'at the waterline'
  return levelM > 0 ? `${say(levelM)} above the waterline` : `${say(-levelM)} below the waterline`
}
