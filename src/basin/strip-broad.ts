import type { StripPiece } from './strip-types.ts'
import { HAIR } from './tolerance.ts'

/** True where a piece is so narrow that it is mostly rounding. */
export function isNarrow({ fan, t0, t1 }: StripPiece): boolean {
  return t1 - t0 < HAIR * (fan.t1 - fan.t0)
}

/**
 * Pieces for pictures: without those so narrow that rounding may decide what ends their rays, which would stick out like needles.
 * What lies before a narrow one along the shore takes its place, or what comes after it.
 */
export function broadPieces(pieces: readonly StripPiece[]): StripPiece[] {
  const broad: StripPiece[] = []
  let waiting: StripPiece | undefined
  for (const piece of pieces) {
    const before = broad[broad.length - 1]
    if (isNarrow(piece)) {
      if (before?.fan === piece.fan && before.t1 === piece.t0) broad[broad.length - 1] = { ...before, t1: piece.t1 }
      else if (waiting?.fan !== piece.fan) waiting = piece
      continue
    }
    broad.push(waiting?.fan === piece.fan ? { ...piece, t0: waiting.t0 } : piece)
    waiting = undefined
  }
  return broad
}
