/** A requirement of a rule set as a rule meets it. Replaced by the sets' own look-up; kept apart so that rules know no set. */
export type LookedUp = {
  readonly key: string
  readonly set: string
  /** True where the chosen set has no such key and the trade's own set stands in. */
  readonly fellBack: boolean
  readonly value: number | readonly [number, number] | string | true
  readonly unit: string
  readonly work: string
  readonly clause?: string
  readonly read: 'T' | 'S' | 'D' | 'Q' | 'from memory' | 'common practice'
}
