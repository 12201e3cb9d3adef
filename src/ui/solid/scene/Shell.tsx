import { useThree } from '@react-three/fiber'
import { type Ref, useEffect, useMemo } from 'react'
import { BufferAttribute, BufferGeometry, DoubleSide, type Mesh, ShaderMaterial, Vector2, Vector3 } from 'three'
import { type BasinMesh, PARTS } from '../../../basin/index.ts'
import { heightsOf } from '../model.ts'
import { SUN, skylightOf } from '../skylight.ts'
import { isDark, mixed, type Tones } from '../tones.ts'
import { onlyAt } from './Flats.tsx'
import { shellFragment, shellVertex } from './shaders.ts'
import { rampTexture, skylightTexture } from './textures.ts'

interface ShellProps {
  readonly mesh: BasinMesh
  readonly maxDepthM: number
  readonly levelM: number
  readonly tones: Tones
  readonly meshRef: Ref<Mesh>
  /** Called after each frame that shows it. */
  readonly onDrawn: () => void
}

const RIM = PARTS.indexOf('rim')

function geometryOf(mesh: BasinMesh): BufferGeometry {
  const geometry = new BufferGeometry()
  geometry.setAttribute('position', new BufferAttribute(mesh.positions, 3))
  geometry.setAttribute('normal', new BufferAttribute(mesh.normals, 3))
  geometry.setIndex(new BufferAttribute(mesh.indices, 1))
  const rim = new Float32Array(mesh.positions.length / 3)
  mesh.parts.forEach((part, triangle) => {
    if (part === RIM) for (let k = 0; k < 3; k++) rim[mesh.indices[triangle * 3 + k]!] = 1
  })
  geometry.setAttribute('rim', new BufferAttribute(rim, 1))
  return geometry
}

/** The matte shell in the plan's depth tints under daylight; above the water it shows its bare plaster. */
export function Shell({ mesh, maxDepthM, levelM, tones, meshRef, onDrawn }: ShellProps) {
  const invalidate = useThree((state) => state.invalidate)
  const geometry = useMemo(() => geometryOf(mesh), [mesh])
  const light = useMemo(() => skylightOf(mesh), [mesh])
  const lightMap = useMemo(() => skylightTexture(light), [light])
  const ramp = useMemo(() => rampTexture(tones.depth, maxDepthM), [tones, maxDepthM])
  const material = useMemo(
    () =>
      new ShaderMaterial({
        vertexShader: shellVertex,
        fragmentShader: shellFragment,
        side: DoubleSide,
        ...onlyAt(1),
        uniforms: {
          ramp: { value: null },
          light: { value: null },
          lightOrigin: { value: new Vector2() },
          cell: { value: 1 },
          heights: { value: new Vector2() },
          deepest: { value: 1 },
          level: { value: 0 },
          sun: { value: new Vector3(...SUN) },
          dry: { value: new Vector3() },
          lineTone: { value: new Vector3() },
          night: { value: 0 },
        },
      }),
    [],
  )
  useEffect(() => () => geometry.dispose(), [geometry])
  useEffect(() => () => lightMap.dispose(), [lightMap])
  useEffect(() => () => ramp.dispose(), [ramp])
  useEffect(() => () => material.dispose(), [material])
  useEffect(() => {
    const { uniforms } = material
    const [lowM, rimM] = heightsOf(mesh)
    uniforms['ramp']!.value = ramp
    uniforms['light']!.value = lightMap
    uniforms['lightOrigin']!.value.set(light.originX, light.originY)
    uniforms['cell']!.value = light.cellM
    uniforms['heights']!.value.set(lowM, rimM)
    uniforms['deepest']!.value = Math.max(maxDepthM, 0.01)
    invalidate()
  }, [material, mesh, maxDepthM, light, lightMap, ramp, invalidate])
  useEffect(() => {
    const { uniforms } = material
    const dark = isDark(tones.paper)
    uniforms['level']!.value = levelM
    uniforms['dry']!.value.set(...mixed(tones.page, dark ? tones.ink : tones.rule, dark ? 0.22 : 0.5))
    uniforms['lineTone']!.value.set(...tones.waterInk)
    uniforms['night']!.value = dark ? 1 : 0
    invalidate()
  }, [material, levelM, tones, invalidate])
  return (
    <mesh
      ref={meshRef}
      geometry={geometry}
      material={material}
      frustumCulled={false}
      renderOrder={1}
      onAfterRender={onDrawn}
    />
  )
}
