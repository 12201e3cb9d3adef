import { rampColour, rampPlace } from '../plan/depth-steps.ts'
import { contourSegments, innerEdges, rimSegments } from './line-segments.ts'
import type { SolidModel } from './model.ts'
import { frameOf, HOME, type Vector } from './turntable.ts'

/** Paths of a parallel projection from where the solid is first seen; the unit is the metre, y down. */
export interface Axonometry {
  readonly id: string
  readonly viewBox: string
  readonly rim: string
  /** The floor's tints, deepest first. */
  readonly tints: readonly { readonly key: string; readonly d: string; readonly colour: string }[]
  /** Tint of the upright walls. */
  readonly wallColour: string
  readonly contours: string
  readonly edges: string
  readonly waterline: string
  readonly copingWidth: number
}

const COPING_M = 0.3
const round = (value: number) => Math.round(value * 1000) / 1000

export function axonometryOf(model: SolidModel): Axonometry {
  const { right, up } = frameOf(HOME)
  const project = (x: number, y: number, z: number): readonly [number, number] => [
    round(x * right[0] + y * right[1] + z * right[2]),
    round(-(x * up[0] + y * up[1] + z * up[2])),
  ]
  const { rings } = model.mesh
  const closed = (z: number) =>
    rings
      .map((ring) => {
        let d = ''
        for (let i = 0; i < ring.length; i += 2)
          d += `${i === 0 ? 'M' : 'L'}${project(ring[i]!, ring[i + 1]!, z).join(' ')}`
        return ring.length > 0 ? `${d}Z` : ''
      })
      .join('')
  const lines = (segments: Float32Array) => {
    let d = ''
    for (let i = 0; i + 5 < segments.length; i += 6)
      d += `M${project(segments[i]!, segments[i + 1]!, segments[i + 2]!).join(' ')}L${project(segments[i + 3]!, segments[i + 4]!, segments[i + 5]!).join(' ')}`
    return d
  }
  const corners: Vector[] = []
  const rim = rimSegments(rings, model.rimM)
  for (let i = 0; i + 2 < rim.length; i += 6) corners.push([rim[i]!, rim[i + 1]!, rim[i + 2]!])
  const flat = corners.map((corner) => project(...corner))
  const margin = COPING_M * 3
  // Each band's outline lies at the depth of its own places, so that the floor sinks as it does in the solid.
  const tints = model
    .bands()
    .map((band) => ({ ...band, toM: Math.min(band.toM, model.maxDepthM) }))
    .toSorted((a, b) => b.toM - a.toM)
    .map(({ fromM, toM, rings: around }) => {
      const middleM = (fromM + toM) / 2
      const d = around
        .map((ring) => {
          const corners = ring.map(([x, y]) => {
            return project(x, y, -depthIn(model, x, y, fromM, toM)).join(' ')
          })
          return corners.length > 0 ? `M${corners.join('L')}Z` : ''
        })
        .join('')
      return { key: fromM.toFixed(3), d, colour: rampColour(rampPlace(middleM, model.maxDepthM)) }
    })
  const minX = Math.min(...flat.map((p) => p[0])) - margin
  const maxX = Math.max(...flat.map((p) => p[0])) + margin
  const minY = Math.min(...flat.map((p) => p[1])) - margin
  const maxY = Math.max(...flat.map((p) => p[1])) + margin
  return {
    id: [minX, minY, maxX, maxY].map((value) => Math.round(value * 100).toString(36)).join('-'),
    viewBox:
      flat.length === 0 ? '0 0 1 1' : `${round(minX)} ${round(minY)} ${round(maxX - minX)} ${round(maxY - minY)}`,
    rim: closed(model.rimM),
    tints,
    wallColour: rampColour(rampPlace(model.maxDepthM / 3, model.maxDepthM)),
    contours: lines(contourSegments(model.contours)),
    edges: lines(innerEdges(model.mesh.edges, model.rimM, model.sampleAt).steps),
    waterline: closed(0),
    copingWidth: COPING_M * 2,
  }
}

/** Beside a step or wall the floor has more than one depth at a place: the band's own is looked for close by [m]. */
const ASIDE_M = 0.004

function depthIn(model: SolidModel, x: number, y: number, fromM: number, toM: number): number {
  const around = [
    [0, 0],
    [1, 0],
    [-1, 0],
    [0, 1],
    [0, -1],
  ] as const
  const own = around
    .map(([dx, dy]) => model.sampleAt(x + dx * ASIDE_M, y + dy * ASIDE_M)?.depthM)
    .filter((depthM) => depthM !== undefined && depthM >= fromM - ASIDE_M && depthM <= toM + ASIDE_M)
  // The deepest is that of the floor and not of the wall, all along a ring.
  return own.length > 0 ? Math.max(...(own as number[])) : (fromM + toM) / 2
}
