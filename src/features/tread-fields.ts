import type { Treads } from './treads.ts'
import type { FeatureField } from './types.ts'

/** What a new flight has from tread to tread, front to back and down [m]. */
export const GOING_M = 0.3
export const RISE_M = 0.25

/** The fields that every flight of treads has. */
export function treadFields<F extends { readonly treads: Treads }>() {
  return {
    count: {
      id: 'count',
      label: 'Treads',
      unit: 'count',
      get: (f) => f.treads.length,
      set: (f, n) => ({
        ...f,
        treads: recounted(f.treads, n, meanStep(f.treads, 0, GOING_M), meanStep(f.treads, 1, RISE_M)),
      }),
    },
    going: {
      id: 'goingM',
      label: 'Depth of a tread, front to back',
      unit: 'm',
      get: (f) => meanStep(f.treads, 0, GOING_M),
      set: (f, step) => ({ ...f, treads: respaced(f.treads, 0, step) }),
    },
    rise: {
      id: 'riseM',
      label: 'Drop from tread to tread',
      unit: 'm',
      get: (f) => meanStep(f.treads, 1, RISE_M),
      set: (f, step) => ({ ...f, treads: respaced(f.treads, 1, step) }),
    },
    firstDepth: {
      id: 'firstDepthM',
      label: 'Depth of the first tread',
      unit: 'm',
      isDepth: true,
      get: (f) => f.treads[0]?.[1] ?? 0,
      set: (f, depth) => {
        const by = depth - (f.treads[0]?.[1] ?? 0)
        return { ...f, treads: f.treads.map(([s, d]) => [s, d + by] as const) }
      },
    },
  } satisfies Record<string, FeatureField<F>>
}

/** Treads of another number: those that stay keep their measures, new ones go on as the last two did. */
function recounted(treads: Treads, count: number, goingM: number, riseM: number): Treads {
  const wanted = Math.max(1, Math.round(count))
  const out = treads.slice(0, wanted).map(([s, d]): readonly [number, number] => [s, d])
  while (out.length < wanted) {
    const [s, d] = out[out.length - 1] ?? [0, 0]
    out.push([s + goingM, d + riseM])
  }
  return out
}

/** Distance from tread to tread, the mean of the flight. */
function meanStep(treads: Treads, which: 0 | 1, fallback: number): number {
  const n = treads.length
  return n < 2 ? fallback : (treads[n - 1]![which] - treads[0]![which]) / (n - 1)
}

/** Treads with an even distance from tread to tread. */
function respaced(treads: Treads, which: 0 | 1, step: number): Treads {
  const first = treads[0]?.[which] ?? 0
  return treads.map(([s, d], i) => (which === 0 ? [first + i * step, d] : [s, first + i * step]))
}
