/** An object that keeps what was found out about it. */
export interface Remembering {
  readonly memory: unknown[]
}

let kinds = 0

/**
 * One kind of thing that is found out once for each owner and kept with it. A WeakMap would do as much, but what hangs on
 * it outlives the next collection of garbage, which makes a fifth of the time of a pool from nothing.
 */
export class Memory<Owner extends Remembering, Found> {
  private readonly kind = kinds++

  get(owner: Owner): Found | undefined {
    return owner.memory[this.kind] as Found | undefined
  }

  set(owner: Owner, found: Found): void {
    owner.memory[this.kind] = found
  }
}
