import type { Body } from '../../../document/index.ts'
import { snapLength } from '../../../units/index.ts'
import { useUnits } from '../../context.tsx'
import { inOwnUnits, LONGEST_M, NumberField, QuantityField, SegmentedField } from '../../fields/index.ts'
import styles from './basin.module.css'
import { leanWords, runFromAngle, runFromLean, toAngle, toLean } from './batter.ts'
import { coveCaution, leanCaution } from './unusual.ts'
import { useBasin, useEdit } from './useBasin.ts'

/** Radius of a cove and lean of a wall until they are measured; common practice, no source. */
const USUAL_COVE_M = 0.3
const USUAL_RUN = 0.1

/** How walls stand and how they meet the floor. */
export function WallFields({ body }: { readonly body: Body }) {
  const edit = useEdit()
  const units = useUnits()
  const { wall } = body
  const measures = useBasin().derived?.measures
  const problem = measures?.ok === false && measures.problem.path.startsWith('wall') ? measures.problem : undefined
  const trouble = problem && inOwnUnits(`${problem.what} ${problem.hint}`, units)
  const change = (next: Body['wall']) => edit('setWall', { bodyId: body.id, wall: next })
  return (
    <div className={styles['group']}>
      <SegmentedField
        label="Walls"
        value={wall.kind}
        options={[
          { id: 'vertical', label: 'upright' },
          { id: 'cove', label: 'coved' },
          { id: 'battered', label: 'leaning' },
        ]}
        onChange={(kind) =>
          change(
            kind === 'cove'
              ? { kind, radiusM: snapLength(USUAL_COVE_M, units) }
              : kind === 'battered'
                ? { kind, run: USUAL_RUN }
                : { kind: 'vertical' },
          )
        }
        description={WALL_WORDS[wall.kind]}
      />
      {wall.kind === 'cove' ? (
        <QuantityField
          label="Radius of the cove"
          quantity="length"
          value={wall.radiusM}
          min={0}
          max={LONGEST_M}
          isRequired
          trouble={trouble}
          description={(trouble ? undefined : coveCaution(wall.radiusM, body)) ?? ''}
          onChange={(radiusM) => (radiusM === undefined ? undefined : change({ kind: 'cove', radiusM }))}
        />
      ) : null}
      {wall.kind === 'battered' ? (
        <BatterFields run={wall.run} trouble={trouble} onChange={(run) => change({ kind: 'battered', run })} />
      ) : null}
    </div>
  )
}

const WALL_WORDS = {
  vertical: 'They meet the floor at a square edge.',
  cove: 'Upright, with a quarter round where they meet the floor.',
  battered: 'They lean: the pool is narrower at the floor than at the waterline. Builders say battered.',
} as const

interface BatterProps {
  readonly run: number
  readonly trouble: string | undefined
  readonly onChange: (run: number) => unknown
}

function BatterFields({ run, trouble, onChange }: BatterProps) {
  const units = useUnits()
  const words = leanWords(units)
  return (
    <>
      <NumberField
        label={words.label}
        unitLabel={words.unit}
        value={toLean(run, units)}
        min={0}
        max={toLean(10, units)}
        isRequired
        onChange={(lean) => (lean === undefined ? undefined : void onChange(runFromLean(lean, units)))}
        trouble={trouble}
        description={leanCaution(run) ?? words.how}
      />
      <NumberField
        label="The same as an angle"
        unitLabel="°"
        value={toAngle(run)}
        min={0}
        max={84}
        isRequired
        onChange={(degrees) => (degrees === undefined ? undefined : void onChange(runFromAngle(degrees)))}
        description="From upright."
      />
    </>
  )
}
