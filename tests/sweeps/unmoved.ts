/** Facts that may move without moving anything yet, each with its reason. Short: a fact nobody reads should leave the file. */
export const UNMOVED: readonly { at: RegExp; because: string }[] = []

/** Figures that no fact moves, each with its reason. */
export const UNMOVING: readonly { at: RegExp; because: string }[] = []
