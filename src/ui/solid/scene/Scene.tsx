import { type Ref, useMemo } from 'react'
import type { Mesh } from 'three'
import { contourSegments, innerEdges, rimSegments } from '../line-segments.ts'
import type { SolidModel } from '../model.ts'
import type { Tones } from '../tones.ts'
import { Ground, Water } from './Flats.tsx'
import { Lines } from './Lines.tsx'
import { Shell } from './Shell.tsx'

interface SceneProps {
  readonly model: SolidModel
  readonly levelM: number
  readonly tones: Tones
  readonly shellRef: Ref<Mesh>
  readonly onDrawn: () => void
}

/** All that is drawn: ground, shell, ink, water. */
export function Scene({ model, levelM, tones, shellRef, onDrawn }: SceneProps) {
  const { mesh, contours, maxDepthM, rimM } = model
  const contourLines = useMemo(() => contourSegments(contours), [contours])
  const rim = useMemo(() => rimSegments(mesh.rings, rimM), [mesh, rimM])
  const edges = useMemo(() => innerEdges(mesh.edges, rimM), [mesh, rimM])
  return (
    <>
      <Ground rings={mesh.rings} heightM={rimM} tones={tones} />
      <Shell mesh={mesh} maxDepthM={maxDepthM} levelM={levelM} tones={tones} meshRef={shellRef} onDrawn={onDrawn} />
      <Lines segments={contourLines} tone={tones.ink} widthPx={0.9} strength={0.34} order={2} />
      <Lines segments={edges} tone={tones.ink} widthPx={1} strength={0.75} order={3} />
      <Lines segments={rim} tone={tones.ink} widthPx={1.5} order={5} />
      {levelM > -maxDepthM ? <Water rings={mesh.rings} heightM={levelM} tones={tones} /> : null}
    </>
  )
}
