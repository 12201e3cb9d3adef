import type { Problem } from '../base/index.ts'

interface Words {
  readonly what: string
  readonly why: string
  readonly hint: string
}

/**
 * Every complaint of this layer, worded once. {…} is filled in where the complaint arises.
 */
// biome-ignore format: a table of words
const WORDS = {
  // Of the document as a whole
  'not-json': { what: 'This isn’t JSON: {detail}.', why: 'A spec is one JSON document.', hint: 'Open a file that this program saved, or check the text at the place named.' },
  'not-a-spec': { what: 'This isn’t a Shoalbook spec.', why: 'Its "format" has to be "shoalbook-spec".', hint: 'Open a file or a link that this program made.' },
  'newer-version': { what: 'This spec has version {detail}; this program reads up to version {newest}.', why: 'A newer program wrote it, and some of it would be lost.', hint: 'Reload the page to get the newest program, then open it again.' },
  'unknown-version': { what: '"version" is {detail}, which isn’t a version of the format.', why: 'It tells how the rest is to be read.', hint: 'The first version is 1.' },
  'too-large': { what: 'This document is larger or more deeply nested than any pool needs.', why: 'It would stall the program.', hint: 'It may have been damaged; open an earlier copy.' },

  // Of a value
  missing: { what: '"{key}" is missing.', why: 'Nothing is assumed in its place.', hint: 'Add it: {expected}.' },
  'wrong-type': { what: '"{key}" is {received} where {expected} is expected.', why: 'It can’t be computed with.', hint: 'Write {expected}.' },
  'not-finite': { what: '"{key}" isn’t a finite number.', why: 'It would spread into every result.', hint: 'Write a plain number.' },
  'out-of-range': { what: '"{key}" is {received}; {bound}.', why: 'Outside of that it can only be a slip.', hint: 'Check the number and its unit: lengths are in metres, volumes in m³, temperatures in °C.' },
  'not-whole': { what: '"{key}" isn’t a whole number.', why: 'It counts or points at something.', hint: 'Write a whole number from 0.' },
  'not-one-of': { what: '"{key}" is {received}, which isn’t known here.', why: 'Its meaning would have to be guessed.', hint: 'Use one of {expected}.' },
  'unknown-kind': { what: '"{key}" is {received}, a kind that this version doesn’t read.', why: 'Leaving the part out would give a wrong number, so the whole document waits.', hint: 'Use one of {expected}, or a newer program.' },
  'too-few': { what: '"{key}" has too few parts; {bound}.', why: 'With fewer it means nothing.', hint: 'Add what is missing.' },
  'too-many': { what: '"{key}" has too many parts; {bound}.', why: 'Beyond that the program would stall, or a part would have no meaning.', hint: 'Leave out what isn’t needed.' },
  'too-many-sides': { what: 'Outline and islands have {received} segments together; this takes {bound} at most.', why: 'It follows every one of them, and the program would stall.', hint: 'Draw the outline with fewer points, arcs and curves; or {instead}.' },
  'empty-text': { what: '"{key}" is empty.', why: 'Something else refers to it.', hint: 'Give it a few letters.' },
  'long-text': { what: '"{key}" is too long; {bound} characters.', why: 'Texts of any length would make the document and its link unwieldy.', hint: 'Shorten it.' },
  'not-a-moment': { what: '"{key}" isn’t a date and time with its offset.', why: 'The age of readings and doses decides what may be done.', hint: 'Write it like 2026-04-28T09:30:00-07:00 or 2026-04-28T16:30:00Z.' },
  'unknown-key': { what: '"{key}" isn’t known here.', why: 'It would be left aside without a word.', hint: 'Check its spelling.' },

  // Of values that don't go together
  'one-control': { what: 'This segment has one control point; a curve needs both.', why: 'A cubic curve is drawn by c1 and c2.', hint: 'Give both, or neither for a straight line.' },
  'bulge-and-controls': { what: 'This segment has a bulge and control points.', why: 'It can be an arc or a curve, not both.', hint: 'Leave one of them out.' },
  'axis-without-length': { what: 'The axis starts where it ends.', why: 'It has no direction.', hint: 'Move one of its ends.' },
  'stations-out-of-order': { what: 'The stations of the floor don’t lie in rising order along the axis.', why: 'Between two stations the floor is straight, so each needs its own place.', hint: 'Order them by distance, no two at one place.' },
  'treads-out-of-order': { what: 'The treads don’t lie in rising order.', why: 'Each tread reaches to where the next begins.', hint: 'Order them by distance, no two at one place.' },
  'band-out-of-order': { what: 'The band isn’t in order.', why: 'Its aim has to lie between its low and its high end.', hint: 'Make it low ≤ aim ≤ high.' },
  'not-above-zero': { what: '"{key}" is zero.', why: 'There is no water in it to treat.', hint: 'Give a volume above zero, or remove the estimate.' },
  'no-such-start': { what: 'There is no way of starting called {received}.', why: 'It decides what may not be dosed yet, so it can’t be left aside.', hint: 'Choose another start, or use a newer program.' },
  'start-values-many': { what: 'There are more values here than any start asks for.', why: 'Beyond that the program would stall.', hint: 'Leave out what isn’t needed.' },
  'no-such-rules': { what: 'No rules for bathing are known here by the name {received}.', why: 'Its limits would have to be guessed.', hint: 'Choose another set of rules, or use a newer program.' },
  'same-id': { what: 'The id "{received}" is used twice.', why: 'Edits and doses find their place by it.', hint: 'Give each its own id.' },
  'no-such-system': { what: 'There is no system "{received}" for this body of water.', why: 'The body’s water belongs to a system.', hint: 'Name one of the systems, or add that one.' },
  'system-unnamed': { what: 'This body of water doesn’t say which system it belongs to.', why: 'There are several.', hint: 'Add "system" with the id of one of them.' },

  // Of a link
  'not-a-link': { what: 'This link carries no spec.', why: 'The part behind # that holds it is missing or of another kind.', hint: 'Copy the whole link again, from the sender’s “Copy spec link”.' },
  'link-too-long': { what: 'This link is longer than any spec needs.', why: 'It isn’t opened, so that it can’t stall the program.', hint: 'Ask the sender for a new link, or for the file.' },
  'link-damaged': { what: 'This link is damaged.', why: 'Its check sum doesn’t fit: a part was cut off or changed on the way.', hint: 'Copy the whole link again; some programs break long links over lines.' },

  // Of an edit
  'unknown-edit': { what: 'There is no edit named "{detail}".', why: 'The document stays as it is.', hint: 'This is a fault of the program; please report it.' },
  'no-such-body': { what: 'There is no body of water "{detail}".', why: 'It may have been removed.', hint: 'Draw the pool first, or choose another.' },
  'no-such-system-here': { what: 'There is no system "{detail}".', why: 'It may have been removed.', hint: 'Choose another system.' },
  'no-such-part': { what: 'There is no {detail}.', why: 'It may have been removed.', hint: 'Select it again.' },
  'no-outline-of-points': { what: 'This feature has no points to edit.', why: 'Its form follows from its numbers.', hint: 'Drag its centre or type its numbers.' },
  'too-few-points': { what: 'With this point gone the outline would enclose nothing.', why: 'Straight sides need three corners; two points need a curve or an arc.', hint: 'Add a point elsewhere first, or remove the whole outline.' },
  'not-a-curve': { what: 'This segment has no control points.', why: 'Only a curve has them.', hint: 'Make it a curve first.' },
  'no-length': { what: 'The {detail} has no extent along that direction.', why: 'Nothing can be stretched from nothing.', hint: 'Move its points apart first.' },
  'not-a-sketch': { what: 'This drawing has its scale already.', why: 'Only a sketch is scaled to known lengths.', hint: 'Type an overall length on the drawing instead.' },
  'not-a-flat-floor': { what: 'This floor isn’t flat.', why: 'It has more than one depth.', hint: 'Choose a flat floor first.' },
  'not-by-contours': { what: 'This floor has no depth lines.', why: 'It isn’t given by lines of equal depth.', hint: 'Choose depth lines as the floor first.' },
  'not-by-soundings': { what: 'This floor has no soundings.', why: 'It isn’t given by depths at places.', hint: 'Choose soundings as the floor first.' },
  'not-a-dish': { what: 'This floor isn’t dished.', why: 'It has no hollow to change.', hint: 'Choose a dished floor first.' },
  'no-edge-depth': { what: 'This floor has no depth of its own at the walls.', why: 'Flat and sloping floors meet the walls at the depth that they have there.', hint: 'Change its depths instead.' },
  'edge-depth-needed': { what: 'This floor needs a depth at the walls.', why: 'Only soundings can do without: the walls then take the nearest one.', hint: 'Type the depth at the walls.' },
  'sounding-here': { what: 'There is a sounding at this very place.', why: 'One place has one depth.', hint: 'Change that one, or sound a little further on.' },
  'not-a-profile': { what: 'This floor has no stations.', why: 'It isn’t a profile along an axis.', hint: 'Choose a profile as the floor first.' },
  'stations-too-close': { what: 'There is a station at this place already.', why: 'Two stations need a centimetre between them.', hint: 'Move that one, or place this further away.' },
  'price-without-package': { what: '{product} is not sold here as “{detail}”.', why: 'The price would belong to nothing.', hint: 'Choose one of its packages.' },
  'product-in-use': { what: 'This product can’t be removed: {detail}.', why: 'What was given or held would no longer be known by its substance.', hint: 'Keep it, or remove those entries first.' },
  'device-may-not-hold': { what: 'This may not go in there. {detail}', why: 'What has been in it stays in it: traces of the other are enough for fire, gas or explosion, or the product is not made for such a device.', hint: '{instead}' },
  'device-history-unknown': { what: 'Whether this may go in there isn’t known. {detail}', why: 'Some products burn or give off gas with the traces of others.', hint: '{instead}' },
  'start-not-chosen': { what: 'No start is chosen yet.', why: 'Its values belong to one.', hint: 'Choose how the pool starts first.' },
  'start-value-unknown': { what: 'This start doesn’t ask for “{detail}”.', why: 'It would be left aside without a word.', hint: 'It asks for: {expected}.' },
  'start-value-out': { what: '{detail} is {received}; it has to be between {low} and {high}.', why: 'The figures of this start are counted from it.', hint: 'Check the number and its unit.' },
  'last-station': { what: 'This is the last station.', why: 'A profile needs one at least.', hint: 'Make the floor flat instead.' },
} as const satisfies { readonly [code: string]: Words }

export type ProblemCode = keyof typeof WORDS

export const isProblemCode = (code: string): code is ProblemCode => Object.hasOwn(WORDS, code)

/** A complaint of this layer at a path, its words filled in. */
export function problem(
  code: ProblemCode,
  path: string,
  fill: { readonly [name: string]: string | number } = {},
): Problem {
  const filled = (words: string) => words.replace(/\{(\w+)\}/g, (_, name: string) => String(fill[name] ?? ''))
  const words = WORDS[code]
  return { code, path, what: filled(words.what), why: filled(words.why), hint: filled(words.hint) }
}
