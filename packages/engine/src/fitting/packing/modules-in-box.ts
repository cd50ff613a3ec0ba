import { formula } from '../../working/formula.ts'

const length = (symbol: string, label: string) => ({ symbol, unit: 'm', label, shows: 'length' }) as const
const count = (symbol: string, label: string) => ({ symbol, unit: '1', label, shows: 'count' }) as const
const BOX = {
  length: length('ℓ', 'outer length of the box'),
  width: length('w', 'outer width of the box'),
  height: length('h', 'outer height of the box'),
  wall: length('t', 'thickness of the sheet'),
  plate: length('p', 'cooling plate under the modules'),
  lid: length('d', 'air between modules and lid'),
} as const
const MODULE = {
  along: length('a', 'side of a module along the box'),
  across: length('b', 'side of a module across the box'),
  up: length('c', 'side of a module that stands up'),
} as const
const STATICS = { work: 'statics', place: 'whole modules along each side' } as const
/** A hair: two modules of 0.152 m go into 0.304 m, although binary fractions say 1.9999. */
const HAIR = 1e-9
const TANK = { length: 0.37, width: 0.5, height: 0.25, wall: 0.003, plate: 0.008, lid: 0.015 } as const

/** Modules that go into a battery box when all stand the same way round. Room before a face that must be reached counts for each module, in its direction. */
export const modulesOneWay = formula(
  {
    id: 'modules-one-way',
    label: 'Modules in a box, all the same way round',
    gives: count('n', 'modules, all the same way round'),
    takes: {
      ...BOX,
      ends: length('e', 'busbars and plugs at an end'),
      sides: length('s', 'busbars and plugs along a side'),
      between: length('g', 'air between two modules'),
      ...MODULE,
      beforeAlong: length('f_a', 'free before a face, along'),
      beforeAcross: length('f_b', 'free before a face, across'),
      beforeUp: length('f_c', 'free before a face, above'),
    },
    text: [
      'n_ℓ = max(0, floor((ℓ − 2 · t − e − f_a + max(g, f_a)) / (a + max(g, f_a)) + 0.000000001))',
      'n_w = max(0, floor((w − 2 · t − s − f_b + max(g, f_b)) / (b + max(g, f_b)) + 0.000000001))',
      'n_h = max(0, floor((h − 2 · t − p − d − f_c + max(g, f_c)) / (c + max(g, f_c)) + 0.000000001))',
      'n = n_ℓ · n_w · n_h',
    ].join('\n'),
    source: STATICS,
    leavesOut: 'Modules that stand different ways round in one box, which may be more; corners, brackets and bends of cables.',
    proof: {
      examples: [
        {
          takes: {
            ...TANK,
            ends: 0,
            sides: 0.03,
            between: 0.002,
            along: 0.355,
            across: 0.152,
            up: 0.108,
            beforeAlong: 0,
            beforeAcross: 0,
            beforeUp: 0,
          },
          gives: 6,
          within: 0,
          source: {
            work: 'statics',
            place: 'worked by hand: 1 of 355 mm in 364, 3 of 152 mm with gaps in 464, 2 of 108 mm with a gap in 221 mm',
          },
        },
      ],
    },
  },
  x => {
    const along = (room: number, side: number, free: number): number => {
      const between = Math.max(x.between, free)
      return Math.max(0, Math.floor((room - free + between) / (side + between) + HAIR))
    }
    return (
      along(x.length - 2 * x.wall - x.ends, x.along, x.beforeAlong) *
      along(x.width - 2 * x.wall - x.sides, x.across, x.beforeAcross) *
      along(x.height - 2 * x.wall - x.plate - x.lid, x.up, x.beforeUp)
    )
  },
)

/** The number of modules no way of laying them can pass. */
export const modulesByVolume = formula(
  {
    id: 'modules-by-volume',
    label: 'Modules in a box, never more than',
    gives: count('n_max', 'modules, never more than'),
    takes: { ...BOX, ...MODULE },
    text: 'n_max = floor(max(0, ℓ − 2 · t) · max(0, w − 2 · t) · max(0, h − 2 · t − p − d) / (a · b · c) + 0.000000001)',
    source: { work: 'statics', place: 'volume of the inside over that of a module' },
    leavesOut: 'That modules are whole, gaps, busbars: fewer go in.',
    proof: {
      examples: [
        {
          takes: { ...TANK, along: 0.355, across: 0.152, up: 0.108 },
          gives: 6,
          within: 0,
          source: { work: 'statics', place: 'worked by hand: 39.74 l inside over 5.83 l each is 6.8' },
        },
        {
          takes: { ...TANK, wall: 0.3, along: 0.355, across: 0.152, up: 0.108 },
          gives: 0,
          within: 0,
          source: { work: 'statics', place: 'worked by hand: walls thicker than half of every side leave nothing' },
        },
      ],
    },
  },
  ({ length, width, height, wall, plate, lid, along, across, up }) =>
    Math.floor(
      (Math.max(0, length - 2 * wall) * Math.max(0, width - 2 * wall) * Math.max(0, height - 2 * wall - plate - lid)) /
        (along * across * up) +
        HAIR,
    ),
)
