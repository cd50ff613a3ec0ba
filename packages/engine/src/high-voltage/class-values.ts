import type { Source } from '../sources.ts'
import { usualDiameters } from './conductor-sizes.ts'
import { practice } from './conductor-symbols.ts'

/** Share by which jackets of usual cable of one section differ (common practice). */
const DIFFER = 0.05

/** Diameter over the jacket [m] where nobody measured it: that of usual cable of the section [m²]; undefined where no habit is known. */
export function classJacket(
  m2: number | undefined,
): { readonly value: number; readonly half: number; readonly note: string; readonly source: Source } | undefined {
  const usual = m2 === undefined ? undefined : usualDiameters(m2)?.outside.value
  return usual === undefined
    ? undefined
    : { value: usual, half: DIFFER * usual, note: 'usual cable of the section', source: practice('usual high-voltage cable') }
}
