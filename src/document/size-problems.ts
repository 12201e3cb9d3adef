import type { Problem } from '../base/index.ts'
import { problem } from './problems.ts'
import { LIMITS } from './schema/numbers.ts'
import type { WrittenBody } from './schema/spec.ts'

type Sized = Pick<WrittenBody, 'outline' | 'islands' | 'floor' | 'wall' | 'features'>

/**
 * Parts whose cost grows faster than the shore's segments, on a shore of more segments than they take: a leaning wall looks from
 * each side to the others, a triangulated floor and a bench follow every side.
 */
export function sizeProblems(body: Sized, path: string): readonly Problem[] {
  const sides = [body.outline, ...body.islands].reduce((sum, { segments }) => sum + segments.length, 0)
  if (sides <= Math.min(LIMITS.leaningWallSides, LIMITS.followedSides)) return []
  const tooMany = (part: string, most: number, otherwise: string): readonly Problem[] =>
    sides > most
      ? [
          {
            ...problem('too-many-sides', `${path}.${part}`, { received: sides, bound: most, instead: otherwise }),
            at: [body.outline.start],
          },
        ]
      : []
  const { kind: floor } = body.floor
  const bench = body.features.findIndex(({ kind }) => kind === 'bench')
  return [
    ...(body.wall.kind === 'vertical' ? [] : tooMany('wall', LIMITS.leaningWallSides, 'choose upright walls')),
    ...(floor === 'contours' || floor === 'soundings'
      ? tooMany('floor', LIMITS.followedSides, 'give the floor by a profile')
      : []),
    ...(bench >= 0 ? tooMany(`features[${bench}]`, LIMITS.followedSides, 'draw the bench as a shelf') : []),
  ]
}
