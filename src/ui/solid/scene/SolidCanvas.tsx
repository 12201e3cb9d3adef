import { extend } from '@react-three/fiber'
import {
  type KeyboardEvent,
  type RefObject,
  useCallback,
  useId,
  useLayoutEffect,
  useMemo,
  useRef,
  useState,
} from 'react'
import { Mesh } from 'three'
import { displayStep, type UnitSystem } from '../../../units/index.ts'
import { groundUnder } from '../../plan/depth-steps.ts'
import { contourLabels, isClearOf, type Place, type Spot, writeContour } from '../contour-labels.ts'
import { frameOfRim, placeOverWater } from '../frame.ts'
import { stepForKey, viewForKey } from '../gestures.ts'
import { homeFor } from '../home.ts'
import type { SolidModel } from '../model.ts'
import { type Probe, probeWords } from '../probe.ts'
import styles from '../solid.module.css'
import { isDark, type Tones } from '../tones.ts'
import { canBeSeen, isOpening, pick, probeAnew, probeBelow } from './pick.ts'
import { Scene } from './Scene.tsx'
import { type Stage, useStage } from './useStage.ts'
import { useTurntable } from './useTurntable.ts'

// Only what the scene's elements name; the whole namespace would cost 58 kB more.
extend({ Mesh })

interface SolidCanvasProps {
  readonly model: SolidModel
  readonly levelM: number
  readonly tones: Tones
  readonly units: UnitSystem
  readonly isLarge: boolean
  readonly featureName: (feature: number | undefined) => string | undefined
  readonly onDrawn: () => void
  readonly onLost: () => void
}

interface Shown {
  readonly at: Probe
  readonly byKeys: boolean
  /** The one that it was read in. */
  readonly model: SolidModel
}

/** A press moves the lead this many of the unit's own steps: half a foot, or six centimetres. */
const LEAD_STEPS = 6
/** Ground that is kept in the picture around the rim: coping and its shadow [m]. */
const MARGIN_M = 0.75
/** From the lead to its words, and from them to the picture's edge [px]. */
const TAG_OFF_PX = 8
/** Half a figure's width and height with a little air [px]. */
const FIGURE_OFF_PX = [20, 11] as const
/** Half of what a figure is wide: all of it has to stand over the basin [px]. */
const HALF_FIGURE_PX = 14
/** Below this width figures on the contour lines are in the way [px]. */
const FIGURES_FROM_PX = 560

function readAnew(shown: Shown, model: SolidModel, nameOf: SolidCanvasProps['featureName']): Shown | undefined {
  if (shown.model === model) return shown
  const at = probeAnew(shown.at, shown.model, model, nameOf)
  return at && { at, byKeys: shown.byKeys, model }
}

/** The words at the lead stand above it to the right, or as far from there as the picture's edges ask. */
function keepInside(tag: HTMLElement, x: number, y: number, width: number): void {
  const left = Math.max(TAG_OFF_PX, Math.min(x + TAG_OFF_PX, width - tag.offsetWidth - TAG_OFF_PX)) - x
  const isBelow = y < tag.offsetHeight + 2 * TAG_OFF_PX
  tag.style.transform = `translate(${left.toFixed(1)}px, ${isBelow ? TAG_OFF_PX : -tag.offsetHeight - TAG_OFF_PX}px)`
}

/** Where on the screen a line's figure stands: beside the first of its places that is in sight, over the basin, and free. */
function spotOf(
  stage: Stage,
  shell: Mesh,
  model: SolidModel,
  places: readonly Place[],
  z: number,
  taken: readonly Spot[],
): Spot | undefined {
  const isOver = ([x, y]: Spot) =>
    [-HALF_FIGURE_PX, 0, HALF_FIGURE_PX].every((dx) => isOpening(stage.camera, model, ...stage.toNdc(x + dx, y)))
  for (const place of places) {
    if (!canBeSeen(stage.camera, shell, model, place.at[0], place.at[1], z)) continue
    for (const side of [-1, 1] as const) {
      const spot = besideLine(stage, place, z, side)
      if (isClearOf(spot, taken) && isOver(spot)) return spot
    }
  }
  return undefined
}

/** To one side of a line, so that it does not strike its own figure out. */
function besideLine(stage: Stage, { at, along }: Place, z: number, side: 1 | -1): Spot {
  const [x, y] = stage.toScreen(at[0], at[1], z)
  const [nextX, nextY] = stage.toScreen(at[0] + along[0] * 0.1, at[1] + along[1] * 0.1, z)
  const run = Math.hypot(nextX - x, nextY - y)
  if (run < 1e-6) return [x, y]
  const [across, down] = [(nextY - y) / run, -(nextX - x) / run]
  // Above the line first; beside an upright one further off, since figures are wider than high.
  const way = (down > 0 ? 1 : -1) * side
  return [x + way * across * FIGURE_OFF_PX[0], y + way * down * FIGURE_OFF_PX[1]]
}

/** Ink that can be read over the tint of a depth, or over floor that a lowered water lays bare. */
function inkOver(depthM: number, levelM: number, model: SolidModel, tones: Tones): string {
  const isLight = groundUnder(depthM, model.maxDepthM, levelM).isDeep && !isDark(tones.paper)
  return isLight ? 'var(--page)' : 'var(--ink)'
}

