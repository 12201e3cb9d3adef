/** Joins class names, leaving out those that are absent or switched off. */
export function classes(...names: readonly (string | false | undefined)[]): string {
  return names.filter(Boolean).join(' ')
}
