import type { Key, Variant } from './keys.ts'
import type { WorkId } from './works.ts'

/**
 * How a row is used. `max`, `min`, `range` compare a figure, ends included. `must` and `must-not` are answered yes or no.
 * `trigger`: from here on a further approval starts. `who`: who does or signs it. `paper`: a document that has to exist.
 * `list`: items to look at or to write down. `fact`: needed to choose or to word something, nothing to compare.
 */
export type Test = 'max' | 'min' | 'range' | 'must' | 'must-not' | 'trigger' | 'who' | 'paper' | 'list' | 'fact'

/**
 * How the row was read. T: this clause of the official text. S: a page, guide or letter of the authority. D: digest or scan of the
 * official text. Q: quoted by others. The weakest of several readings is the mark of the row.
 */
export type Reading = 'T' | 'S' | 'D' | 'Q' | 'from memory' | 'common practice'

/** A figure, a band (both ends included), a formula or text in words, a list of items, or plain yes. */
export type Value = number | readonly [low: number, high: number] | string | readonly string[] | true

/** Limits a row names instead of numbering. The comparisons put the figure of the car in their place. */
export const NAMED = {
  makerGross: 'gross rating of the maker',
  makerAxles: 'axle ratings of the maker',
  moreSeats: 'more seats than registered',
  speedometerOverRead: '0.1·v + 6',
} as const

/** One row of a rule set: what one jurisdiction says to one key. */
export type Requirement = {
  readonly key: Key
  readonly variant?: Variant
  readonly test: Test
  readonly value: Value
  /** Unit as the text gives it; `1` for a ratio, empty where there is nothing to measure. */
  readonly unit: string
  /** Cars or case the row is for; without it, every car of the set. */
  readonly for?: string
  readonly work: WorkId
  /** Further works the row rests on, or the documents it was read in where the work itself was not open. */
  readonly via?: readonly WorkId[]
  readonly clause?: string
  /** Date of the text as read, not of its birth; the edition where no date is known. */
  readonly date?: string
  readonly read: Reading
  readonly remark?: string
  /** Set where every item of a list starts an approval by itself. */
  readonly eachTriggers?: true
}

export type SetId =
  | 'un'
  | 'de'
  | 'fr'
  | 'be'
  | 'it'
  | 'es'
  | 'nl'
  | 'ch'
  | 'gb'
  | 'ie'
  | 'au'
  | 'nz'
  | 'us'
  | 'ca'
  | 'ca-qc'
  | 'jp'
  | 'in'
  | 'za'
  | 'practice'

/** What one jurisdiction asks of a converted car. It informs; only the authority and the person who signs approve. */
export type RuleSet = {
  readonly id: SetId
  readonly name: string
  /** Set that holds where this one is silent. */
  readonly base?: SetId
  /** Case in which alone the base holds; without it, always. */
  readonly baseOnly?: string
  readonly note?: string
  readonly rows: readonly Requirement[]
}

type Source = Pick<Requirement, 'work' | 'read'> & Partial<Pick<Requirement, 'via' | 'clause' | 'date'>>
type Rest = Partial<Omit<Requirement, 'key' | 'variant' | 'test' | 'value' | 'unit'>>

/**
 * Writer of rows that share a source, so that a file of rows reads like the table it is. What a row names itself goes first.
 * A key may carry its variant: `power.ratio@le60kw`.
 */
export const rowsFrom =
  (source: Source) =>
  (name: Key | `${Key}@${Variant}`, test: Test, value: Value, unit: string, rest: Rest = {}): Requirement => {
    const [key, variant] = name.split('@') as [Key, Variant?]
    return { key, ...(variant === undefined ? {} : { variant }), test, value, unit, ...source, ...rest }
  }
