/** Numbers collected one by one into a typed array that doubles when full. */
export class Growing {
  length = 0
  #values = new Float64Array(64)

  push(value: number): void {
    if (this.length === this.#values.length) {
      const wider = new Float64Array(2 * this.length)
      wider.set(this.#values)
      this.#values = wider
    }
    this.#values[this.length++] = value
  }

  /** A copy of its own, exactly as long as what was collected. */
  values(): Float64Array {
    return this.#values.slice(0, this.length)
  }
}
