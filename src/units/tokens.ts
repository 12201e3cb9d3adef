/** One number and the unit text behind it, as typed. */
export interface Token {
  readonly number: string
  readonly unit: string
}

const VULGAR: { readonly [character: string]: string } = {
  '½': '1/2',
  '⅓': '1/3',
  '⅔': '2/3',
  '¼': '1/4',
  '¾': '3/4',
  '⅕': '1/5',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
}

/** The text in one spelling: plain digits and spaces, ' and " for feet and inches, ² and ³, lower case. */
export function plainText(text: string, hasPowers: boolean): string {
  let plain = text.replace(/[½⅓⅔¼¾⅕⅛⅜⅝⅞]/g, (c) => ` ${VULGAR[c] ?? c} `)
  plain = plain.replaceAll('²', '^2').replaceAll('³', '^3').normalize('NFKC').toLowerCase()
  plain = plain
    .replace(/[‘’′´`ʹʼ]/g, "'")
    .replace(/[“”″ʺ]/g, '"')
    .replaceAll("''", '"')
  plain = plain
    .replace(/[−–—‐‑]/g, '-')
    .replaceAll('⁄', '/')
    .replace(/[\s\u200b\ufeff]+/g, ' ')
    .trim()
  plain = plain.replace(/^(?:about|approx\.?|ca\.?|circa|~|≈) ?/, '')
  plain = plain.replace(/ ?\/ ?(?=\d)/g, '/')
  plain = plain.replace(/\^2/g, '²').replace(/\^3/g, '³')
  // the 3 of a formula is no number of its own
  plain = plain.replace(/h?co3-?/g, (formula) => (formula.startsWith('h') ? 'hco₃' : 'co₃'))
  // m3 is a cubic metre, except where lengths are read: there 2 m 30 is two metres and thirty.
  return hasPowers
    ? plain.replace(
        /(m|ft|yd)([23])(?![\d.,])/g,
        (_, unit: string, power: string) => unit + (power === '2' ? '²' : '³'),
      )
    : plain
}

const NUMBER = /\d{1,3}(?: \d{3})+(?![\d/])(?:[.,]\d+)?|\d+(?:[.,]\d+)*|[.,]\d+/y
const MIXED = /\d+[ -]\d+\/\d+|\d+\/\d+/y
const QUOTED_THOUSANDS = /\d{1,3}(?:'\d{3})+(?:[.,]\d+)?(?!\d)/y

/** Splits a plain text into numbers, each with the unit text that follows it; undefined where it starts otherwise. */
export function tokens(plain: string, isLength: boolean): readonly Token[] | undefined {
  const found: Token[] = []
  let at = 0
  while (at < plain.length) {
    const number =
      match(MIXED, plain, at) ?? (isLength ? undefined : match(QUOTED_THOUSANDS, plain, at)) ?? match(NUMBER, plain, at)
    if (number === undefined) return undefined
    at += number.length
    const start = at
    while (at < plain.length && !/[\d]/.test(plain[at] ?? '') && !/^[.,]\d/.test(plain.slice(at, at + 2))) at++
    found.push({ number, unit: unitText(plain.slice(start, at)) })
  }
  return found
}

function match(pattern: RegExp, text: string, at: number): string | undefined {
  pattern.lastIndex = at
  return pattern.exec(text)?.[0]
}

/** The unit's spelling without full stops, joining words and the dash of 7'-6". */
function unitText(text: string): string {
  return text
    .replaceAll('.', '')
    .replace(/[()]/g, ' ')
    .replace(/ ?\/ ?/g, '/')
    .replace(/(?: and|[,;&-])? *$/, '')
    .replace(/ +/g, ' ')
    .trim()
}
