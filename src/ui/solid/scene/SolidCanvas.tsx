import { createRoot, extend, type ReconcilerRoot } from '@react-three/fiber'
import { useCallback, useEffect, useLayoutEffect, useRef, useState } from 'react'
import { Mesh, PerspectiveCamera, Vector3 } from 'three'
import type { UnitSystem } from '../../../units/index.ts'
import { displayStep } from '../../../units/index.ts'
import { draggedAside, followPointers, stepForKey, viewForKey } from '../gestures.ts'
import type { SolidModel } from '../model.ts'
import { isOverBasin, type Probe, probeWords } from '../probe.ts'
import styles from '../solid.module.css'
import type { Tones } from '../tones.ts'
import { eyeOf, type Fit, fitTo, HOME, LENS_DEGREES, panned, type Vector, type View, zoomed } from '../turntable.ts'
import { COPING_M } from './Flats.tsx'
import { pick, pointOnLevel, probeBelow } from './pick.ts'
import { Scene } from './Scene.tsx'

// Only what the scene's elements name; the whole namespace would cost 58 kB more.
extend({ Mesh })

export interface SolidCanvasProps {
  readonly model: SolidModel
  readonly levelM: number
  readonly tones: Tones
  readonly units: UnitSystem
  readonly isLarge: boolean
  readonly featureName: (feature: number | undefined) => string | undefined
  readonly onDrawn: () => void
  readonly onLost: () => void
}

interface Size {
  readonly width: number
  readonly height: number
}

/** The points that must stay in the picture: the coping around the rim. */
function framePoints(model: SolidModel): Vector[] {
  const points: Vector[] = []
  for (const ring of model.mesh.rings.slice(0, 1)) {
    const step = Math.max(2, 2 * Math.floor(ring.length / 2 / 64))
    for (let i = 0; i < ring.length; i += step)
      for (const [dx, dy] of [[1, 0], [-1, 0], [0, 1], [0, -1]] as const)
        points.push([ring[i]! + dx * COPING_M * 2, ring[i + 1]! + dy * COPING_M * 2, model.rimM])
  }
  return points
}

