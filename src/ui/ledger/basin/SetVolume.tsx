import { useMemo, useState } from 'react'
import { fitVolume, type VolumeMeans } from '../../../derive/index.ts'
import type { Body } from '../../../document/index.ts'
import { formatQuantity } from '../../../units/index.ts'
import { useCanEdit, useUnits } from '../../context.tsx'
import { Button, ProblemNote, QuantityField, SegmentedField } from '../../fields/index.ts'
import styles from './basin.module.css'
import { useEdit } from './useBasin.ts'
import { fitWords, unmetProblem } from './volume-words.ts'

const MEANS: readonly { readonly id: VolumeMeans; readonly label: string }[] = [
  { id: 'depths', label: 'the depths' },
  { id: 'plan', label: 'the size of the plan' },
]

interface Props {
  readonly body: Body
  readonly volumeM3: number
  /** Of the volume as it is [m³]; another is known about as well, in proportion. */
  readonly sigmaM3: number
}

/** A volume that is wanted, and what has to change for it: looked at first, then done in one step. */
export function SetVolume({ body, volumeM3, sigmaM3 }: Props) {
  const units = useUnits()
  const canEdit = useCanEdit()
  const edit = useEdit()
  const [wantedM3, setWanted] = useState<number>()
  const [isTyping, setTyping] = useState(false)
  const [means, setMeans] = useState<VolumeMeans>('depths')
  const fitted = useMemo(
    () => (wantedM3 === undefined || wantedM3 === volumeM3 ? undefined : fitVolume(body, means, wantedM3)),
    [body, means, wantedM3, volumeM3],
  )
  // What stands in the field is not looked at yet: nothing is said or done for the volume before it.
  const fit = isTyping ? undefined : fitted
  const apply = () => {
    if (!fit?.ok) return undefined
    const { value } = fit.value
    const bodyId = body.id
    const problem =
      means === 'plan' ? edit('scaleUniform', { bodyId, factor: value }) : edit('shiftDepths', { bodyId, byM: value })
    if (!problem) setWanted(undefined)
    return problem
  }
  if (!canEdit) return null
  return (
    <>
      <p className={styles['say']}>
        For a pool that is still being planned, or whose volume is known better than its drawing: say the volume, and
        what may change for it.
      </p>
      <QuantityField
        label="Wanted volume"
        quantity="volume"
        value={wantedM3}
        min={0.01}
        onChange={setWanted}
        onPending={setTyping}
      />
      <SegmentedField label="By changing" value={means} options={MEANS} onChange={setMeans} />
      {fit && !fit.ok ? <ProblemNote problem={unmetProblem(means, fit.problem, units)} /> : null}
      {fit?.ok ? (
        <>
          <p className={styles['say']} role="status">
            {fitWords(body, means, fit.value, units)}{' '}
            {`Volume then: ${formatQuantity('volume', fit.value.volumeM3, units, { sigma: (sigmaM3 * fit.value.volumeM3) / volumeM3 })}.`}
          </p>
          <div className={styles['buttons']}>
            <Button tone="main" onPress={apply}>
              Change the drawing
            </Button>
          </div>
        </>
      ) : null}
    </>
  )
}
