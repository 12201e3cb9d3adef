import { createRoot, type ReconcilerRoot } from '@react-three/fiber'
import {
  createRef,
  type ReactElement,
  type RefObject,
  useEffect,
  useLayoutEffect,
  useMemo,
  useRef,
  useState,
} from 'react'
import { type Mesh, PerspectiveCamera, Vector3 } from 'three'
import styles from '../solid.module.css'
import { eyeOf, type Fit, fitTo, HOME, LENS_DEGREES, type Vector, type View } from '../turntable.ts'

interface Size {
  readonly width: number
  readonly height: number
}

/** The picture's own state outside React: it changes with every movement of a finger. */
export interface Stage {
  readonly host: RefObject<HTMLDivElement | null>
  readonly camera: PerspectiveCamera
  readonly view: () => View
  readonly size: () => Size
  readonly fit: () => Fit
  readonly shell: () => Mesh | null | undefined
  readonly change: (view: View) => void
  /** Back to how it is first seen. */
  readonly goHome: () => void
  /** Places the camera anew, as it is seen. */
  readonly refresh: () => void
  /** Where a place of the basin is in the picture [px]. */
  readonly toScreen: (x: number, y: number, z: number) => readonly [x: number, y: number]
  /** A pixel as −1 to 1 both ways. */
  readonly toNdc: (x: number, y: number) => readonly [x: number, y: number]
}

interface StageOptions {
  /** What must stay in the picture at zoom 1. */
  readonly frame: readonly Vector[]
  /** How it is first seen in a picture of an aspect. */
  readonly homeFor: (aspect: number) => View
  readonly scene: (shell: RefObject<Mesh | null>) => ReactElement
  /** After each change of view or size. */
  readonly onView: () => void
  readonly onLost: () => void
}

/** One mount of the drawing. Its shell is its own: fiber lets the last mount's go only after the next has begun. */
interface Mounted {
  readonly root: ReconcilerRoot<HTMLCanvasElement>
  readonly shell: RefObject<Mesh | null>
}

/** Mounts a canvas of its own each time, draws on demand, and keeps the camera where the view wants it. */
export function useStage(options: StageOptions): Stage {
  const { frame, homeFor, scene, onView, onLost } = options
  const host = useRef<HTMLDivElement>(null)
  const mounted = useRef<Mounted>(undefined)
  const [camera] = useState(() => Object.assign(new PerspectiveCamera(LENS_DEGREES, 1, 1, 200), { manual: true }))
  const state = useRef({
    view: HOME,
    hasView: false,
    size: { width: 1, height: 1 } as Size,
    fit: { target: [0, 0, 0], distanceM: 10 } as Fit,
    frame,
    invalidate: () => {},
    homeFor,
    onView,
    onLost,
  })

  const stage = useMemo<Stage>(() => {
    const spot = new Vector3()
    const place = () => {
      const { size, view } = state.current
      const aspect = size.width / size.height
      const fit = fitTo(state.current.frame, view, aspect)
      state.current.fit = fit
      const { eye, target, up } = eyeOf(view, fit)
      const far = fit.distanceM / view.zoom
      camera.aspect = aspect
      camera.near = Math.max(far * 0.25, 0.05)
      camera.far = far * 2 + 60
      camera.position.set(...eye)
      camera.up.set(...up)
      camera.lookAt(...target)
      camera.updateProjectionMatrix()
      camera.updateMatrixWorld()
      state.current.onView()
      state.current.invalidate()
    }
    return {
      host,
      camera,
      view: () => state.current.view,
      size: () => state.current.size,
      fit: () => state.current.fit,
      shell: () => mounted.current?.shell.current,
      change: (view) => {
        state.current.view = view
        place()
      },
      goHome: () => {
        const { width, height } = state.current.size
        state.current.view = state.current.homeFor(width / height)
        place()
      },
      refresh: place,
      toScreen: (x, y, z) => {
        const { width, height } = state.current.size
        spot.set(x, y, z).project(camera)
        return [((spot.x + 1) / 2) * width, ((1 - spot.y) / 2) * height]
      },
      toNdc: (x, y) => {
        const { width, height } = state.current.size
        return [(x / width) * 2 - 1, 1 - (y / height) * 2]
      },
    }
  }, [camera])

  useLayoutEffect(() => {
    Object.assign(state.current, { homeFor, onView, onLost })
  }, [homeFor, onView, onLost])

  useEffect(() => {
    const element = host.current
    if (!element) return
    const canvas = document.createElement('canvas')
    canvas.className = styles['canvas'] ?? ''
    canvas.setAttribute('aria-hidden', 'true')
    element.prepend(canvas)
    const root = createRoot(canvas)
    mounted.current = { root, shell: createRef<Mesh>() }
    const resize = () => {
      const size = { width: Math.max(element.clientWidth, 1), height: Math.max(element.clientHeight, 1) }
      state.current.size = size
      const gl = { antialias: true, alpha: true, stencil: true }
      void root.configure({
        gl,
        size: { ...size, top: 0, left: 0 },
        camera,
        dpr: [1, 2],
        frameloop: 'demand',
        flat: true,
      })
      if (state.current.hasView) stage.refresh()
      else stage.goHome()
      state.current.hasView = true
    }
    const observer = new ResizeObserver(resize)
    observer.observe(element)
    resize()
    const lost = (event: Event) => {
      event.preventDefault()
      state.current.onLost()
    }
    canvas.addEventListener('webglcontextlost', lost)
    return () => {
      observer.disconnect()
      canvas.removeEventListener('webglcontextlost', lost)
      mounted.current = undefined
      state.current.invalidate = () => {}
      root.unmount()
      canvas.remove()
    }
  }, [camera, stage])

  useLayoutEffect(() => {
    state.current.frame = frame
    if (state.current.hasView) stage.refresh()
  }, [frame, stage])

  useEffect(() => {
    const now = mounted.current
    if (!now) return
    const drawn = now.root.render(scene(now.shell))
    state.current.invalidate = () => drawn.getState().invalidate()
    state.current.invalidate()
  }, [scene])

  return stage
}