/** The drawing itself, with what is written on it. */
export function SolidCanvas(props: SolidCanvasProps) {
  const { model, levelM, tones, units, isLarge, featureName, onDrawn, onLost } = props
  const keys = useId()
  const marker = useRef<HTMLDivElement>(null)
  const tag = useRef<HTMLSpanElement>(null)
  const figures = useRef<HTMLDivElement>(null)
  const [isHeld, setHeld] = useState(false)
  const [held, setProbe] = useState<Shown>()
  // An edit may change what lies there, and moves the middle that all is reckoned from.
  const probe = useMemo(() => held && readAnew(held, model, featureName), [held, model, featureName])
  const labels = useMemo(() => contourLabels(model.contours), [model])
  const frame = useMemo(() => frameOfRim(model, MARGIN_M), [model])
  const home = useCallback((aspect: number) => homeFor(model, frame, aspect), [model, frame])
  const written = useRef<() => void>(() => {})
  const scene = useCallback(
    (shell: RefObject<Mesh | null>) => (
      <Scene
        model={model}
        levelM={levelM}
        tones={tones}
        isHeld={isHeld}
        shellRef={shell}
        onReady={() => written.current()}
        onDrawn={onDrawn}
      />
    ),
    [model, levelM, tones, isHeld, onDrawn],
  )
  const onView = useCallback(() => written.current(), [])
  const stage = useStage({ frame, homeFor: home, scene, onView, onLost })

  // Words stand in the page over the picture; they are moved by hand, since a turn changes every frame and not the tree.
  useLayoutEffect(() => {
    const put = (element: HTMLElement, x: number, y: number) => {
      element.style.transform = `translate(${x.toFixed(1)}px, ${y.toFixed(1)}px)`
    }
    written.current = () => {
      const at = probe?.at
      if (marker.current && at) {
        const [x, y] = stage.toScreen(at.x, at.y, at.z)
        put(marker.current, x, y)
        if (tag.current) keepInside(tag.current, x, y, stage.size().width)
      }
      const shell = stage.size().width >= FIGURES_FROM_PX ? stage.shell() : undefined
      const taken: Spot[] = []
      labels.forEach(({ depthM, places }, i) => {
        const element = figures.current?.children[i]
        if (!(element instanceof HTMLElement)) return
        const spot = shell && spotOf(stage, shell, model, places, -depthM, taken)
        element.hidden = !spot
        if (!spot) return
        put(element, spot[0], spot[1])
        taken.push(spot)
      })
    }
    written.current()
  })

  const onPoint = useCallback(
    (x: number | undefined, y: number | undefined) => {
      const shell = stage.shell()
      const at =
        x === undefined || y === undefined || !shell
          ? undefined
          : pick(stage.camera, shell, model, ...stage.toNdc(x, y), featureName)
      setProbe(at && { at, byKeys: false, model })
    },
    [stage, model, featureName],
  )
  useTurntable(stage, { onPoint, onHold: setHeld })

  const moveLead = (dx: number, dy: number) => {
    const from = probe ? ([probe.at.x + dx, probe.at.y + dy] as const) : placeOverWater(model)
    const at = from && probeBelow(model, from[0], from[1], featureName)
    if (at) setProbe({ at, byKeys: true, model })
  }
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return
    const step = event.shiftKey
      ? stepForKey(event.key, stage.view(), displayStep('length', units) * LEAD_STEPS)
      : undefined
    const view = step ? undefined : viewForKey(event.key, stage.view())
    if (step) moveLead(step[0], step[1])
    else if (view) stage.change(view)
    else if (event.key === 'Home') stage.goHome()
    else if (event.key === 'Escape' && probe) setProbe(undefined)
    else return
    event.preventDefault()
    event.stopPropagation()
  }

  const words = probe && probeWords(probe.at, { levelM, referenceM: model.referenceM, system: units })
  return (
    <div
      ref={stage.host}
      className={styles['table']}
      data-large={isLarge}
      data-dragging={isHeld}
      role="application"
      aria-roledescription="turntable"
      aria-label="The basin as a solid"
      aria-describedby={keys}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: an application takes keys of its own, as its description says
      tabIndex={0}
      onKeyDown={onKeyDown}
    >
      <div ref={figures} aria-hidden="true">
        {labels.map(({ key, depthM }) => (
          <span key={key} className={styles['figure']} style={{ color: inkOver(depthM, levelM, model, tones) }} hidden>
            {writeContour(depthM + model.referenceM, units)}
          </span>
        ))}
      </div>
      <div ref={marker} className={styles['marker']} hidden={!probe}>
        <span className={styles['dot']} />
        <span ref={tag} className={styles['tag']}>
          {words}
        </span>
      </div>
      <p id={keys} className="visually-hidden">
        Arrow keys turn and tilt. Plus and minus zoom. Home shows it as at first. Shift with arrow keys moves a sounding
        lead over the floor and reads the depth; Escape takes it up.
      </p>
      <p className="visually-hidden" role="status">
        {probe?.byKeys ? words : ''}
      </p>
    </div>
  )
}
