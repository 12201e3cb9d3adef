import type { Measures } from '../../../basin/index.ts'
import { formatPlusMinus, formatQuantity } from '../../../units/index.ts'
import { useUnits } from '../../context.tsx'
import { Disclosure } from '../../fields/index.ts'
import styles from './basin.module.css'
import { Doubts } from './Doubts.tsx'
import { Figure, Section } from './Section.tsx'
import { SetVolume } from './SetVolume.tsx'
import { StatedVolume } from './StatedVolume.tsx'
import { useBasin } from './useBasin.ts'
import { isSurface, offWords, ruleWords } from './volume-words.ts'

/** A rule of thumb deserves no more digits than this share of it [m³ per m³]. */
const RULE_DIGITS = 0.01

/** What the basin comes to, or a stated volume in its place. */
export function VolumeSection({ number }: { readonly number: number }) {
  const { body, derived, volume, system } = useBasin()
  const units = useUnits()
  const measures = derived?.measures
  return (
    <Section number={number} title="Volume">
      {body === undefined ? (
        <p className={styles['say']}>
          Nothing is drawn yet. State a volume here and go straight on to Water and Opening, or draw the pool: the
          drawing then takes over.
        </p>
      ) : measures?.ok ? (
        <MeasuredVolume measures={measures.value} />
      ) : (
        <p className={styles['say']}>There is no volume until the drawing is mended; see the remark above.</p>
      )}
      {body && derived && measures?.ok ? (
        <div>
          <Disclosure
            isLazy
            title="How sure the volume is"
            aside={formatPlusMinus('volume', measures.value.volumeM3, derived.sigmaM3, units)}
          >
            <Doubts body={body} measures={measures.value} sigmaM3={derived.sigmaM3} />
          </Disclosure>
          <Disclosure isLazy isScreenOnly title="Set the volume">
            <SetVolume body={body} volumeM3={measures.value.volumeM3} />
          </Disclosure>
        </div>
      ) : null}
      {system ? <StatedVolume system={system} volume={volume} hasDrawing={body !== undefined} /> : null}
    </Section>
  )
}

function MeasuredVolume({ measures }: { readonly measures: Measures }) {
  const units = useUnits()
  const { derived, volume } = useBasin()
  const area = (m2: number) => formatQuantity('area', m2, units)
  const length = (m: number) => formatQuantity('length', m, units)
  const sigma = derived?.sigmaM3 ?? measures.sigmaM3
  const rule = derived?.rule
  const { wetted } = measures
  return (
    <dl className={styles['account']}>
      <Figure
        label="Volume"
        value={formatQuantity('volume', measures.volumeM3, units, { sigma })}
        note={`${formatPlusMinus('volume', measures.volumeM3, sigma, units)} (95 %)`}
      />
      {volume && volume.plumbingM3 > 0 ? (
        <>
          <Figure isPart label="pipes and filter" value={formatQuantity('volume', volume.plumbingM3, units)} />
          <Figure isPart label="water to treat" value={formatQuantity('volume', volume.m3, units, { sigma })} />
        </>
      ) : null}
      <Figure label="Water surface" value={area(measures.waterSurfaceM2)} />
      <Figure label="Wetted interior" value={area(wetted.totalM2)} />
      <Figure isPart label="floor" value={area(wetted.floorM2)} />
      <Figure isPart label="walls" value={area(wetted.wallM2)} />
      {isSurface(wetted.featureM2) ? <Figure isPart label="treads and shelves" value={area(wetted.featureM2)} /> : null}
      {isSurface(wetted.riserM2) ? <Figure isPart label="risers" value={area(wetted.riserM2)} /> : null}
      <Figure label="Perimeter at the water" value={length(measures.perimeterM)} />
      <Figure label="Mean depth" value={length(measures.meanDepthM)} />
      <Figure label="Greatest depth" value={length(measures.maxDepthM)} />
      <Figure
        label="A change of level"
        value={formatQuantity('volumePerLevel', measures.volumePerLevelM2, units, { style: 'long' })}
      />
      {rule ? (
        <Figure
          label="The rule of thumb"
          value={formatQuantity('volume', rule.volumeM3, units, { sigma: rule.volumeM3 * RULE_DIGITS })}
          note={`${offWords(rule.relativeError, units)}: ${ruleWords(rule, units)}`}
        />
      ) : null}
    </dl>
  )
}
