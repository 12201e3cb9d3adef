import { useFrame, useThree } from '@react-three/fiber'
import { useEffect, useRef } from 'react'

interface SharpnessProps {
  /** Whether a hand is moving the picture. */
  readonly isHeld: boolean
}

/** A frame that takes longer than this while the table turns makes it feel stuck [s]. */
const SLOW_S = 0.06
/** Longer than this it was not a frame but a rest [s]. */
const REST_S = 2
const COARSER = 0.65
const COARSEST = 0.5

/** On a slow machine the picture is coarser while it is turned, and sharp again when it is let go. */
export function Sharpness({ isHeld }: SharpnessProps) {
  const setDpr = useThree((state) => state.setDpr)
  const slow = useRef(0)
  const sharp = useRef<number>(undefined)
  useFrame((state, deltaS) => {
    if (!isHeld) return
    slow.current = deltaS > SLOW_S && deltaS < REST_S ? slow.current + 1 : 0
    if (slow.current < 2) return
    slow.current = 0
    sharp.current ??= state.viewport.dpr
    if (state.viewport.dpr > COARSEST) setDpr(Math.max(COARSEST, state.viewport.dpr * COARSER))
  })
  useEffect(() => {
    if (isHeld || sharp.current === undefined) return
    setDpr(sharp.current)
    sharp.current = undefined
  }, [isHeld, setDpr])
  return null
}
