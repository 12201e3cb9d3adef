/** Throws when the program itself is wrong. User-caused trouble is a `Problem` instead. */
export function invariant(condition: unknown, message: string): asserts condition {
  if (!condition) throw new Error(`Broken invariant: ${message}`)
}

/** Marks a branch that the types say cannot happen. */
export function never(value: never, message: string): never {
  throw new Error(`Broken invariant: ${message}: ${JSON.stringify(value)}`)
}
