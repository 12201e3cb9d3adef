import type { Measures } from '../../../basin/index.ts'
import { formatQuantity } from '../../../units/index.ts'
import { useUnits } from '../../context.tsx'
import { Disclosure } from '../../fields/index.ts'
import styles from './basin.module.css'
import { Doubts } from './Doubts.tsx'
import { figuresOf, spreadWords } from './figures.ts'
import { Figure, Section } from './Section.tsx'
import { SetVolume } from './SetVolume.tsx'
import { StatedVolume } from './StatedVolume.tsx'
import { useBasin } from './useBasin.ts'
import { isSurface, ruleWords } from './volume-words.ts'

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
            aside={spreadWords(measures.value.volumeM3, derived.sigmaM3, units)}
          >
            <Doubts body={body} measures={measures.value} sigmaM3={derived.sigmaM3} />
          </Disclosure>
          <Disclosure isLazy isScreenOnly title="Set the volume">
            <SetVolume body={body} volumeM3={measures.value.volumeM3} sigmaM3={derived.sigmaM3} />
          </Disclosure>
        </div>
      ) : null}
      {system ? <StatedVolume system={system} volume={volume} hasDrawing={body !== undefined} /> : null}
    </Section>
  )
}

function MeasuredVolume({ measures }: { readonly measures: Measures }) {
  const units = useUnits()
  const { body, derived, volume } = useBasin()
  if (!body || !derived) return null
  const { volume: shown, spread, area, length, perLevel, rule, noRule } = figuresOf(body, derived, measures, units)
  const depth = (m: number) => formatQuantity('length', m, units)
  const { sigmaM3: sigma } = derived
  const { wetted } = measures
  return (
    <dl className={styles['account']}>
      <Figure label="Volume" value={shown} note={spread} />
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
      <Figure label="Mean depth" value={depth(measures.meanDepthM)} />
      <Figure label="Greatest depth" value={depth(measures.maxDepthM)} />
      <Figure label="A change of level" value={perLevel} />
      {rule && derived.rule ? (
        <Figure
          label="The rule of thumb"
          value={rule.volume}
          note={`${rule.off}: ${ruleWords(derived.rule, units, length)}`}
        />
      ) : null}
      {noRule ? <Figure label="The rule of thumb" value="can’t be used here" note={noRule} /> : null}
    </dl>
  )
}
