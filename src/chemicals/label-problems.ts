import type { Problem } from '../base/index.ts'

export const idTaken = (id: string, isGeneric: boolean): Problem => ({
  code: 'own-product-id-taken',
  path: 'id',
  what: `${isGeneric ? 'A product of the list' : 'Another product of your own'} is already called "${id}".`,
  why: 'Two products under one name could not be told apart in a dose.',
  hint: 'Give it another id.',
})

export const unlike = (like: string, known: readonly string[]): Problem => ({
  code: 'own-product-like',
  path: 'like',
  what: `There is no generic product "${like}" that your own could be like.`,
  why: 'What it does to the water is known from its substance, not from its name.',
  hint: `Say which of these has the same substance: ${known.join(', ')}.`,
})
