import { invariant } from '../../base/index.ts'

/** Red, green, blue as the screen shows them, 0 to 1. */
export type Rgb = readonly [red: number, green: number, blue: number]

/** The tokens of the theme that the solid is painted with. */
export interface Tones {
  readonly paper: Rgb
  readonly page: Rgb
  readonly ink: Rgb
  readonly rule: Rgb
  readonly waterInk: Rgb
  /** Pale to deep. */
  readonly depth: readonly Rgb[]
}

const HEX = /^#([0-9a-f]{3}|[0-9a-f]{6})$/i
const FUNCTION = /^rgba?\(\s*([\d.]+)[\s,]+([\d.]+)[\s,]+([\d.]+)/i

/** A colour as the style sheet writes it (#rgb, #rrggbb, rgb(…)); undefined for any other form. */
export function parseColour(text: string): Rgb | undefined {
  const trimmed = text.trim()
  const hex = HEX.exec(trimmed)?.[1]
  if (hex) {
    const wide = hex.length === 3 ? [...hex].map((digit) => digit + digit).join('') : hex
    const value = Number.parseInt(wide, 16)
    return [((value >> 16) & 255) / 255, ((value >> 8) & 255) / 255, (value & 255) / 255]
  }
  const parts = FUNCTION.exec(trimmed)
  return parts ? [Number(parts[1]) / 255, Number(parts[2]) / 255, Number(parts[3]) / 255] : undefined
}

/** Reads the tokens through a look-up by name, so that every theme works without a second table of colours. */
export function tonesFrom(lookUp: (token: string) => string): Tones {
  const tone = (token: string): Rgb => {
    const rgb = parseColour(lookUp(token))
    invariant(rgb, `the theme gives ${token} as a plain colour`)
    return rgb
  }
  return {
    paper: tone('--paper'),
    page: tone('--page'),
    ink: tone('--ink'),
    rule: tone('--rule'),
    waterInk: tone('--water-ink'),
    depth: [0, 1, 2, 3, 4, 5, 6].map((step) => tone(`--depth-${step}`)),
  }
}

export function mixed(a: Rgb, b: Rgb, share: number): Rgb {
  return [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share, a[2] + (b[2] - a[2]) * share]
}

export function isDark(tone: Rgb): boolean {
  return 0.2126 * tone[0] + 0.7152 * tone[1] + 0.0722 * tone[2] < 0.4
}
