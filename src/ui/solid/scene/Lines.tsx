import { useThree } from '@react-three/fiber'
import { useEffect, useMemo } from 'react'
import {
  BufferAttribute,
  InstancedBufferAttribute,
  InstancedBufferGeometry,
  ShaderMaterial,
  Vector2,
  Vector3,
} from 'three'
import type { Rgb } from '../tones.ts'
import { onlyAt } from './Flats.tsx'
import { lineFragment, lineVertex } from './shaders.ts'

/** In a small picture the ink is thinner, as on a smaller sheet: full width from this size on [px]. */
const FULL_WIDTH_FROM_PX = 640

interface LinesProps {
  /** Pairs of end points, xyz. */
  readonly segments: Float32Array
  readonly tone: Rgb
  /** On the screen [CSS px]. */
  readonly widthPx: number
  readonly strength?: number
  readonly order: number
  /** Nothing of it shows outside the opening. */
  readonly isInside?: boolean
}

/** Ink lines of one width. */
export function Lines({ segments, tone, widthPx, strength = 1, order, isInside = false }: LinesProps) {
  const size = useThree((state) => state.size)
  const dpr = useThree((state) => state.viewport.dpr)
  const invalidate = useThree((state) => state.invalidate)
  const geometry = useMemo(() => {
    const made = new InstancedBufferGeometry()
    made.setAttribute('position', new BufferAttribute(new Float32Array([0, -1, 0, 1, -1, 0, 1, 1, 0, 0, 1, 0]), 3))
    made.setIndex([0, 1, 2, 0, 2, 3])
    const count = segments.length / 6
    const [from, to] = [new Float32Array(count * 3), new Float32Array(count * 3)]
    for (let i = 0; i < count; i++)
      for (let k = 0; k < 3; k++) {
        from[i * 3 + k] = segments[i * 6 + k]!
        to[i * 3 + k] = segments[i * 6 + 3 + k]!
      }
    made.setAttribute('from', new InstancedBufferAttribute(from, 3))
    made.setAttribute('to', new InstancedBufferAttribute(to, 3))
    made.instanceCount = count
    return made
  }, [segments])
  const material = useMemo(
    () =>
      new ShaderMaterial({
        vertexShader: lineVertex,
        fragmentShader: lineFragment,
        transparent: true,
        depthWrite: false,
        ...(isInside ? onlyAt(1) : {}),
        uniforms: {
          screen: { value: new Vector2(1, 1) },
          halfWidth: { value: 0.5 },
          pull: { value: 0.0015 },
          tone: { value: new Vector3() },
          strength: { value: 1 },
        },
      }),
    [isInside],
  )
  useEffect(() => () => geometry.dispose(), [geometry])
  useEffect(() => () => material.dispose(), [material])
  useEffect(() => {
    const { uniforms } = material
    uniforms['screen']!.value.set(size.width * dpr, size.height * dpr)
    uniforms['halfWidth']!.value = (widthPx * dpr * Math.min(1, Math.max(0.6, size.width / FULL_WIDTH_FROM_PX))) / 2
    uniforms['tone']!.value.set(...tone)
    uniforms['strength']!.value = strength
    invalidate()
  }, [material, size, dpr, widthPx, tone, strength, invalidate])
  if (segments.length === 0) return null
  return <mesh geometry={geometry} material={material} frustumCulled={false} renderOrder={order} raycast={() => null} />
}
