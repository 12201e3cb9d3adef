import { memo, useState } from 'react'
import { areAllAssumed, type Body, type DepthReference } from '../../../document/index.ts'
import { formatQuantity } from '../../../units/index.ts'
import { useCanEdit, useUnits } from '../../context.tsx'
import { Button, ChoiceField, LONGEST_M, QuantityField } from '../../fields/index.ts'
import { assumedWords } from './assumed-words.ts'
import styles from './basin.module.css'
import { CareFields } from './CareFields.tsx'
import { FloorFields } from './FloorFields.tsx'
import { Section } from './Section.tsx'
import { levelCaution, rimCaution } from './unusual.ts'
import { REFERENCE_PARTS, useBodyParts, useEdit } from './useBasin.ts'
import { WallFields } from './WallFields.tsx'

const REFERENCES: readonly { readonly id: DepthReference; readonly label: string; readonly note: string }[] = [
  {
    id: 'waterline',
    label: 'the nominal waterline',
    note: 'Where the water is meant to stand, half way up the skimmer',
  },
  { id: 'water-now', label: 'the water as it stands now', note: 'A staff dipped in today' },
  { id: 'tile-line', label: 'the tile line', note: 'A joint or edge that is easy to find again' },
  { id: 'rim', label: 'the rim', note: 'The top of the wall or coping, in an empty pool' },
]

const PARTS = [...REFERENCE_PARTS, 'floor', 'wall', 'tolerance', 'depthsAssumed', 'otherFloors'] as const

/** How deep it is, from what that was measured, and how well. */
export const DepthSection = memo(function DepthSection({ number }: { readonly number: number }) {
  const body = useBodyParts(PARTS)
  if (!body) return null
  return (
    <Section number={number} title="Depths">
      <AssumedNote body={body} />
      <ReferenceFields body={body} />
      <FloorFields body={body} />
      <WallFields body={body} />
      <CareFields body={body} />
    </Section>
  )
})

/** Which depths nobody has said, and how that is mended. */
function AssumedNote({ body }: { readonly body: Body }) {
  const edit = useEdit()
  const canEdit = useCanEdit()
  const words = assumedWords(body)
  if (!words) return null
  return (
    <div className={styles['assumed']}>
      <p>{words}</p>
      {canEdit ? (
        <Button tone="quiet" onPress={() => edit('setBody', { bodyId: body.id, body: { depthsAssumed: undefined } })}>
          The depths are right as they stand
        </Button>
      ) : null}
    </div>
  )
}

function ReferenceFields({ body }: { readonly body: Body }) {
  const edit = useEdit()
  const units = useUnits()
  const bodyId = body.id
  const reference = body.depthsMeasuredFrom ?? 'waterline'
  const [wasM, setWasM] = useState<{ readonly levelM: number; readonly fromM: number }>()
  const setLevel = (levelM: number) => {
    const problem = edit('setLevel', { bodyId, levelM })
    if (!problem) setWasM({ levelM, fromM: body.levelM })
    return problem
  }
  return (
    <div className={styles['group']}>
      <ChoiceField
        label="Measured from"
        value={reference}
        options={REFERENCES}
        onChange={(depthsMeasuredFrom) => edit('setDepthReference', { bodyId, reference: depthsMeasuredFrom })}
        description={
          reference === 'waterline'
            ? 'Say this before the depths: they are typed and shown from there.'
            : 'Depths are typed and shown from there.'
        }
      />
      {reference === 'tile-line' ? (
        <QuantityField
          label="Tile line above the waterline"
          quantity="length"
          value={body.tileLineM}
          min={-LONGEST_M}
          max={LONGEST_M}
          onChange={(tileLineM) => edit('correctReference', { bodyId, tileLineM })}
          description={
            body.tileLineM === undefined
              ? 'Until this is known it counts as level with the water.'
              : staysWords(reference)
          }
        />
      ) : null}
      <QuantityField
        label="Water level today"
        quantity="length"
        value={body.levelM}
        min={-LONGEST_M}
        max={LONGEST_M}
        isRequired
        onChange={(levelM) => (levelM === undefined ? undefined : setLevel(levelM))}
        description={
          levelCaution(body.levelM, body.freeboardM) ??
          'Above the nominal waterline, or below it with a minus sign. The volume is that of this level.'
        }
      />
      {reference === 'water-now' && wasM && wasM.levelM === body.levelM && !areAllAssumed(body) ? (
        <LevelNote
          byM={wasM.levelM - wasM.fromM}
          onKeep={() => {
            if (!edit('deepenReadings', { bodyId, byM: wasM.fromM - wasM.levelM })) setWasM(undefined)
          }}
        />
      ) : null}
      <QuantityField
        label="Rim above the waterline"
        quantity="length"
        value={body.freeboardM}
        min={0}
        max={LONGEST_M}
        isRequired
        onChange={(freeboardM) =>
          freeboardM === undefined
            ? undefined
            : edit(reference === 'rim' ? 'correctReference' : 'setFreeboard', { bodyId, freeboardM })
        }
        description={rimCaution(body.freeboardM, units) ?? (reference === 'rim' ? staysWords(reference) : '')}
      />
    </div>
  )
}

const staysWords = (reference: 'rim' | 'tile-line') =>
  `Depths read from the ${reference === 'rim' ? 'rim' : 'tile line'} stay as you read them; how deep the water is follows from this.`

interface LevelProps {
  /** How much higher the water stands than before [m]. */
  readonly byM: number
  readonly onKeep: () => void
}

/** Water that moved leaves the floor where it is; a level put right leaves the depths as they were read from it. */
function LevelNote({ byM, onKeep }: LevelProps) {
  const units = useUnits()
  const canEdit = useCanEdit()
  if (byM === 0 || !canEdit) return null
  const by = formatQuantity('length', Math.abs(byM), units)
  return (
    <div className={styles['mend']} role="status">
      <span>
        The floor stays, so depths from the water now read {by} {byM > 0 ? 'more' : 'less'}.
      </span>
      <Button onPress={onKeep}>Keep them as they were read</Button>
    </div>
  )
}
