import { formula } from '../working/formula.ts'

const STATICS = { work: 'statics', place: 'moments about the front axle and about the centre line' } as const
const mass = (symbol: string, label: string) => ({ symbol, unit: 'kg', label }) as const
const masses = (symbol: string, label: string) => ({ symbol, unit: 'kg', label, many: true }) as const
const places = (symbol: string, label: string) => ({ symbol, unit: 'm', label, many: true, shows: 'length' }) as const
const length = (symbol: string, label: string) => ({ symbol, unit: 'm', label, shows: 'length' }) as const
const hand = (place: string) => ({ work: 'statics', place: `worked by hand: ${place}` }) as const
const LEAVES_OUT =
  'A stiff body passes part of the weight of one corner to the opposite axle, as its springs and anti-roll bars are; weighed wheel by wheel, the finished car tells.'

const changes = {
  before: mass('m_0', 'wheel as weighed'),
  added: masses('m_a', 'added'),
  addedX: places('x_a', 'added, behind the front axle'),
  addedY: places('y_a', 'added, to the right of the centre line'),
  removed: masses('m_o', 'taken out'),
  removedX: places('x_o', 'taken out, behind the front axle'),
  removedY: places('y_o', 'taken out, to the right of the centre line'),
  wheelbase: length('L', 'wheelbase'),
  track: length('T', 'track of this axle'),
} as const

type Changes = {
  readonly before: number
  readonly added: readonly number[]
  readonly addedX: readonly number[]
  readonly addedY: readonly number[]
  readonly removed: readonly number[]
  readonly removedX: readonly number[]
  readonly removedY: readonly number[]
  readonly wheelbase: number
  readonly track: number
}
/** Adds up what each thing puts on a right wheel; `axle` tells the share of the axle from x over the wheelbase. */
function rightWheel(c: Changes, axle: (share: number) => number): number {
  const on = (m: number, x: number, y: number): number => m * axle(x / c.wheelbase) * (0.5 + y / c.track)
  let wheel = c.before
  c.added.forEach((m, i) => {
    wheel += on(m, c.addedX[i] as number, c.addedY[i] as number)
  })
  c.removed.forEach((m, i) => {
    wheel -= on(m, c.removedX[i] as number, c.removedY[i] as number)
  })
  return wheel
}

/** Mass on the right front wheel after the changes. */
export const rightFrontWheel = formula(
  {
    id: 'right-front-wheel',
    label: 'Right front wheel by ledger',
    gives: mass('m_FR', 'right front wheel'),
    takes: changes,
    text: 'm_FR = m_0 + Σ m_a · (1 − x_a / L) · (1 / 2 + y_a / T) − Σ m_o · (1 − x_o / L) · (1 / 2 + y_o / T)',
    source: STATICS,
    leavesOut: LEAVES_OUT,
    proof: {
      examples: [
        {
          takes: {
            before: 246,
            added: [100],
            addedX: [0],
            addedY: [0.35],
            removed: [128],
            removedX: [0],
            removedY: [0],
            wheelbase: 2.31,
            track: 1.4,
          },
          gives: 246 + 75 - 64,
          within: 1e-9,
          source: hand(
            '100 kg over the front axle a quarter of the track to the right: three quarters of it; 128 kg out of the middle: half',
          ),
        },
      ],
    },
  },
  c => rightWheel(c, share => 1 - share),
)

/** Mass on the right rear wheel after the changes. */
export const rightRearWheel = formula(
  {
    id: 'right-rear-wheel',
    label: 'Right rear wheel by ledger',
    gives: mass('m_RR', 'right rear wheel'),
    takes: changes,
    text: 'm_RR = m_0 + (Σ m_a · x_a · (1 / 2 + y_a / T) − Σ m_o · x_o · (1 / 2 + y_o / T)) / L',
    source: STATICS,
    leavesOut: LEAVES_OUT,
    proof: {
      examples: [
        {
          takes: {
            before: 233,
            added: [80],
            addedX: [2.31],
            addedY: [-0.35],
            removed: [40],
            removedX: [1.155],
            removedY: [0],
            wheelbase: 2.31,
            track: 1.4,
          },
          gives: 233 + 20 - 10,
          within: 1e-9,
          source: hand('80 kg over the rear axle a quarter of the track to the left: a quarter of it; 40 kg from half way: a quarter'),
        },
      ],
    },
  },
  c => rightWheel(c, share => share),
)

/** How far the changes alone move the centre of mass to the right. */
export const centreShiftsSideways = formula(
  {
    id: 'centre-shifts-sideways',
    label: 'Centre of mass goes to the right by',
    gives: length('Δy', 'centre of mass goes to the right by'),
    takes: {
      added: changes.added,
      addedY: changes.addedY,
      removed: changes.removed,
      removedY: changes.removedY,
      total: mass('m', 'finished car'),
    },
    text: 'Δy = (Σ m_a · y_a − Σ m_o · y_o) / m',
    source: STATICS,
    leavesOut: 'A donor car that stood on its centre line; weighed wheel by wheel, its own part is known as well.',
    proof: {
      examples: [
        {
          takes: { added: [100, 50], addedY: [0.3, -0.2], removed: [40], removedY: [0.1], total: 1000 },
          gives: 0.016,
          within: 1e-12,
          source: hand('100 kg 0.3 m right and 50 kg 0.2 m left in, 40 kg 0.1 m right out of 1000 kg'),
        },
      ],
    },
  },
  ({ added, addedY, removed, removedY, total }) => {
    let moment = 0
    added.forEach((m, i) => {
      moment += m * (addedY[i] as number)
    })
    removed.forEach((m, i) => {
      moment -= m * (removedY[i] as number)
    })
    return moment / total
  },
)

