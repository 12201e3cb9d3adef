import { deriveProblems } from '../../../derive/index.ts'
import { formatPlusMinus, formatQuantity } from '../../../units/index.ts'
import { useUnits } from '../../context.tsx'
import { ProblemNote } from '../../fields/index.ts'
import styles from './basin.module.css'
import { Cautions } from './Cautions.tsx'
import { DepthSection } from './DepthSection.tsx'
import { FeatureSection } from './FeatureSection.tsx'
import { OutlineSection } from './OutlineSection.tsx'
import { PlaceSection } from './PlaceSection.tsx'
import { useBasin } from './useBasin.ts'
import { VolumeSection } from './VolumeSection.tsx'

/** The first chapter: what the basin is, by its numbers. */
export function Basin() {
  const { spec, body, volume } = useBasin()
  const units = useUnits()
  const problems = deriveProblems(spec).filter((problem) => problem.path.startsWith('bodies'))
  // Numbered on in both cases, so that a blank sheet has no gaps.
  let next = 0
  const number = () => {
    next += 1
    return next
  }
  return (
    <div className={styles['chapter']}>
      <h2>
        {volume ? (
          <>
            A basin of {formatQuantity('volume', volume.m3, units, { sigma: volume.sigmaM3 })}{' '}
            <span className={styles['plusMinus']}>{formatPlusMinus('volume', volume.m3, volume.sigmaM3, units)}</span>
          </>
        ) : (
          'The basin'
        )}
      </h2>
      {problems.map((problem) => (
        <ProblemNote key={`${problem.path} ${problem.code}`} problem={problem} />
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
