import { formula } from '../../working/formula.ts'

const length = (symbol: string, label: string) => ({ symbol, unit: 'm', label, shows: 'length' }) as const
const count = (symbol: string, label: string) => ({ symbol, unit: '1', label, shows: 'count' }) as const
const STATICS = { work: 'statics', place: 'whole modules along each side' } as const
/** A hair: two modules of 0.152 m go into 0.304 m, although binary fractions say 1.9999. */
const HAIR = 1e-9

/** Room for modules along one side of a battery box. */
export const insideOfBox = formula(
  {
    id: 'inside-of-box',
    label: 'Room for modules along one side of a box',
    gives: length('c', 'inside'),
    takes: {
      outer: length('ℓ', 'outer side of the box'),
      wall: length('t', 'thickness of the sheet'),
      low: length('k_1', 'kept at one end'),
      high: length('k_2', 'kept at the other'),
    },
    text: 'c = ℓ − 2 · t − k_1 − k_2',
    source: STATICS,
    proof: { none: 'definition' },
  },
  ({ outer, wall, low, high }) => outer - 2 * wall - low - high,
)

/** How many go along a length, room before a face that must be reached counted for each. */
const along = (room: number, side: number, between: number, before: number): number => {
  const pitch = Math.max(between, before)
  return Math.max(0, Math.floor((room - before + pitch) / (side + pitch) + HAIR))
}

const INTO = 'into the box from the end with the other form'
/** Modules that go into a battery box beside others of another form: those in whole slices at one end, each form the same way round. */
export const modulesBesideOthers = formula(
  {
    id: 'modules-beside-others',
    label: 'Modules in a box beside those of the other form',
    gives: count('n', 'modules beside those of the other form'),
    takes: {
      depth: length('c_0', `inside, ${INTO}`),
      first: length('c_1', 'inside, one way across'),
      second: length('c_2', 'inside, the other way across'),
      between: length('g', 'air between two modules'),
      others: count('n_o', 'modules of the other form'),
      otherDepth: length('b_0', 'side of one of the other form, into the box'),
      otherFirst: length('b_1', 'one way across'),
      otherSecond: length('b_2', 'the other way across'),
      otherBeforeDepth: length('e_0', 'free before its face, into the box'),
      otherBeforeFirst: length('e_1', 'one way across'),
      otherBeforeSecond: length('e_2', 'the other way across'),
      sideDepth: length('a_0', 'side of a module into the box'),
      sideFirst: length('a_1', 'one way across'),
      sideSecond: length('a_2', 'the other way across'),
      beforeDepth: length('f_0', 'free before its face, into the box'),
      beforeFirst: length('f_1', 'one way across'),
      beforeSecond: length('f_2', 'the other way across'),
    },
    text: [
      'm_1 = max(0, floor((c_1 − e_1 + max(g, e_1)) / (b_1 + max(g, e_1)) + 0.000000001))',
      'm_2 = max(0, floor((c_2 − e_2 + max(g, e_2)) / (b_2 + max(g, e_2)) + 0.000000001))',
      'd = ceil(n_o / max(1, m_1 · m_2)) · (b_0 + max(g, e_0))',
      'n_0 = max(0, floor((c_0 − d − f_0 + max(g, f_0)) / (a_0 + max(g, f_0)) + 0.000000001))',
      'n_1 = max(0, floor((c_1 − f_1 + max(g, f_1)) / (a_1 + max(g, f_1)) + 0.000000001))',
      'n_2 = max(0, floor((c_2 − f_2 + max(g, f_2)) / (a_2 + max(g, f_2)) + 0.000000001))',
      'n = n_0 · n_1 · n_2',
    ].join('\n'),
    source: STATICS,
    leavesOut: 'Modules that stand different ways round or between each other, which may be more; whether the other form goes in at all.',
    proof: {
      examples: [
        {
          takes: {
            depth: 1.215,
            first: 0.155,
            second: 0.229,
            between: 0.002,
            others: 2,
            otherDepth: 0.75,
            otherFirst: 0.152,
            otherSecond: 0.108,
            otherBeforeDepth: 0,
            otherBeforeFirst: 0,
            otherBeforeSecond: 0,
            sideDepth: 0.39,
            sideFirst: 0.152,
            sideSecond: 0.108,
            beforeDepth: 0,
            beforeFirst: 0,
            beforeSecond: 0,
          },
          gives: 2,
          within: 0,
          source: { work: 'statics', place: 'worked by hand: two long ones on each other take 752 mm, 463 mm are left for two short ones' },
        },
      ],
    },
  },
  x => {
    const slice =
        along(x.first, x.otherFirst, x.between, x.otherBeforeFirst) * along(x.second, x.otherSecond, x.between, x.otherBeforeSecond),
      slab = Math.ceil(x.others / Math.max(1, slice)) * (x.otherDepth + Math.max(x.between, x.otherBeforeDepth))
    return (
      along(x.depth - slab, x.sideDepth, x.between, x.beforeDepth) *
      along(x.first, x.sideFirst, x.between, x.beforeFirst) *
      along(x.second, x.sideSecond, x.between, x.beforeSecond)
    )
  },
)

/** The number of modules no way of laying them can pass beside so many of another form. */
export const modulesByVolumeBesideOthers = formula(
  {
    id: 'modules-by-volume-beside-others',
    label: 'Modules in a box beside those of the other form, never more than',
    gives: count('n_max', 'modules, never more than'),
    takes: {
      along: length('c_ℓ', 'inside, along, nothing kept for busbars'),
      across: length('c_w', 'inside, across'),
      up: length('c_h', 'inside, upwards'),
      length: length('a', 'length of a module'),
      width: length('b', 'width'),
      height: length('c', 'height'),
      others: count('n_o', 'modules of the other form'),
      otherLength: length('a_o', 'length, other form'),
      otherWidth: length('b_o', 'width, other form'),
      otherHeight: length('c_o', 'height, other form'),
    },
    text: 'n_max = max(0, floor((max(0, c_ℓ) · max(0, c_w) · max(0, c_h) − n_o · a_o · b_o · c_o) / (a · b · c) + 0.000000001))',
    source: { work: 'statics', place: 'volume of the inside over that of a module' },
    leavesOut: 'That modules are whole, gaps, busbars: fewer go in.',
    proof: {
      examples: [
        {
          takes: {
            along: 2,
            across: 1,
            up: 1,
            length: 0.5,
            width: 1,
            height: 1,
            others: 1,
            otherLength: 0.75,
            otherWidth: 1,
            otherHeight: 1,
          },
          gives: 2,
          within: 0,
          source: { work: 'statics', place: 'worked by hand: 1.25 m³ are left for 0.5 m³ each' },
        },
      ],
    },
  },
  x =>
    Math.max(
      0,
      Math.floor(
        (Math.max(0, x.along) * Math.max(0, x.across) * Math.max(0, x.up) - x.others * x.otherLength * x.otherWidth * x.otherHeight) /
          (x.length * x.width * x.height) +
          HAIR,
      ),
    ),
)
