import {
  ClampToEdgeWrapping,
  DataTexture,
  DataUtils,
  HalfFloatType,
  LinearFilter,
  NearestFilter,
  RedFormat,
  RGBAFormat,
} from 'three'
import { rampPlace } from '../../plan/depth-steps.ts'
import type { RimDistance } from '../ground.ts'
import type { Skylight } from '../skylight.ts'
import type { Rgb } from '../tones.ts'

function smooth(texture: DataTexture): DataTexture {
  texture.magFilter = LinearFilter
  texture.minFilter = LinearFilter
  texture.wrapS = ClampToEdgeWrapping
  texture.wrapT = ClampToEdgeWrapping
  texture.unpackAlignment = 1
  texture.needsUpdate = true
  return texture
}

const RAMP_STEPS = 128

/** The plan's depth ramp from the datum to the deepest place. */
export function rampTexture(depth: readonly Rgb[], maxDepthM: number): DataTexture {
  const data = new Uint8Array(RAMP_STEPS * 4)
  for (let i = 0; i < RAMP_STEPS; i++) {
    const place = rampPlace((maxDepthM * i) / (RAMP_STEPS - 1), maxDepthM)
    const low = Math.min(depth.length - 2, Math.floor(place))
    const [a, b] = [depth[low]!, depth[low + 1]!]
    for (let k = 0; k < 3; k++) data[i * 4 + k] = Math.round(255 * (a[k]! + (b[k]! - a[k]!) * (place - low)))
    data[i * 4 + 3] = 255
  }
  return smooth(new DataTexture(data, RAMP_STEPS, 1, RGBAFormat))
}

/** Read cell by cell: the shader blends them itself. */
export function skylightTexture(light: Skylight): DataTexture {
  const texture = smooth(new DataTexture(light.texels, light.width, light.height, RGBAFormat))
  texture.magFilter = NearestFilter
  texture.minFilter = NearestFilter
  return texture
}

/** Half floats: with bytes the coping's edge would be seen to go in steps when it is drawn near. */
export function distanceTexture(away: RimDistance): DataTexture {
  const halves = Uint16Array.from(away.texels, (metres) => DataUtils.toHalfFloat(metres))
  return smooth(new DataTexture(halves, away.width, away.height, RedFormat, HalfFloatType))
}