/** The drawing itself: a canvas of its own for each mount, drawn only when something changed. */
export function SolidCanvas(props: SolidCanvasProps) {
  const { model, levelM, tones, units, isLarge, featureName, onDrawn, onLost } = props
  const host = useRef<HTMLDivElement>(null)
  const marker = useRef<HTMLDivElement>(null)
  const shell = useRef<Mesh>(null)
  const root = useRef<ReconcilerRoot<HTMLCanvasElement>>(undefined)
  const invalidate = useRef<() => void>(() => {})
  const [camera] = useState(() => Object.assign(new PerspectiveCamera(LENS_DEGREES, 1, 1, 200), { manual: true }))
  const view = useRef<View>(HOME)
  const size = useRef<Size>({ width: 1, height: 1 })
  const fit = useRef<Fit>({ target: [0, 0, 0], distanceM: 10 })
  const frame = useRef<Vector[]>([])
  const [probe, setProbe] = useState<{ readonly at: Probe; readonly byKeys: boolean }>()
  const shown = useRef<Probe>(undefined)
  const latest = useRef({ model, featureName })
  latest.current = { model, featureName }

  const placeMarker = useCallback(() => {
    const element = marker.current
    const at = shown.current
    if (!element || !at) return
    const spot = new Vector3(at.x, at.y, at.z).project(camera)
    const { width, height } = size.current
    const [x, y] = [((spot.x + 1) / 2) * width, ((1 - spot.y) / 2) * height]
    element.style.transform = `translate(${x.toFixed(1)}px, ${y.toFixed(1)}px)`
    element.dataset['side'] = x > width * 0.6 ? 'left' : 'right'
  }, [camera])

  const applyView = useCallback(() => {
    const { width, height } = size.current
    fit.current = fitTo(frame.current, view.current, width / height)
    const { eye, target, up } = eyeOf(view.current, fit.current)
    const far = fit.current.distanceM / view.current.zoom
    camera.aspect = width / height
    camera.near = Math.max(far * 0.25, 0.05)
    camera.far = far * 2 + 60
    camera.position.set(...eye)
    camera.up.set(...up)
    camera.lookAt(...target)
    camera.updateProjectionMatrix()
    camera.updateMatrixWorld()
    placeMarker()
    invalidate.current()
  }, [camera, placeMarker])

  useEffect(() => {
    const element = host.current
    if (!element) return
    const canvas = document.createElement('canvas')
    canvas.className = styles['canvas'] ?? ''
    canvas.setAttribute('aria-hidden', 'true')
    element.prepend(canvas)
    const made = createRoot(canvas)
    root.current = made
    const resize = () => {
      size.current = { width: Math.max(element.clientWidth, 1), height: Math.max(element.clientHeight, 1) }
      made.configure({
        gl: { antialias: true, alpha: true },
        size: { ...size.current, top: 0, left: 0 },
        camera,
        dpr: [1, 2],
        frameloop: 'demand',
        flat: true,
      })
      applyView()
    }
    const observer = new ResizeObserver(resize)
    observer.observe(element)
    resize()
    const lost = (event: Event) => {
      event.preventDefault()
      onLost()
    }
    canvas.addEventListener('webglcontextlost', lost)
    return () => {
      observer.disconnect()
      canvas.removeEventListener('webglcontextlost', lost)
      root.current = undefined
      invalidate.current = () => {}
      made.unmount()
      canvas.remove()
    }
  }, [camera, applyView, onLost])

  useLayoutEffect(() => {
    frame.current = framePoints(model)
    applyView()
  }, [model, applyView])

  useEffect(() => {
    const store = root.current?.render(
      <Scene model={model} levelM={levelM} tones={tones} shellRef={shell} onDrawn={onDrawn} />,
    )
    invalidate.current = () => store?.getState().invalidate()
    invalidate.current()
  }, [model, levelM, tones, onDrawn])

  const show = useCallback(
    (at: Probe | undefined, byKeys: boolean) => {
      shown.current = at
      setProbe(at && { at, byKeys })
    },
    [],
  )
  useLayoutEffect(placeMarker)

  useEffect(() => {
    const element = host.current
    if (!element) return
    const ndc = (x: number, y: number) =>
      [(x / size.current.width) * 2 - 1, 1 - (y / size.current.height) * 2] as const
    const reach = () => fit.current.distanceM * 0.2
    return followPointers(element, {
      change: (next) => {
        view.current = next(view.current)
        applyView()
      },
      zoomAt: (factor, x, y) => {
        const before = view.current
        const next = zoomed(before, factor)
        const real = next.zoom / before.zoom
        const { target } = eyeOf(before, fit.current)
        const about = pointOnLevel(camera, ...ndc(x, y), target[2])
        const share = 1 - 1 / real
        view.current = about ? panned(next, (about.x - target[0]) * share, (about.y - target[1]) * share, reach()) : next
        applyView()
      },
      panBy: (dx, dy) => {
        const far = fit.current.distanceM / view.current.zoom
        const metresPerPx = (2 * Math.tan((LENS_DEGREES * Math.PI) / 360) * far) / size.current.height
        view.current = draggedAside(view.current, dx, dy, metresPerPx, reach())
        applyView()
      },
      hover: (x, y) => {
        const now = latest.current
        show(shell.current ? pick(camera, shell.current, now.model, ...ndc(x, y), now.featureName) : undefined, false)
      },
      leave: () => show(undefined, false),
      dragging: (isDragging) => {
        element.dataset['dragging'] = String(isDragging)
        if (isDragging) show(undefined, false)
      },
    })
  }, [camera, applyView, show])

  const onKeyDown = (event: React.KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return
    if (event.key === 'Escape' && probe) {
      show(undefined, true)
      event.preventDefault()
      return
    }
    const step = event.shiftKey ? stepForKey(event.key, view.current, displayStep('length', units) * 6) : undefined
    if (step) {
      event.preventDefault()
      const from = shown.current ?? middleOf(model)
      const [x, y] = shown.current ? [from.x + step[0], from.y + step[1]] : [from.x, from.y]
      const next = isOverBasin(model.mesh.rings, x, y) ? probeBelow(model, x, y, featureName) : undefined
      if (next) show(next, true)
      return
    }
    const next = viewForKey(event.key, view.current, HOME)
    if (!next) return
    event.preventDefault()
    view.current = next
    applyView()
  }

  const words = probe && probeWords(probe.at, levelM, units)
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: the turntable takes keys of its own, as its label says
    <div
      ref={host}
      className={styles['table']}
      data-large={isLarge}
      role="application"
      aria-roledescription="turntable"
      aria-label="The basin as a solid"
      aria-describedby="solid-keys"
      tabIndex={0}
      onKeyDown={onKeyDown}
    >
      <div ref={marker} className={styles['marker']} hidden={!probe}>
        <span className={styles['dot']} />
        <span className={styles['tag']}>{words}</span>
      </div>
      <p id="solid-keys" className="visually-hidden">
        Arrow keys turn and tilt. Plus and minus zoom. Home shows it as at first. Shift with arrow keys moves a sounding
        lead over the floor and reads the depth; Escape takes it up.
      </p>
      <p className="visually-hidden" role="status">
        {probe?.byKeys ? words : ''}
      </p>
    </div>
  )
}

/** A place to let the lead down first: the middle of the outline, or the nearest corner of it that is over water. */
function middleOf(model: SolidModel): { readonly x: number; readonly y: number } {
  const ring = model.mesh.rings[0]
  if (!ring) return { x: 0, y: 0 }
  let [x, y] = [0, 0]
  for (let i = 0; i < ring.length; i += 2) {
    x += ring[i]! / (ring.length / 2)
    y += ring[i + 1]! / (ring.length / 2)
  }
  if (isOverBasin(model.mesh.rings, x, y)) return { x, y }
  for (let i = 0; i < ring.length; i += 2) {
    const [px, py] = [ring[i]! + (x - ring[i]!) * 0.05, ring[i + 1]! + (y - ring[i + 1]!) * 0.05]
    if (isOverBasin(model.mesh.rings, px, py)) return { x: px, y: py }
  }
  return { x, y }
}
