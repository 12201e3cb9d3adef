import { deltaPerGram, type Product } from '../../../chemicals/index.ts'
import { MOLAR_MASSES_G_PER_MOL } from '../../../water/index.ts'

const L_PER_M3 = 1000
const MG_PER_G = 1000

/**
 * Grams of a product that bring so much chlorine into so much water [g]; undefined for a product without chlorine.
 * Equation: V c / (1000 x), x chlorine in the product.
 * Symbols: V volume [L]; c chlorine to add [mg/L as Cl2]; x [g as Cl2 per g of product].
 * Valid for: products that dissolve whole.
 * Source: definition, the product's composition.
 * Accuracy: that of the volume and of the product's strength.
 */
export function chlorineDoseG(product: Product, mgPerL: number, volumeM3: number): number | undefined {
  const chlorine = (deltaPerGram(product).chlorineMol ?? 0) * MOLAR_MASSES_G_PER_MOL.chlorineAsCl2
  return chlorine > 0 ? (volumeM3 * L_PER_M3 * mgPerL) / MG_PER_G / chlorine : undefined
}

/** Whether it brings stabiliser along. */
export function isStabilisedProduct(product: Product): boolean {
  return (deltaPerGram(product).cyanurateMol ?? 0) > 0
}
