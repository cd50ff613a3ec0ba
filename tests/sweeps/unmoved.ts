/** Facts that may move without moving anything yet, each with its reason. Short: a fact nobody reads should leave the file. */
export const UNMOVED: readonly { at: RegExp; because: string }[] = [
  { at: /^donor\.top-speed$/, because: 'compared only where the rule set limits a drop of top speed' },
  {
    at: /^fit\.packing\./,
    because: 'told to the search for an arrangement of the battery, which is started by hand and not part of an assessment',
  },
]

/** Figures that no fact moves, each with its reason. */
export const UNMOVING: readonly { at: RegExp; because: string }[] = [
  { at: /^range-at-speeds\.(speed|slope)@/, because: 'the steady speed and the level road are what the table is told for, in every file' },
  { at: /^stop\.prescribed\./, because: 'the longest stops the regulation accepts from 100 km/h are the same for every car' },
  { at: /^vacuum\.air@at the sea$/, because: 'the air at the sea is that of the standard atmosphere, in every file' },
]
