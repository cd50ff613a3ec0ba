/** How a figure is known. A published one names its source. */
export type Mark = 'from memory' | 'common practice' | 'published'

/** One figure or word of a part, as text in the units the trade uses; ± is the half-width that should hold 19 times in 20. */
export type PartField = { readonly text: string; readonly mark: Mark; readonly source?: string }

/** A price band; `per` where it is not the price of one piece. */
export type PriceBand = {
  readonly low: number
  readonly high: number
  readonly currency: 'EUR'
  readonly when: string
  readonly per?: string
}

/** A part of a class, never of a maker. What stands under one revision never changes; better figures get the next revision. */
export type Part = {
  /** `class-name@revision`, for example `motor-pm-100kw@1`. */
  readonly id: string
  readonly class: string
  readonly label: string
  /** By the key of the conversion file, relative to the group the class fills. */
  readonly fields: Readonly<Record<string, PartField>>
  readonly price?: PriceBand
  readonly remark?: string
}

/** Which group of a conversion file the parts of a class fill. */
export type Fills = 'drive-unit' | 'motor' | 'inverter' | 'charger' | 'dc-dc' | 'module'

/** A class of parts with the ranges its members are met in: lowest, highest, unit. */
export type PartClass = {
  readonly class: string
  readonly label: string
  readonly fills?: Fills
  readonly ranges: Readonly<Record<string, readonly [low: number, high: number, unit: string]>>
  /** Fields that say what the class is, so that nothing is assumed in them: a single cell is one in series and one in parallel. */
  readonly defines?: readonly string[]
  /** Lowest and highest price of the class in €. */
  readonly prices?: readonly [low: number, high: number]
  readonly parts: readonly Part[]
}

export const fromMemory = (text: string): PartField => ({ text, mark: 'from memory' })
export const commonPractice = (text: string): PartField => ({ text, mark: 'common practice' })
export const published = (text: string, source: string): PartField => ({ text, mark: 'published', source })
/** What makes a record a single cell. */
export const SINGLE_CELL = ['cells-in-series', 'cells-in-parallel'] as const
