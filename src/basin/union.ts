/** The root of an element in a forest of parents, a root being its own parent; the way there is shortened. */
export function rootOf(parent: Int32Array, element: number): number {
  let root = element
  while (parent[root] !== root) root = parent[root]!
  for (let i = element; i !== root; ) {
    const up = parent[i]!
    parent[i] = root
    i = up
  }
  return root
}

/** Joins the trees of two elements; the lesser root stays. */
export function unite(parent: Int32Array, one: number, other: number): void {
  const a = rootOf(parent, one)
  const b = rootOf(parent, other)
  parent[Math.max(a, b)] = Math.min(a, b)
}
