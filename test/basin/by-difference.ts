import {
  type BasinShape,
  derivativesOf,
  type Floor,
  type Path,
  type Point,
  type VolumeDerivative,
  volumeAtLevel,
} from '../../src/basin/index.ts'
import type { Feature } from '../../src/features/index.ts'
import { divided, shape } from './shapes.ts'

/** A shape with its features as they are written, so that any number in it can be changed. */
export interface Written {
  outline: Path
  islands: Path[]
  floor: Floor
  wall: BasinShape['wall']
  features: Feature[]
  levelM: number
}

export function volumeOf({ levelM, ...parts }: Written): number {
  return volumeAtLevel(divided(shape(parts.outline, parts)), levelM).volumeM3
}

/** The same with the number or place at a path moved; a path's last point moves with its start where they are one. */
function moved(written: Written, path: string, by: readonly [number, number]): Written {
  const copy = structuredClone(written) as unknown as Record<string, unknown>
  const keys = path.split(/[.[\]]+/).filter((key) => key !== '')
  const change = (names: readonly string[]): void => {
    let at = copy
    for (const key of names.slice(0, -1)) at = at[key] as Record<string, unknown>
    const last = names[names.length - 1]!
    const value = at[last] as number | Point
    at[last] = typeof value === 'number' ? value + by[0] : [value[0] + by[0], value[1] + by[1], ...value.slice(2)]
  }
  change(keys)
  if (keys[keys.length - 1] === 'start') {
    let ring = written as unknown as Record<string, unknown>
    for (const key of keys.slice(0, -1)) ring = ring[key] as Record<string, unknown>
    const { start, segments } = ring as unknown as Path
    const last = segments.length - 1
    const { to } = segments[last]!
    if (to[0] === start[0] && to[1] === start[1]) change([...keys.slice(0, -1), 'segments', String(last), 'to'])
  }
  return copy as unknown as Written
}

/** Central difference, by two steps with the error of the first power taken out (Richardson). */
function difference(written: Written, path: string, x: number, y: number, stepM: number): number {
  const central = (h: number): number =>
    (volumeOf(moved(written, path, [h * x, h * y])) - volumeOf(moved(written, path, [-h * x, -h * y]))) / (2 * h)
  return (4 * central(stepM / 2) - central(stepM)) / 3
}

/** The derivative that is furthest from its difference, measured by the greatest of all; those at some paths alone where told. */
export function worstOf(written: Written, stepM: number, at: RegExp = /./): { path: string; off: number } {
  const list = derivativesOf(divided(shape(written.outline, written)), written.levelM).filter(({ path }) =>
    at.test(path),
  )
  let worst = { path: '', off: 0 }
  const take = (path: string, mine: number, x: number, y: number): void => {
    const theirs = difference(written, path, x, y, stepM)
    const off = Math.abs(mine - theirs) / scaleOf(list)
    if (!(off <= worst.off)) worst = { path: `${path} ${mine} ${theirs}`, off }
  }
  for (const { path, value } of list)
    if (typeof value === 'number') take(path, value, 1, 0)
    else {
      take(path, value[0], 1, 0)
      take(path, value[1], 0, 1)
    }
  return worst
}

/** The greatest derivative of all: what the others are measured against. */
function scaleOf(list: readonly VolumeDerivative[]): number {
  return Math.max(...list.map(({ value }) => (typeof value === 'number' ? Math.abs(value) : Math.hypot(...value))))
}
