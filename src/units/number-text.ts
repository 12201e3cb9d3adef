export type NumberText =
  | { readonly value: number }
  | { readonly trouble: 'not-a-number' | 'divided-by-zero' | 'ambiguous-comma'; readonly detail: string }

/**
 * The number that a piece of text means: 7, 7.5, 7,5, 1 1/2, 18,640, 18 640, 1.234,5. One comma before three digits
 * parts thousands where a comma does so by custom, and is refused where it might as well be a decimal sign.
 */
export function readNumber(text: string, commaPartsThousands: boolean): NumberText {
  const fraction = /^(?:(\d+)[ -])?(\d+)\/(\d+)$/.exec(text)
  if (fraction) {
    const [, whole = '0', top = '', bottom = ''] = fraction
    if (Number(bottom) === 0) return { trouble: 'divided-by-zero', detail: '' }
    return finite(Number(whole) + Number(top) / Number(bottom))
  }
  const compact = text.replace(/[ ']/g, '')
  const commas = compact.split(',').length - 1
  const points = compact.split('.').length - 1
  if (commas > 0 && points > 0) {
    const decimal = compact.lastIndexOf(',') > compact.lastIndexOf('.') ? ',' : '.'
    return parted(compact, decimal === ',' ? '.' : ',', decimal)
  }
  if (commas > 1) return parted(compact, ',', '.')
  if (points > 1) return parted(compact, '.', ',')
  if (commas === 1 && /^[1-9]\d{0,2},\d{3}$/.test(compact)) {
    if (commaPartsThousands) return finite(Number(compact.replace(',', '')))
    return { trouble: 'ambiguous-comma', detail: `${compact.replace(',', '')} or ${compact.replace(',', '.')}` }
  }
  return finite(Number(compact.replace(',', '.')))
}

function parted(text: string, thousands: ',' | '.', decimal: ',' | '.'): NumberText {
  const [whole = '', ...rest] = text.split(decimal)
  const groups = whole.split(thousands)
  const isWellParted =
    rest.length <= 1 && /^\d{1,3}$/.test(groups[0] ?? '') && groups.slice(1).every((g) => /^\d{3}$/.test(g))
  if (!isWellParted) return { trouble: 'not-a-number', detail: '' }
  return finite(Number(`${groups.join('')}.${rest[0] ?? '0'}`))
}

function finite(value: number): NumberText {
  return Number.isFinite(value) ? { value } : { trouble: 'not-a-number', detail: '' }
}
