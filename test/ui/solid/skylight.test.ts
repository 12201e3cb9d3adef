import { describe, expect, test } from 'vitest'
import type { BasinMesh } from '../../../src/basin/index.ts'
import { type Skylight, SUN, skylightOf } from '../../../src/ui/solid/skylight.ts'

/** A shaft of round or square plan with a level floor at a depth, its wall standing up to z = 0. */
function shaft(radiusM: number, depthM: number, sides: number, extraM = 0): BasinMesh {
  const positions: number[] = []
  const ring: number[] = []
  for (let i = 0; i < sides; i++) {
    const angle = ((i + 0.5) * 2 * Math.PI) / sides
    ring.push(radiusM * Math.cos(angle) + extraM, radiusM * Math.sin(angle))
  }
  for (let i = 0; i < sides; i++) {
    const [ax, ay] = [ring[i * 2]!, ring[i * 2 + 1]!]
    const j = (i + 1) % sides
    const [bx, by] = [ring[j * 2]!, ring[j * 2 + 1]!]
    positions.push(extraM, 0, -depthM, ax, ay, -depthM, bx, by, -depthM)
    positions.push(ax, ay, -depthM, bx, by, -depthM, bx, by, 0, ax, ay, -depthM, bx, by, 0, ax, ay, 0)
  }
  const count = positions.length / 3
  return {
    origin: [0, 0],
    positions: new Float32Array(positions),
    normals: new Float32Array(positions.length),
    indices: Uint32Array.from({ length: count }, (_, i) => i),
    parts: new Uint8Array(count / 3),
    edges: new Float32Array(),
    rings: [new Float64Array(ring)],
  }
}

function at(light: Skylight, x: number, y: number): { sky: number; sun: number; height: number } {
  const i = Math.floor((x - light.originX) / light.cellM)
  const j = Math.floor((y - light.originY) / light.cellM)
  const k = (j * light.width + i) * 4
  const [sky, sun, height] = light.texels.subarray(k, k + 3)
  return { sky: sky! / 255, sun: sun! / 255, height: light.lowM + (height! / 255) * (light.rimM - light.lowM) }
}

describe('daylight in the basin', () => {
  test('at the middle of a round shaft the sky’s share is R²/(R² + d²), the form factor of a coaxial disc', () => {
    // Radiative transfer's closed form for a differential element to a coaxial parallel disc (Siegel & Howell; from memory).
    for (const [radiusM, depthM] of [
      [4, 1],
      [4, 2],
      [4, 4],
      [2, 6],
    ] as const) {
      const light = skylightOf(shaft(radiusM, depthM, 96))
      const exact = radiusM ** 2 / (radiusM ** 2 + depthM ** 2)
      expect(Math.abs(at(light, 0, 0).sky - exact)).toBeLessThan(0.04)
    }
  })

  test('an even, open ledge sees the whole sky and the sun', () => {
    const light = skylightOf(shaft(4, 0, 48))
    expect(at(light, 1, 1)).toMatchObject({ sky: 1, sun: 1 })
  })

  test('the deeper a place, the less sky; nearer a wall, less too', () => {
    const [shallow, deep] = [skylightOf(shaft(3, 1, 48)), skylightOf(shaft(3, 2.5, 48))]
    expect(at(deep, 0, 0).sky).toBeLessThan(at(shallow, 0, 0).sky)
    expect(at(deep, 2.7, 0).sky).toBeLessThan(at(deep, 0, 0).sky)
  })

  test('the wall toward the sun throws its shadow as far as depth over the sun’s slope', () => {
    const depthM = 2
    const light = skylightOf(shaft(6, depthM, 128))
    const run = Math.hypot(SUN[0], SUN[1])
    const reachM = (depthM * run) / SUN[2]
    const toward = (farM: number) => at(light, (SUN[0] / run) * (6 - farM), (SUN[1] / run) * (6 - farM)).sun
    expect(toward(reachM * 0.4)).toBeLessThan(0.1)
    expect(toward(reachM * 1.7)).toBeGreaterThan(0.9)
    expect(toward(reachM)).toBeGreaterThan(0.2)
    expect(toward(reachM)).toBeLessThan(0.8)
  })

  test('heights are kept, and cells outside take their neighbours’ light instead of the open ground’s', () => {
    const light = skylightOf(shaft(3, 2, 64))
    expect(at(light, 0.5, 0.5).height).toBeCloseTo(-2, 1)
    const rim = at(light, 3 + light.cellM, 0)
    expect(rim.height).toBeLessThan(-1)
    expect(rim.sky).toBeLessThan(0.9)
  })

  test('where the basin lies on the map does not change its light', () => {
    const [here, there] = [skylightOf(shaft(3, 2, 64)), skylightOf(shaft(3, 2, 64, 256))]
    expect(Math.abs(at(here, 1, 1).sky - at(there, 257, 1).sky)).toBeLessThan(0.03)
    expect(there.width).toBe(here.width)
  })
})
