import type { Measures, Uncertainty } from '../../../basin/index.ts'
import { deriveUncertainty } from '../../../derive/index.ts'
import type { Body } from '../../../document/index.ts'
import { formatPlusMinus } from '../../../units/index.ts'
import { useAppStore, useUnits } from '../../context.tsx'
import { Button } from '../../fields/index.ts'
import styles from './basin.module.css'
import { placeWords } from './place-words.ts'
import { Figure } from './Section.tsx'
import { boundWords } from './volume-words.ts'

const CAUSES: { readonly [W in Uncertainty['contributions'][number]['what']]: string } = {
  nodes: 'points of the plan',
  depths: 'depths',
  tape: 'the tape’s scale',
  waterline: 'where the waterline is',
}
/** More measurements than this to take again is no advice. */
const ADVISED = 3
/** A cause below this share of the whole isn't worth a line. */
const LEAST_SHARE = 0.01

interface Props {
  readonly body: Body
  readonly measures: Measures
  /** With what a sketch or assumed depths add to the measuring [m³]. */
  readonly sigmaM3: number
}

/** The three errors of a volume apart, and which measurement would help most. */
export function Doubts({ body, measures, sigmaM3 }: Props) {
  const units = useUnits()
  const store = useAppStore()
  const { errors, volumeM3 } = measures
  const uncertainty = deriveUncertainty(body)
  const plusMinus = (sigma: number) => formatPlusMinus('volume', volumeM3, sigma, units)
  const causes = (uncertainty?.contributions ?? []).filter((cause) => cause.sigmaM3 > 0)
  const assumedM3 = uncertainty?.assumedM3 ?? 0
  const fromScale = Math.sqrt(Math.max(0, sigmaM3 ** 2 - errors.measurementM3 ** 2 - assumedM3 ** 2))
  const isScaleFirst = body.sketch !== undefined && fromScale > (uncertainty?.largest[0]?.sigmaM3 ?? 0)
  const isAllTaken = (!isScaleFirst && uncertainty?.largest.slice(0, ADVISED).every(({ isTaken }) => isTaken)) ?? true
  return (
    <>
      <dl className={styles['account']}>
        <Figure
          label="Measuring"
          value={plusMinus(errors.measurementM3)}
          note="from how well points and depths are known; 95 % lie within"
        />
        {causes.map(({ what, sigmaM3: sigma }) => (
          <Figure key={what} isPart label={CAUSES[what]} value={plusMinus(sigma)} />
        ))}
        {body.sketch && fromScale > sigmaM3 * LEAST_SHARE ? (
          <Figure label="Scale of the sketch" value={plusMinus(fromScale)} />
        ) : null}
        {assumedM3 > sigmaM3 * LEAST_SHARE ? (
          <Figure label="Depths that nobody measured" value={plusMinus(assumedM3)} />
        ) : null}
        <Figure
          label="Form"
          value={errors.modelM3 > 0 ? boundWords(errors.modelM3, units) : 'none'}
          note="what short straight pieces lose where they stand for a curve; at most"
        />
        <Figure
          label="Arithmetic"
          value={boundWords(errors.arithmeticM3, units)}
          note="rounding of the computation; at most"
        />
      </dl>
      {causes.length > 1 ? (
        <p className={styles['say']}>
          Errors of measuring are independent, so their squares add up: halving the largest helps most.
        </p>
      ) : null}
      {uncertainty && uncertainty.largest.length > 0 ? (
        <>
          <h5 className={styles['subhead']}>{isAllTaken ? 'Measure again first' : 'Measure first'}</h5>
          <ol className={styles['advice']}>
            {isScaleFirst ? (
              <li>
                <span className={styles['plainAdvice']}>Overall length and width</span>
                <span>{plusMinus(fromScale)}, not measured yet</span>
              </li>
            ) : null}
            {uncertainty.largest.slice(0, ADVISED).map(({ path, sigmaM3: sigma, isTaken }) => {
              const { words, selection } = placeWords(path, body)
              return (
                <li key={path}>
                  {selection ? (
                    <Button tone="quiet" onPress={() => store.getState().select(selection)}>
                      {words}
                    </Button>
                  ) : (
                    <span className={styles['plainAdvice']}>{words}</span>
                  )}
                  <span>
                    {plusMinus(sigma)}
                    {isTaken ? '' : ', not measured yet'}
                  </span>
                </li>
              )
            })}
          </ol>
        </>
      ) : null}
    </>
  )
}
