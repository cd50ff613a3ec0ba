import { type Part, parts } from '@ampwright/catalogue'

/** The parts a place takes: those of its classes, a family by the beginning of its name; a place without classes takes any. */
export const partsFor = (classes: readonly string[]): readonly Part[] =>
  classes.length === 0 ? parts : parts.filter(p => classes.some(c => p.id.startsWith(`${c}-`)))
