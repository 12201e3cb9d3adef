import { useEffect, useRef } from 'react'
import { deriveVolume } from '../../../derive/index.ts'
import { useApp, useUnits } from '../../context.tsx'
import { useSystem } from '../water/useSystem.ts'
import { productOf } from './amounts.ts'
import { type DoubtedDose, doubtOf } from './doubt.ts'
import { useProducts } from './useProducts.ts'

export interface Doubt {
  /** What is shown at the field. */
  readonly words: string | undefined
  /** What the button then says. */
  readonly sureLabel: string
  /**
   * Asked before the typed amount is taken up: the amount whose doubt the owner has seen [g], if any. An amount that is only
   * taken up by the press itself is shown first.
   */
  readonly seenAmountG: () => number | undefined
  readonly isDoubtful: (amountG: number | undefined) => boolean
}

/** The question that an amount raises which can hardly have gone in. */
export function useDoubt(
  productId: string | undefined,
  amountG: number | undefined,
  planned?: DoubtedDose['planned'],
): Doubt {
  const units = useUnits()
  const list = useProducts()
  const system = useSystem()
  const spec = useApp((state) => state.spec)
  const volumeM3 = system && deriveVolume(spec, system.id)?.m3
  const product = productId === undefined ? undefined : productOf(productId, list)
  const say = (each: number | undefined) => doubtOf({ product, amountG: each, planned, volumeM3 }, units)
  const words = say(amountG)
  const seen = useRef<number | undefined>(undefined)
  useEffect(() => {
    seen.current = words === undefined ? undefined : amountG
  }, [words, amountG])
  return {
    words,
    sureLabel: 'Yes, that much went in',
    seenAmountG: () => seen.current,
    isDoubtful: (each) => say(each) !== undefined,
  }
}
