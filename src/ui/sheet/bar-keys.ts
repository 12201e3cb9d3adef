/** Which way an arrow across a bar of tools goes along it: −1 back, 1 on, 0 for any other key. */
export function stepAcross(key: string, isColumn: boolean): -1 | 0 | 1 {
  const [back, on] = isColumn ? ['ArrowLeft', 'ArrowRight'] : ['ArrowUp', 'ArrowDown']
  return key === back ? -1 : key === on ? 1 : 0
}
