import type { Problem } from '../base/index.ts'

/** Every complaint of this layer, worded in one place. Numbers are for people: few digits. */
const few = (value: number): string => String(Number(value.toPrecision(3)))

export const unknownProduct = (name: string, known: readonly string[]): Problem => ({
  code: 'unknown-product',
  path: 'product',
  what: `There is no product called "${name}".`,
  why: 'A dose can only be counted for a product whose composition is known.',
  hint: `Use one of: ${known.join(', ')}.`,
})

export const doseAmount = (path: 'gPerM3' | 'mLPerM3'): Problem => ({
  code: 'dose-amount',
  path,
  what: 'The dose has no amount that can be counted.',
  why: 'It needs one number, zero or more.',
  hint: 'Give either gPerM3 or mLPerM3.',
})

export const noStrength = (label: string): Problem => ({
  code: 'own-product-no-strength',
  path: 'like',
  what: `${label} is not a product with a strength on a label.`,
  why: 'It is a gas for plants, or only a way of accounting.',
  hint: 'Choose a product that is poured or weighed.',
})

export const wrongBasis = (basis: string, label: string, allowed: readonly string[]): Problem => ({
  code: 'own-product-basis',
  path: 'basis',
  what: `A strength as "${basis}" has no meaning for ${label}.`,
  why:
    basis === 'trade-percent'
      ? 'Trade % is grams of chlorine in 100 mL: it is for liquid chlorine only.'
      : 'Available chlorine is for products that bring chlorine.',
  hint: `Give it as: ${allowed.join(', ')}.`,
})

export const notStrength = (strength: number): Problem => ({
  code: 'own-product-strength',
  path: 'strength',
  what: `A strength of ${few(strength)} can not be counted.`,
  why: 'It has to be a number above zero.',
  hint: 'Copy the percentage of the active substance from the label.',
})

export const tooStrong = (strength: number, most: number, unit: string, substance: string, means: string): Problem => ({
  code: 'own-product-too-strong',
  path: 'strength',
  what: `${few(strength)} ${unit} is more than ${substance} can be: ${few(most)} ${unit} at most.`,
  why: means,
  hint: 'Read the label again: which substance does its percentage count, and in which basis?',
})

export const badDensity = (density: number, low: number, high: number): Problem => ({
  code: 'own-product-density',
  path: 'densityKgPerL',
  what: `A density of ${few(density)} kg/L can not be right.`,
  why: `Products of this kind weigh ${few(low)} to ${few(high)} kg a litre.`,
  hint: 'Copy it from the safety data sheet, or leave it out.',
})

export const badPackage = (index: number): Problem => ({
  code: 'own-product-package',
  path: `packages[${index}]`,
  what: 'A package needs a weight above zero, and a price of zero or more if it has one.',
  why: 'Whole packages and costs are counted from them.',
  hint: 'For a liquid: its litres times its density.',
})

export const badPrice = (): Problem => ({
  code: 'price',
  path: 'price',
  what: 'A price has to be a number, zero or more.',
  why: 'Costs are added up from it.',
  hint: 'Give what one package costs.',
})

export const noSuchPackage = (label: string, product: string, labels: readonly string[]): Problem => ({
  code: 'price-no-package',
  path: 'packageLabel',
  what: `${product} has no package "${label}".`,
  why: 'The price would belong to nothing.',
  hint: labels.length > 0 ? `Its packages: ${labels.join(', ')}.` : 'Choose a product that is sold in packages.',
})

export const badAgeing = (path: 'percent' | 'days' | 'storedC', value: number, range: string): Problem => ({
  code: 'ageing-input',
  path,
  what: `${few(value)} is outside what the loss of strength can be reckoned for.`,
  why: `It is known for ${range}.`,
  hint: 'Correct it, or measure what the product still holds.',
})
