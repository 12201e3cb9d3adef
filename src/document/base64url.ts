const ALPHABET = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_'

/** RFC 4648 §5, without padding. */
export function toBase64Url(bytes: Uint8Array): string {
  const parts: string[] = []
  for (let i = 0; i < bytes.length; i += 3) {
    const [a = 0, b, c] = bytes.subarray(i, i + 3)
    parts.push(ALPHABET[a >> 2] ?? '', ALPHABET[((a & 3) << 4) | ((b ?? 0) >> 4)] ?? '')
    if (b !== undefined) parts.push(ALPHABET[((b & 15) << 2) | ((c ?? 0) >> 6)] ?? '')
    if (c !== undefined) parts.push(ALPHABET[c & 63] ?? '')
  }
  return parts.join('')
}

/** The bytes; undefined where the text isn't in this alphabet, or has bits left over. */
export function fromBase64Url(text: string): Uint8Array | undefined {
  if (text.length % 4 === 1) return undefined
  const bytes = new Uint8Array(Math.floor((text.length * 3) / 4))
  let bits = 0
  let held = 0
  let at = 0
  for (const character of text) {
    const value = ALPHABET.indexOf(character)
    if (value < 0) return undefined
    held = (held << 6) | value
    bits += 6
    if (bits >= 8) {
      bits -= 8
      bytes[at++] = (held >> bits) & 255
      held &= (1 << bits) - 1
    }
  }
  return held === 0 ? bytes : undefined
}
