/** Remembers the last result for each key object; a changed document part is a new object, so nothing goes stale. */
export function memoByIdentity<Key extends object, Value>(compute: (key: Key) => Value): (key: Key) => Value {
  const known = new WeakMap<Key, { readonly value: Value }>()
  return (key) => {
    const hit = known.get(key)
    if (hit) return hit.value
    const value = compute(key)
    known.set(key, { value })
    return value
  }
}

/** The same with further arguments that are compared one by one; only the newest call per key is kept. */
export function memoLast<Key extends object, Rest extends readonly unknown[], Value>(
  compute: (key: Key, ...rest: Rest) => Value,
): (key: Key, ...rest: Rest) => Value {
  const known = new WeakMap<Key, { readonly rest: Rest; readonly value: Value }>()
  return (key, ...rest) => {
    const hit = known.get(key)
    if (hit && hit.rest.length === rest.length && hit.rest.every((item, i) => Object.is(item, rest[i])))
      return hit.value
    const value = compute(key, ...rest)
    known.set(key, { rest, value })
    return value
  }
}
