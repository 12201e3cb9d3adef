import { areAllAssumed, assumedDepths, withFloor } from './assumed-depths.ts'
import { asKind, type FloorKindId } from './floor-kinds.ts'
import type { Body, OtherFloor } from './types.ts'

/**
 * The body with a floor of another kind. What was said on the floor before is kept beside it and comes back with its kind;
 * a kind that nobody has said a depth on is made from the last floor that somebody has.
 */
export function withFloorKind(body: Body, kind: FloorKindId): Body {
  if (body.floor.kind === kind) return body
  const others = body.otherFloors ?? []
  const own = ownOf(body)
  const last = others.at(-1)
  const isMade =
    last !== undefined && JSON.stringify(ownOf(madeFrom(body, last, body.floor.kind))) === JSON.stringify(own)
  const isGuess = isMade || areAllAssumed(body)
  const source = isGuess && last ? last : own
  const rest = others.filter(({ floor }) => floor.kind !== kind && floor.kind !== body.floor.kind)
  // The one that others are made from comes last. What can be made again isn't kept.
  const kept = isMade ? rest : isGuess && last ? [own, ...rest] : [...rest, own]
  const back = others.find(({ floor }) => floor.kind === kind)
  const next =
    back && (isGuess || !areAllAssumed(back))
      ? withFloor(body, back.floor, assumedDepths(back))
      : madeFrom(body, source, kind)
  const { otherFloors: _, ...without } = next
  return kept.length > 0 ? { ...without, otherFloors: kept } : without
}

function madeFrom(body: Body, source: OtherFloor, kind: FloorKindId): Body {
  const { outline, islands } = body
  const { floor, assumed } = asKind(kind, { ...source, outline, islands })
  return withFloor(body, floor, assumed)
}

function ownOf({ floor, depthsAssumed }: Body): OtherFloor {
  return depthsAssumed === undefined || depthsAssumed === false ? { floor } : { floor, depthsAssumed }
}
