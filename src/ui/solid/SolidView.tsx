import { lazy, Suspense, useCallback, useDeferredValue, useMemo, useState } from 'react'
import type { Body } from '../../document/index.ts'
import { FEATURES } from '../../features/index.ts'
import { useApp, useUnits } from '../context.tsx'
import { Button, ProblemNote } from '../fields/index.ts'
import { namedProblem } from '../part-names.ts'
import { Axonometric } from './Axonometric.tsx'
import { solidModelOf } from './from-body.ts'
import type { SolidModel } from './model.ts'
import { SolidGuard } from './SolidGuard.tsx'
import { SolidWindow } from './SolidWindow.tsx'
import styles from './solid.module.css'
import { useTones } from './useTones.ts'
import { whyNoWebGl } from './webgl.ts'

// three and fiber come in a chunk of their own, so that the first load stays without them.
const SolidCanvas = lazy(() => import('./scene/SolidCanvas.tsx').then((module) => ({ default: module.SolidCanvas })))

let reason: { readonly why: string | undefined } | undefined
/** Asked once: each question makes a drawing context. */
function webGlReason(): string | undefined {
  reason ??= { why: whyNoWebGl() }
  return reason.why
}

interface SolidViewProps {
  readonly bodyId: string
  /** Fills a window of its own, where one finger may turn it without scrolling the page. */
  readonly large?: boolean | undefined
}

/** The basin in three dimensions: turned, zoomed, sounded, filled and emptied. */
export function SolidView({ bodyId, large = false }: SolidViewProps) {
  const body = useApp((state) => state.spec.bodies.find((each) => each.id === bodyId))
  const units = useUnits()
  const [isWindow, setWindow] = useState(false)
  // While a point is dragged the plan comes first; the solid follows as soon as there is time.
  const later = useDeferredValue(body)
  const model = useMemo(() => later && solidModelOf(later, units), [later, units])
  if (!later || !model) return null
  return (
    <section className={styles['view']} data-large={large} aria-label="Solid">
      {model.ok ? (
        <Drawn body={later} model={model.value} large={large} />
      ) : (
        <div className={styles['noSolid']}>
          <ProblemNote problem={namedProblem(model.problem, later)} />
        </div>
      )}
      {large ? null : <p className={styles['name']}>SOLID</p>}
      {model.ok && !large && !webGlReason() ? (
        <div className={styles['enlarge']}>
          <Button tone="quiet" onPress={() => setWindow(true)} label="Enlarge the solid">
            Enlarge
          </Button>
        </div>
      ) : null}
      {isWindow ? <SolidWindow bodyId={bodyId} onClose={() => setWindow(false)} /> : null}
    </section>
  )
}

interface DrawnProps {
  readonly body: Body
  readonly model: SolidModel
  readonly large: boolean
}

function Drawn({ body, model, large }: DrawnProps) {
  const units = useUnits()
  const tones = useTones()
  const preview = useApp((state) => state.previewLevelM)
  const [attempt, setAttempt] = useState(0)
  const [isDrawn, setDrawn] = useState(false)
  const [isLost, setLost] = useState(false)
  const why = webGlReason()
  const { features } = body
  const featureName = useCallback(
    (index: number | undefined) => {
      const feature = index === undefined ? undefined : features[index]
      return feature && FEATURES.get(feature.kind)?.label.toLowerCase()
    },
    [features],
  )
  const onDrawn = useCallback(() => setDrawn(true), [])
  const onLost = useCallback(() => setLost(true), [])
  const again = () => {
    setDrawn(false)
    setLost(false)
    setAttempt(attempt + 1)
  }
  if (why) return <Instead model={model} what="The solid can't be drawn here." why={why} />
  if (isLost)
    return (
      <Instead
        model={model}
        what="The solid went away."
        why="The graphics driver let go of the drawing."
        onAgain={again}
      />
    )
  const waiting = <Waiting model={model} />
  return (
    <SolidGuard
      key={attempt}
      fallback={(text) => <Instead model={model} what="The solid did not load." why={text} onAgain={again} />}
    >
      {isDrawn ? null : waiting}
      <Suspense fallback={null}>
        <SolidCanvas
          model={model}
          levelM={preview ?? body.levelM}
          tones={tones}
          units={units}
          isLarge={large}
          featureName={featureName}
          onDrawn={onDrawn}
          onLost={onLost}
        />
      </Suspense>
    </SolidGuard>
  )
}

function Waiting({ model }: { readonly model: SolidModel }) {
  return (
    <div className={styles['waiting']} aria-hidden="true">
      <Axonometric model={model} />
      <p className={styles['caption']}>Setting up the solid…</p>
    </div>
  )
}

interface InsteadProps {
  readonly model: SolidModel
  readonly what: string
  readonly why: string
  readonly onAgain?: (() => void) | undefined
}

/** A still line drawing, and why there is no more than that. */
function Instead({ model, what, why, onAgain }: InsteadProps) {
  return (
    <div className={styles['instead']}>
      <Axonometric model={model} />
      <p className={styles['caption']}>
        <strong>{what}</strong> {why} Plan and section show the same basin.
      </p>
      {onAgain ? (
        <Button tone="plain" onPress={onAgain}>
          Draw it again
        </Button>
      ) : null}
    </div>
  )
}
