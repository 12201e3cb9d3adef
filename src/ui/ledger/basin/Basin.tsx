import { deriveOverlaps, deriveProblems } from '../../../derive/index.ts'
import { formatQuantity } from '../../../units/index.ts'
import { useUnits } from '../../context.tsx'
import { Button, ProblemNote } from '../../fields/index.ts'
import { namedInSpec } from '../../part-names.ts'
import { useUntangled } from '../../useUntangled.ts'
import styles from './basin.module.css'
import { Cautions } from './Cautions.tsx'
import { DepthSection } from './DepthSection.tsx'
import { FeatureSection } from './FeatureSection.tsx'
import { isHardlyKnown, spreadWords } from './figures.ts'
import { OutlineSection } from './OutlineSection.tsx'
import { PlaceSection } from './PlaceSection.tsx'
import { type Basin as BasinState, useBasin, useEdit } from './useBasin.ts'
import { VolumeSection } from './VolumeSection.tsx'
import { twiceWords } from './volume-words.ts'

/** The first chapter: what the basin is, by its numbers. */
export function Basin() {
  const basin = useBasin()
  const { spec, body } = basin
  const units = useUnits()
  const edit = useEdit()
  const untangled = useUntangled()
  const shown = headVolume(basin)
  const problems = deriveProblems(spec).flatMap((problem) =>
    problem.path.startsWith('bodies') ? [namedInSpec(problem, spec)] : [],
  )
  // Numbered on in both cases, so that a blank sheet has no gaps.
  let next = 0
  const number = () => {
    next += 1
    return next
  }
  return (
    <div className={styles['chapter']}>
      <h2>
        {shown ? (
          <>
            A basin of {shown.isStated || isHardlyKnown(shown) ? 'about ' : ''}
            {formatQuantity('volume', shown.m3, units, { sigma: shown.sigmaM3 })}{' '}
            <span className={styles['plusMinus']}>{spreadWords(shown.m3, shown.sigmaM3, units)}</span>
          </>
        ) : (
          'The basin'
        )}
      </h2>
      {problems.map((problem) => (
        <ProblemNote key={`${problem.path} ${problem.code}`} problem={problem}>
          {untangled?.answers === problem.path ? (
            <div className={styles['mend']}>
              <Button
                onPress={() => {
                  const { bodyId, ring, path } = untangled
                  edit('untangleLine', { bodyId, ring, path })
                }}
              >
                Use the untangled line
              </Button>
              <span>dashed on the plan</span>
            </div>
          ) : null}
        </ProblemNote>
      ))}
      {deriveOverlaps(spec).map((notice) => (
        <ProblemNote key={`${notice.path} ${notice.what}`} problem={notice}>
          <p>{twiceWords(notice.twiceM3, units)}</p>
        </ProblemNote>
      ))}
      <VolumeSection number={number()} />
      <OutlineSection number={number()} />
      {body ? <DepthSection number={number()} /> : null}
      {body ? <FeatureSection number={number()} /> : null}
      <PlaceSection number={number()} />
      <Cautions number={number()} />
    </div>
  )
}

/** The figure at the head: that of the drawing as its title block has it, else what was stated. */
function headVolume({ derived, volume }: BasinState) {
  if (derived) {
    return derived.measures.ok
      ? { m3: derived.measures.value.volumeM3, sigmaM3: derived.sigmaM3, isStated: false }
      : undefined
  }
  return volume ? { m3: volume.m3, sigmaM3: volume.sigmaM3, isStated: true } : undefined
}
