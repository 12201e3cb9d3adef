import { useThree } from '@react-three/fiber'
import { useEffect, useMemo } from 'react'
import {
  BufferAttribute,
  BufferGeometry,
  DoubleSide,
  EqualStencilFunc,
  InvertStencilOp,
  ShaderMaterial,
  Vector2,
  Vector3,
  Vector4,
} from 'three'
import type { BasinMesh } from '../../../basin/index.ts'
import { openingOf, rimDistanceOf, sheetOf } from '../ground.ts'
import { SUN } from '../skylight.ts'
import { isDark, mixed, type Tones } from '../tones.ts'
import { flatVertex, groundFragment, waterFragment } from './shaders.ts'
import { distanceTexture } from './textures.ts'

/** Width of the coping band [m]: about that of a coping stone (common practice, no source). */
const COPING_M = 0.3
const REACH_M = 1.5
/** As far as the ground's own shading reaches; beyond lies the page. */
const GROUND_M = REACH_M
/** The one bit of the stencil that says: here is the opening, and not the ground. */
const INSIDE = 1

/** Where the stencil lets a material draw. */
export const onlyAt = (ref: 0 | 1) => ({
  stencilWrite: true,
  stencilFunc: EqualStencilFunc,
  stencilRef: ref,
  stencilWriteMask: 0,
})

function flatGeometry(corners: Float32Array): BufferGeometry {
  const geometry = new BufferGeometry()
  const positions = new Float32Array((corners.length / 2) * 3)
  for (let i = 0; i < corners.length / 2; i++) {
    positions[i * 3] = corners[i * 2]!
    positions[i * 3 + 1] = corners[i * 2 + 1]!
  }
  geometry.setAttribute('position', new BufferAttribute(positions, 3))
  return geometry
}

interface FlatProps {
  readonly rings: BasinMesh['rings']
  readonly heightM: number
  readonly tones: Tones
}

/** Marks the opening in the stencil: the ground around hides whatever lies outside it. */
export function Opening({ rings, heightM }: Omit<FlatProps, 'tones'>) {
  const geometry = useMemo(() => flatGeometry(openingOf(rings)), [rings])
  const material = useMemo(
    () =>
      new ShaderMaterial({
        vertexShader: flatVertex,
        fragmentShader: waterFragment,
        side: DoubleSide,
        colorWrite: false,
        depthWrite: false,
        depthTest: false,
        stencilWrite: true,
        stencilWriteMask: INSIDE,
        stencilZPass: InvertStencilOp,
        uniforms: { height: { value: 0 }, tone: { value: new Vector3() }, strength: { value: 0 } },
      }),
    [],
  )
  useEffect(() => () => geometry.dispose(), [geometry])
  useEffect(() => () => material.dispose(), [material])
  useEffect(() => {
    material.uniforms['height']!.value = heightM
  }, [material, heightM])
  return <mesh geometry={geometry} material={material} frustumCulled={false} renderOrder={-1} raycast={() => null} />
}

/** The paper around, with a coping band and its soft shadow. */
export function Ground({ rings, heightM, tones }: FlatProps) {
  const invalidate = useThree((state) => state.invalidate)
  const geometry = useMemo(() => flatGeometry(sheetOf(rings, GROUND_M)), [rings])
  const away = useMemo(() => rimDistanceOf(rings, REACH_M, 256), [rings])
  const texture = useMemo(() => distanceTexture(away), [away])
  const material = useMemo(
    () =>
      new ShaderMaterial({
        vertexShader: flatVertex,
        fragmentShader: groundFragment,
        side: DoubleSide,
        depthTest: false,
        depthWrite: false,
        ...onlyAt(0),
        uniforms: {
          height: { value: 0 },
          away: { value: null },
          awayFrame: { value: new Vector4() },
          reach: { value: REACH_M },
          coping: { value: COPING_M },
          shadowStep: { value: new Vector2(SUN[0] * 0.2, SUN[1] * 0.2) },
          paper: { value: new Vector3() },
          stone: { value: new Vector3() },
          shade: { value: new Vector3() },
          edgeTone: { value: new Vector3() },
          shadowStrength: { value: 0.3 },
        },
      }),
    [],
  )
  useEffect(() => () => geometry.dispose(), [geometry])
  useEffect(() => () => texture.dispose(), [texture])
  useEffect(() => () => material.dispose(), [material])
  useEffect(() => {
    const { uniforms } = material
    uniforms['height']!.value = heightM
    uniforms['away']!.value = texture
    uniforms['awayFrame']!.value.set(away.originX, away.originY, away.width * away.cellM, away.height * away.cellM)
    uniforms['paper']!.value.set(...tones.paper)
    const dark = isDark(tones.paper)
    const stone = dark ? mixed(tones.page, tones.ink, 0.1) : tones.page
    uniforms['stone']!.value.set(...stone)
    uniforms['edgeTone']!.value.set(...mixed(stone, tones.ink, 0.42))
    uniforms['shade']!.value.set(...(dark ? mixed(tones.paper, [0, 0, 0], 0.75) : tones.ink))
    uniforms['shadowStrength']!.value = dark ? 0.7 : 0.3
    invalidate()
  }, [material, heightM, away, texture, tones, invalidate])
  return <mesh geometry={geometry} material={material} frustumCulled={false} renderOrder={0} raycast={() => null} />
}

/** Clear water: a faint tint over what lies under it, no waves, no mirror. The shell hides it where the floor stands dry. */
export function Water({ rings, heightM, tones }: FlatProps) {
  const invalidate = useThree((state) => state.invalidate)
  const geometry = useMemo(() => flatGeometry(sheetOf(rings, 0)), [rings])
  const material = useMemo(
    () =>
      new ShaderMaterial({
        vertexShader: flatVertex,
        fragmentShader: waterFragment,
        side: DoubleSide,
        transparent: true,
        ...onlyAt(1),
        depthWrite: false,
        uniforms: { height: { value: 0 }, tone: { value: new Vector3() }, strength: { value: 0.09 } },
      }),
    [],
  )
  useEffect(() => () => geometry.dispose(), [geometry])
  useEffect(() => () => material.dispose(), [material])
  useEffect(() => {
    material.uniforms['height']!.value = heightM
    material.uniforms['tone']!.value.set(...tones.waterInk)
    invalidate()
  }, [material, heightM, tones, invalidate])
  return <mesh geometry={geometry} material={material} frustumCulled={false} renderOrder={5} raycast={() => null} />
}
