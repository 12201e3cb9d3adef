import { useState } from 'react'
import type { DerivedVolume } from '../../../derive/index.ts'
import type { System } from '../../../document/index.ts'
import { formatPlusMinus, formatQuantity } from '../../../units/index.ts'
import { useCanEdit, useUnits } from '../../context.tsx'
import { Button, Disclosure, NumberField, QuantityField } from '../../fields/index.ts'
import styles from './basin.module.css'
import { useEdit } from './useBasin.ts'
import { offWords, percentFromSigma, sigmaFromPercent } from './volume-words.ts'

/** More than any pool holds [m³]: a slip of the keys is caught here, in the reader's own units. */
const MOST_M3 = 100_000

/** "Say ± 10 %", until it is typed. */
const USUAL_PERCENT = 10

interface Props {
  readonly system: System
  readonly volume: DerivedVolume | undefined
  readonly hasDrawing: boolean
}

/** A volume that is stated instead of drawn. */
export function StatedVolume({ system, volume, hasDrawing }: Props) {
  const units = useUnits()
  const stated = system.volumeEstimates[system.volumeEstimates.length - 1]
  const replaced = volume?.replaced[volume.replaced.length - 1]
  if (!hasDrawing) {
    return (
      <div className={styles['stated']}>
        <h4>Or don’t draw</h4>
        <StatedFields system={system} />
        {stated ? (
          <p className={styles['say']}>
            Water and Opening reckon with {formatQuantity('volume', stated.m3, units, { sigma: stated.sigmaM3 })}{' '}
            {formatPlusMinus('volume', stated.m3, stated.sigmaM3, units)}.
          </p>
        ) : null}
      </div>
    )
  }
  const difference = replaced ? offWords(replaced.relativeError, units) : undefined
  return (
    <Disclosure
      title="Stated volume"
      aside={stated ? formatQuantity('volume', stated.m3, units, { sigma: stated.sigmaM3 }) : 'none'}
    >
      <p className={styles['say']}>
        {difference
          ? `The drawing rules. What was stated is ${difference === 'the same' ? difference : `${difference} than the drawing`}.`
          : 'The drawing rules. A volume stated here, from a builder’s sheet say, is only compared with it.'}
      </p>
      <StatedFields system={system} />
    </Disclosure>
  )
}

function StatedFields({ system }: { readonly system: System }) {
  const edit = useEdit()
  const canEdit = useCanEdit()
  const index = system.volumeEstimates.length - 1
  const stated = system.volumeEstimates[index]
  const [percent, setPercent] = useState(USUAL_PERCENT)
  const known = stated ? percentFromSigma(stated.m3, stated.sigmaM3) : percent
  const state = (m3: number, plusMinus: number) =>
    edit('setVolumeEstimate', {
      systemId: system.id,
      ...(stated ? { index } : {}),
      estimate: { ...stated, from: stated?.from ?? 'stated', m3, sigmaM3: sigmaFromPercent(m3, plusMinus) },
    })
  return (
    <>
      <QuantityField
        label="About"
        quantity="volume"
        value={stated?.m3}
        min={0.01}
        max={MOST_M3}
        isRequired
        onChange={(m3) => (m3 === undefined ? undefined : state(m3, known))}
      />
      <NumberField
        label="Give or take"
        value={Math.round(known * 10) / 10}
        unitLabel="%"
        min={0.5}
        max={80}
        isRequired
        onChange={(next) => {
          if (next === undefined) return undefined
          setPercent(next)
          return stated ? state(stated.m3, next) : undefined
        }}
        description="Nearly always within this. 10 % for a builder’s figure, 20 % and more for a guess."
      />
      {stated && canEdit ? (
        <Button tone="quiet" onPress={() => edit('removeVolumeEstimate', { systemId: system.id, index })}>
          Forget the stated volume
        </Button>
      ) : null}
    </>
  )
}
