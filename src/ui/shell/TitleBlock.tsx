import { deriveBody, deriveVolume } from '../../derive/index.ts'
import { type FormatOptions, formatPlusMinus, formatQuantity, type Quantity } from '../../units/index.ts'
import { useApp, useUnits } from '../context.tsx'
import { inOwnUnits } from '../fields/index.ts'
import { figuresOf } from '../ledger/basin/figures.ts'
import { isSurface } from '../ledger/basin/volume-words.ts'
import { namedProblem } from '../part-names.ts'
import styles from './TitleBlock.module.css'

/** The title block of the drawing: what the basin comes to, with how sure it is. */
export function TitleBlock() {
  const spec = useApp((state) => state.spec)
  const units = useUnits()
  const show = (quantity: Quantity, si: number, options?: FormatOptions) => formatQuantity(quantity, si, units, options)
  const body = spec.bodies[0]
  const systemId = body?.system ?? spec.systems[0]?.id
  const volume = systemId === undefined ? undefined : deriveVolume(spec, systemId)
  if (!body) {
    return (
      <div className={styles['block']}>
        <Cell
          label="Volume"
          value={volume ? `about ${show('volume', volume.m3, { sigma: volume.sigmaM3 })}` : 'not known yet'}
          note={
            volume
              ? `${formatPlusMinus('volume', volume.m3, volume.sigmaM3, units)} (95 %), as stated`
              : 'draw the pool or type its volume'
          }
        />
      </div>
    )
  }
  const derived = deriveBody(body)
  if (!derived.measures.ok) {
    const { what, hint } = namedProblem(derived.measures.problem, body)
    return (
      <div className={styles['block']} role="alert">
        <Cell label="Volume" value="not known" note={inOwnUnits(`${what} ${hint}`, units)} />
      </div>
    )
  }
  const m = derived.measures.value
  const { volume: shownVolume, spread, area, length, perLevel, rule, noRule } = figuresOf(body, derived, m, units)
  const { wetted } = m
  const stepsM2 = wetted.featureM2 + wetted.riserM2
  return (
    <div className={styles['block']}>
      <Cell
        label={body.sketch ? 'Volume, sketch' : 'Volume'}
        value={shownVolume}
        note={`${spread}${body.sketch ? ', not to scale yet' : ''}`}
        isMain
      />
      <Cell label="Water surface" value={area(m.waterSurfaceM2)} note="cover, evaporation" />
      <Cell
        label="Wetted interior"
        value={area(wetted.totalM2)}
        note={`floor ${area(wetted.floorM2)} · wall ${area(wetted.wallM2)}${isSurface(stepsM2) ? ` · steps ${area(stepsM2)}` : ''}`}
      />
      <Cell label="Perimeter" value={length(m.perimeterM)} note="at the waterline" />
      <p className={styles['foot']}>
        Mean depth {show('length', m.meanDepthM)} · deepest {show('length', m.maxDepthM)} · {perLevel}
        {rule ? (
          <>
            {' '}
            · rule of thumb would say {rule.volume} ({rule.off})
          </>
        ) : null}
        {noRule ? ' · the rule of thumb can’t be used here' : null}
      </p>
      <p className="visually-hidden" role="status" aria-live="polite">
        Volume {show('volume', m.volumeM3, { sigma: derived.sigmaM3, style: 'long' })}
      </p>
    </div>
  )
}

function Cell(props: {
  readonly label: string
  readonly value: string
  readonly note: string
  readonly isMain?: boolean
}) {
  return (
    <div className={styles['cell']} data-main={props.isMain || undefined}>
      <p className={styles['label']}>{props.label}</p>
      <p className={styles['value']} data-testid={props.isMain ? 'volume' : undefined}>
        {props.value}
      </p>
      <p className={styles['note']}>{props.note}</p>
    </div>
  )
}
