import type { Origin } from '@ampwright/engine'

/** A quantity as typed and as understood. */
export type Quantity = {
  /** In the SI unit of its kind. */
  readonly value: number
  /** ± in SI: the half-width that should hold 19 times in 20, two standard uncertainties. */
  readonly half?: number
  /** The whole text as typed. */
  readonly text: string
  /** The unit as typed; empty for a bare number, `:1` and `1:` for pairs, `AWG` for gauges. */
  readonly unit: string
  readonly origin?: Origin
}

/** What is wrong with a text, for the person who typed it. */
export type Problem = {
  /** The part that could not be read. */
  readonly found: string
  /** What would be accepted. */
  readonly accepted: string
  /** What was probably meant. */
  readonly nearest?: string
  /** One sentence. */
  readonly why: string
}

/** A fault found while reading; `accepted` is left out where the units of the kind are the answer. */
export type Fault = {
  readonly ok: false
  readonly found: string
  readonly why: string
  readonly nearest?: string
  readonly accepted?: string
}
export const fault = (found: string, why: string, nearest?: string): Fault => ({
  ok: false,
  found,
  why,
  ...(nearest === undefined ? {} : { nearest }),
})