/** How far the centre of mass may move along the car while parts come out and go in, whatever the order. */
export const centreInAnyOrder = formula(
  {
    id: 'centre-in-any-order',
    label: 'Centre of mass in the worst order of work',
    gives: {
      foremost: length('x_g1', 'foremost it can come, behind the front axle'),
      rearmost: length('x_g2', 'rearmost it can come, behind the front axle'),
      foremostMass: mass('m_1', 'car then'),
      rearmostMass: mass('m_2', 'car then'),
    },
    takes: {
      front: mass('m_F0', 'front axle as weighed'),
      rear: mass('m_R0', 'rear axle as weighed'),
      wheelbase: length('L', 'wheelbase'),
      added: changes.added,
      addedX: changes.addedX,
      removed: changes.removed,
      removedX: changes.removedX,
    },
    text: 'of all the cars in which some parts are out already and some are in already, the one with its centre of mass furthest forward, and the one furthest to the rear; a part counts where it moves the centre that way',
    words: 'which parts count hangs on the centre that comes of them',
    source: STATICS,
    leavesOut:
      'Whether that order is one somebody would work in. A part that cannot go in before another is out is let go in all the same: the bound is on the safe side.',
    proof: {
      examples: [
        {
          takes: { front: 500, rear: 500, wheelbase: 2, added: [100], addedX: [2], removed: [100], removedX: [0] },
          gives: { foremost: 1, rearmost: 1.2, foremostMass: 1000, rearmostMass: 1000 },
          within: 1e-9,
          source: hand('100 kg off the front axle and 100 kg onto the rear one: 1200 over 1000; as weighed it is 1.0'),
        },
        {
          takes: { front: 500, rear: 500, wheelbase: 2, added: [100], addedX: [0], removed: [100], removedX: [0] },
          gives: { foremost: 1000 / 1100, rearmost: 1000 / 900, foremostMass: 1100, rearmostMass: 900 },
          within: 1e-9,
          source: hand('new part in before the old one is out, or the old one out first'),
        },
      ],
    },
  },
  x => {
    const fore = extreme(x, -1),
      back = extreme(x, 1)
    return { foremost: fore.centre, rearmost: back.centre, foremostMass: fore.mass, rearmostMass: back.mass }
  },
)

type Steps = Parameters<typeof centreInAnyOrder>[0]
/** Adding a part at x moves the centre towards x, taking it out moves it away: repeated until no part changes its mind, which it does once at most. */
function extreme(c: Steps, way: 1 | -1): { readonly centre: number; readonly mass: number } {
  let centre = (c.rear * c.wheelbase) / (c.front + c.rear),
    mass = c.front + c.rear
  for (let round = 0; round <= c.added.length + c.removed.length; round++) {
    let m = c.front + c.rear,
      moment = c.rear * c.wheelbase
    for (const [i, a] of c.added.entries())
      if (((c.addedX[i] as number) - centre) * way > 0) {
        m += a
        moment += a * (c.addedX[i] as number)
      }
    for (const [i, o] of c.removed.entries())
      if (((c.removedX[i] as number) - centre) * way < 0) {
        m -= o
        moment -= o * (c.removedX[i] as number)
      }
    const next = moment / m
    if (next === centre) break
    centre = next
    mass = m
  }
  return { centre, mass }
}

/** What an axle carries more than before. */
export const massGained = formula(
  {
    id: 'mass-gained',
    label: 'More on an axle than before',
    gives: mass('Δm', 'more than before'),
    takes: { now: mass('m_1', 'now'), before: mass('m_0', 'before') },
    text: 'Δm = m_1 − m_0',
    source: { work: 'definition', place: 'difference' },
    proof: { none: 'definition' },
  },
  ({ now, before }) => now - before,
)

/** Sprung mass on one wheel of an axle that stands even. */
export const sprungOnWheel = formula(
  {
    id: 'sprung-on-wheel',
    label: 'Sprung mass on a wheel',
    gives: mass('m_s', 'sprung mass on the wheel'),
    takes: { axle: mass('m_ax', 'axle'), unsprung: mass('m_u', 'unsprung mass at the wheel') },
    text: 'm_s = m_ax / 2 − m_u',
    source: { work: 'statics', place: 'half an axle, less what does not hang on its springs' },
    proof: { none: 'definition' },
  },
  ({ axle, unsprung }) => axle / 2 - unsprung,
)

/** How far a share is from even. */
export const shareFromEven = formula(
  {
    id: 'share-from-even',
    label: 'Off even',
    gives: { symbol: 'Δs', unit: '1', shows: 'share' },
    takes: { share: { symbol: 's', unit: '1', label: 'share of one side', shows: 'share' } },
    text: 'Δs = abs(s − 1 / 2)',
    source: { work: 'definition', place: 'difference from one half' },
    proof: { none: 'definition' },
  },
  ({ share }) => Math.abs(share - 0.5),
)
