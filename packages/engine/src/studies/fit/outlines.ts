import type { Space } from '../../model/fit.ts'

/** Corners of the walls of a space in the order of their names, `c2` before `c10`: the order of the file says nothing. */
export const cornersOf = ({ outline }: Space): readonly (readonly [string, Space['outline'][string]])[] =>
  Object.entries(outline).sort(([a], [b]) => numberIn(a) - numberIn(b) || (a < b ? -1 : 1))

/** The number a name ends in; names without one come first. */
const numberIn = (name: string): number => Number(/\d+$/.exec(name)?.[0] ?? -1)
