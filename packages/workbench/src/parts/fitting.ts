import { type Part, parts } from '@ampwright/catalogue'

/**
 * The parts a place takes, class by class as the place names them: a class there is a family, by the beginning of the names of its parts. A place
 * without classes takes any.
 */
export const partsFor = (classes: readonly string[]): readonly Part[] =>
  classes.length === 0 ? parts : [...new Set(classes.flatMap(c => parts.filter(p => p.id.startsWith(`${c}-`))))]
