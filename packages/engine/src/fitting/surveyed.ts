import { formula } from '../working/formula.ts'

const GEOMETRY = {
  work: 'definition',
  place: 'a distance between two things changes as far as one is moved along the line between them',
} as const
const place = (symbol: string, label: string) => ({ symbol, unit: 'm', label, shows: 'length', many: true }) as const

/**
 * Gap from a body to a scanned surface: as surveyed where the body stood then, and moved along the nearest line by as much as it stands elsewhere now.
 *
 * Exact where it was surveyed, which is the only place it is told for; the rest says how its spread follows from that of the body's place.
 */
export const surveyedGap = formula(
  {
    id: 'surveyed-gap',
    label: 'Gap to a scanned surface',
    gives: { symbol: 'd', unit: 'm', label: 'gap', shows: 'length' },
    takes: {
      surveyed: { symbol: 's', unit: 'm', label: 'gap as surveyed', shows: 'length' },
      away: { symbol: 'n', unit: '1', label: 'direction from the scan to the body along the nearest line: x, y, z', many: true },
      now: place('p', 'middle of the body: x, y, z'),
      before: place('p_0', 'where its middle was when surveyed: x, y, z'),
    },
    text: 'd = s + Σ (n · (p − p_0))',
    source: GEOMETRY,
    leavesOut: 'How far the scan itself is off, but for what its points left over. Turns of the body: they are surveyed anew.',
    proof: { none: 'definition' },
  },
  ({ surveyed, away, now, before }) => surveyed + away.reduce((sum, n, i) => sum + n * ((now[i] as number) - (before[i] as number)), 0),
)

/** Free space of a scan: cubes that no triangle touches. */
export const surveyedSpace = formula(
  {
    id: 'surveyed-space',
    label: 'Free space of a scan',
    gives: { symbol: 'V', unit: 'm³', label: 'free space', shows: 'volume' },
    takes: {
      cubes: { symbol: 'N', unit: '1', label: 'free cubes', shows: 'count' },
      edge: { symbol: 'a', unit: 'm', label: 'edge of a cube', shows: 'length' },
    },
    text: 'V = N · a^3',
    source: { work: 'definition', place: 'cubes of one size, counted' },
    leavesOut: 'Cubes that a triangle touches: the true space is larger, the less so the smaller the cubes.',
    proof: { none: 'definition' },
  },
  ({ cubes, edge }) => cubes * edge ** 3,
)

/** Air between two shapes by their meshes: as surveyed where they stood then, moved along the nearest line by as much as they stand elsewhere now. */
export const surveyedAir = formula(
  {
    id: 'surveyed-air',
    label: 'Air between two shapes by their meshes',
    gives: { symbol: 'd', unit: 'm', label: 'apart; 0 where they run into each other', shows: 'length' },
    takes: {
      surveyed: { symbol: 's', unit: 'm', label: 'gap as surveyed', shows: 'length' },
      away: { symbol: 'n', unit: '1', label: 'direction from the first to the second along the nearest line: x, y, z', many: true },
      now1: place('p_1', 'middle of the first: x, y, z'),
      before1: place('p_10', 'where its middle was when surveyed: x, y, z'),
      now2: place('p_2', 'middle of the second: x, y, z'),
      before2: place('p_20', 'where its middle was when surveyed: x, y, z'),
    },
    text: 'd = s + Σ (n · ((p_2 − p_20) − (p_1 − p_10)))',
    source: GEOMETRY,
    leavesOut: 'How far a mesh is off its part. Turns: they are surveyed anew.',
    proof: { none: 'definition' },
  },
  ({ surveyed, away, now1, before1, now2, before2 }) => {
    const moved = (now: readonly number[], before: readonly number[], i: number): number => (now[i] as number) - (before[i] as number)
    return surveyed + away.reduce((sum, n, i) => sum + n * (moved(now2, before2, i) - moved(now1, before1, i)), 0)
  },
)

const side = (symbol: string, label: string) => ({ symbol, unit: 'm', label, shows: 'length' }) as const

/** How far the extent of a mesh is off the sides its shape states. */
export const meshOffSides = formula(
  {
    id: 'mesh-off-sides',
    label: 'Mesh against the sides stated',
    gives: { symbol: 'Δ', unit: 'm', label: 'most that a side of the mesh is off', shows: 'length' },
    takes: {
      along: side('e_1', 'extent of the mesh along'),
      across: side('e_2', 'extent of the mesh across'),
      up: side('e_3', 'extent of the mesh up'),
      length: side('s_1', 'length as stated'),
      width: side('s_2', 'width as stated'),
      height: side('s_3', 'height as stated'),
    },
    text: 'Δ = max(abs(e_1 − s_1), abs(e_2 − s_2), abs(e_3 − s_3))',
    source: { work: 'definition', place: 'the largest of three differences' },
    proof: {
      examples: [
        {
          takes: { along: 0.32, across: 0.27, up: 0.281, length: 0.325, width: 0.27, height: 0.27 },
          gives: 0.011,
          within: 1e-12,
          source: { work: 'definition', place: 'worked by hand: 5, 0 and 11 mm' },
        },
      ],
    },
  },
  ({ along, across, up, length, width, height }) => Math.max(Math.abs(along - length), Math.abs(across - width), Math.abs(up - height)),
)
