type Numbers = Int32Array | Uint32Array | Int8Array | Uint8Array | Float32Array | Float64Array

/**
 * An array of numbers that one job after the other works in, so that a pool dragged about makes little garbage. Whoever
 * asks has it to himself until he is asked for the next; what it holds is what the last one left.
 */
export class Room<T extends Numbers> {
  private array: T
  private readonly make: new (
    length: number,
  ) => T

  constructor(make: new (length: number) => T) {
    this.make = make
    this.array = new make(0)
  }

  /** The array, for at least so many numbers. */
  atLeast(count: number): T {
    if (this.array.length < count) this.array = new this.make(2 * count)
    return this.array
  }

  /** The same with its first numbers all alike. */
  filled(count: number, value: number): T {
    const array = this.atLeast(count)
    array.fill(value, 0, count)
    return array
  }

  /** The array with room for more, what it holds being kept. */
  grown(count: number): T {
    const old = this.array
    const array = this.atLeast(count)
    if (array !== old) array.set(old)
    return array
  }
}
