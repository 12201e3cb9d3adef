/** A registry: rows by id, in order, frozen. A duplicate id is a broken invariant. */
export interface Table<Row extends { readonly id: string }> {
  readonly rows: readonly Row[]
  readonly get: (id: string) => Row | undefined
}

/** Freezes rows into a table that is looked up by `id`. */
export function table<const Row extends { readonly id: string }>(rows: readonly Row[]): Table<Row> {
  const byId = new Map<string, Row>()
  for (const row of rows) {
    if (byId.has(row.id)) throw new Error(`Broken invariant: the table has ${row.id} twice`)
    byId.set(row.id, Object.freeze(row))
  }
  return Object.freeze({ rows: Object.freeze([...rows]), get: (id: string) => byId.get(id) })
}
