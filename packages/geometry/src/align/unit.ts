import type { AlignedBox } from '@ampwright/engine'

/** Units a mesh file may be in, m for one. */
export const FILE_UNITS = { mm: 0.001, cm: 0.01, in: 0.0254, ft: 0.3048, m: 1 } as const
export type FileUnit = keyof typeof FILE_UNITS
export const fileUnits = Object.keys(FILE_UNITS) as readonly FileUnit[]

/** What of a car one scans: a bracket at the least, the whole of a long car at the most. (common practice) */
const [SMALLEST, LARGEST] = [0.3, 7]
/** A scale this near to that of a unit is that unit. Distances of half a metre taken with a tape are good to better than this. (common practice) */
const SAME = 0.03

/** The units in which a mesh would be as large as a space of a car or a car, the likeliest first: the one that makes it nearest to an engine bay, 1.2 m. */
export function unitsBySize({ low, high }: AlignedBox): readonly FileUnit[] {
  const longest = Math.max(high[0] - low[0], high[1] - low[1], high[2] - low[2]),
    off = (unit: FileUnit): number => Math.abs(Math.log((longest * FILE_UNITS[unit]) / 1.2))
  return fileUnits
    .filter(unit => longest * FILE_UNITS[unit] >= SMALLEST && longest * FILE_UNITS[unit] <= LARGEST)
    .sort((a, b) => off(a) - off(b))
}

/** The unit whose length a scale [m] is, to three in a hundred; undefined where it is that of none. */
export const unitOfScale = (scale: number): FileUnit | undefined => fileUnits.find(unit => Math.abs(scale / FILE_UNITS[unit] - 1) <= SAME)
