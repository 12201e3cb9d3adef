import { type Ref, useEffect, useMemo } from 'react'
import type { Mesh } from 'three'
import { groundUnder } from '../../plan/depth-steps.ts'
import { contourSegments, innerEdges, rimSegments } from '../line-segments.ts'
import type { SolidModel } from '../model.ts'
import { isDark, type Tones } from '../tones.ts'
import { Ground, Opening, Water } from './Flats.tsx'
import { Lines } from './Lines.tsx'
import { Sharpness } from './Sharpness.tsx'
import { Shell } from './Shell.tsx'

interface SceneProps {
  readonly model: SolidModel
  readonly levelM: number
  readonly tones: Tones
  readonly isHeld: boolean
  readonly shellRef: Ref<Mesh>
  /** Once the shell of this model is there to be pointed at. */
  readonly onReady: () => void
  /** After each frame. */
  readonly onDrawn: () => void
}

/** All that is drawn: ground, shell, ink, water. */
export function Scene({ model, levelM, tones, isHeld, shellRef, onReady, onDrawn }: SceneProps) {
  const { mesh, contours, maxDepthM, rimM, sampleAt } = model
  // As a text, so that a level that lays no further line bare cuts nothing anew.
  const onWhich = contours.map(({ depthM }) => (groundUnder(depthM, maxDepthM, levelM).isDeep ? 'd' : 'p')).join('')
  const [pale, deep] = useMemo(() => {
    const those = (ground: string) => contourSegments(contours.filter((_, i) => onWhich[i] === ground))
    return [those('p'), those('d')]
  }, [contours, onWhich])
  const rim = useMemo(() => rimSegments(mesh.rings, rimM), [mesh, rimM])
  const edges = useMemo(() => innerEdges(mesh.edges, rimM, sampleAt), [mesh, rimM, sampleAt])
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new mesh is what makes it ready again
  useEffect(onReady, [mesh])
  const onDeep = isDark(tones.paper) ? tones.ink : tones.page
  return (
    <>
      <Sharpness isHeld={isHeld} />
      <Opening rings={mesh.rings} heightM={rimM} />
      <Ground rings={mesh.rings} heightM={rimM} tones={tones} />
      <Shell mesh={mesh} maxDepthM={maxDepthM} levelM={levelM} tones={tones} meshRef={shellRef} onDrawn={onDrawn} />
      <Lines isInside segments={edges.breaks} tone={tones.ink} widthPx={0.8} strength={0.16} order={2} />
      <Lines isInside segments={pale} tone={tones.ink} widthPx={1} strength={0.5} order={3} />
      <Lines isInside segments={deep} tone={onDeep} widthPx={1} strength={0.5} order={3} />
      <Lines isInside segments={edges.steps} tone={tones.ink} widthPx={1} strength={0.8} order={4} />
      <Lines segments={rim} tone={tones.ink} widthPx={1.5} order={6} />
      {levelM > -maxDepthM ? <Water rings={mesh.rings} heightM={levelM} tones={tones} /> : null}
    </>
  )
}
