import { formula } from '../working/formula.ts'
import { GRAVITY } from './gravity.ts'

const BOOK = { work: 'mannering-washburn', place: 'ch. 2, maximum tractive effort', mark: 'from memory' } as const
const EXAMPLE = {
  work: 'mannering-washburn',
  place: 'example 2.3: 2500 lb, wheelbase 120 in, centre 22 in high and 40 in behind the front axle, grip 0.6, rolling 0.01',
  mark: 'from memory',
} as const
const GILLESPIE = { work: 'gillespie', place: 'ch. 2, traction-limited acceleration', mark: 'from memory' } as const
const MU = { symbol: 'μ', unit: '1', label: 'grip', shows: 'ratio', holds: [0.05, 1.3] } as const
const LENGTH = (symbol: string, label: string) => ({ symbol, unit: 'm', label, shows: 'length' }) as const
const LB = 0.45359237,
  LBF = LB * 9.80665,
  INCH = 0.0254

const limit = {
  grip: MU,
  mass: { symbol: 'm', unit: 'kg', label: 'mass' },
  centre: LENGTH('x_g', 'centre of mass, behind the front axle'),
  height: LENGTH('h', 'height of the centre of mass'),
  wheelbase: LENGTH('L', 'wheelbase'),
  rolling: { symbol: 'c_r', unit: '1', label: 'rolling resistance', shows: 'ratio' },
} as const
const example = { grip: 0.6, mass: 2500 * LB, centre: 40 * INCH, height: 22 * INCH, wheelbase: 120 * INCH, rolling: 0.01 }

/** Greatest pull of driven front wheels on the level, rolling resistance counted. */
export const pullByGripFront = formula(
  {
    id: 'pull-by-grip-front',
    label: 'Greatest pull by grip, front drive',
    gives: { symbol: 'F', unit: 'N' },
    takes: limit,
    uses: [GRAVITY],
    text: 'F = μ · m · g · (L − x_g + c_r · h) / L / (1 + μ · h / L)',
    source: BOOK,
    leavesOut: 'Lift, slope, an open differential on a split surface.',
    proof: { examples: [{ takes: example, gives: 903.38 * LBF, within: 0.05 * LBF, source: EXAMPLE }] },
  },
  ({ grip, mass, centre, height, wheelbase, rolling }) =>
    (grip * mass * GRAVITY.value * (wheelbase - centre + rolling * height)) / wheelbase / (1 + (grip * height) / wheelbase),
)
/** The same for driven rear wheels. */
export const pullByGripRear = formula(
  {
    id: 'pull-by-grip-rear',
    label: 'Greatest pull by grip, rear drive',
    gives: { symbol: 'F', unit: 'N' },
    takes: limit,
    uses: [GRAVITY],
    text: 'F = μ · m · g · (x_g − c_r · h) / L / (1 − μ · h / L)',
    source: BOOK,
    leavesOut: 'Lift, slope; a live axle with open differential loses more.',
    proof: { examples: [{ takes: example, gives: 558.71 * LBF, within: 0.05 * LBF, source: EXAMPLE }] },
  },
  ({ grip, mass, centre, height, wheelbase, rolling }) =>
    (grip * mass * GRAVITY.value * (centre - rolling * height)) / wheelbase / (1 - (grip * height) / wheelbase),
)

/** Both axles driven with a fixed share to the front: the axle that slips first sets the limit. */
export const gripFixedShare = formula(
  {
    id: 'grip-fixed-share',
    label: 'Grip limit, both axles with a fixed share',
    gives: { symbol: 'q', unit: '1', label: 'pull over weight', shows: 'share' },
    takes: {
      grip: MU,
      rearShare: { symbol: 'ψ', unit: '1', label: 'static share on the rear axle', shows: 'share' },
      height: LENGTH('h', 'height of the centre of mass'),
      wheelbase: LENGTH('L', 'wheelbase'),
      frontShare: { symbol: 's', unit: '1', label: 'share of the pull at the front', shows: 'share', holds: [0.1, 0.65] },
    },
    text: 'χ = h / L\nq_F = μ · (1 − ψ) / (s + μ · χ)\nq_R = { μ · ψ / (1 − s − μ · χ) if 1 − s > μ · χ + 0.000001; q_F otherwise }\nq = min(q_F, q_R)',
    source: GILLESPIE,
    leavesOut: 'Where the rear share is so small that the rear axle gains load faster than pull, the front alone limits.',
    proof: {
      examples: [
        {
          takes: { grip: 0.8, rearShare: 1.15 / 2.45, height: 0.54, wheelbase: 2.45, frontShare: 0.4 },
          gives: 0.7365,
          within: 0.00005,
          source: { work: 'statics', place: 'worked by hand: L 2.45 m, h 0.54 m, centre 1.15 m behind the front axle, 40 % front' },
        },
      ],
    },
  },
  ({ grip, rearShare, height, wheelbase, frontShare }) => {
    const chi = height / wheelbase
    const front = (grip * (1 - rearShare)) / (frontShare + grip * chi)
    const rear = 1 - frontShare > grip * chi + 0.000001 ? (grip * rearShare) / (1 - frontShare - grip * chi) : front
    return Math.min(front, rear)
  },
)

/** A live rear axle with an open differential: driveline torque rolls the axle and unloads one wheel; that wheel sets the pull. */
export const pullOfLiveAxle = formula(
  {
    id: 'pull-of-live-axle',
    label: 'Greatest pull by grip, live rear axle with open differential',
    gives: { symbol: 'F', unit: 'N' },
    takes: {
      grip: MU,
      rear: { symbol: 'm_R', unit: 'kg', label: 'rear axle mass, standing' },
      height: LENGTH('h', 'height of the centre of mass'),
      wheelbase: LENGTH('L', 'wheelbase'),
      track: LENGTH('t', 'rear track'),
      radius: LENGTH('r', 'rolling radius'),
      finalDrive: { symbol: 'i_ax', unit: '1', label: 'axle ratio', shows: 'ratio' },
      rollFront: { symbol: 'K_F', unit: 'N·m/rad', label: 'roll stiffness of the front suspension' },
      rollRear: { symbol: 'K_R', unit: 'N·m/rad', label: 'roll stiffness of the rear suspension' },
    },
    uses: [GRAVITY],
    text: 'F = μ · m_R · g / (1 − μ · h / L + 2 · μ · r / (i_ax · t) · K_F / (K_F + K_R))',
    source: GILLESPIE,
    leavesOut: 'Rolling resistance, lift.',
    proof: {
      examples: [
        {
          takes: {
            grip: 0.62,
            rear: 1437 * LB,
            height: 21 * INCH,
            wheelbase: 108 * INCH,
            track: 59 * INCH,
            radius: 12.59 * INCH,
            finalDrive: 2.9,
            rollFront: 1150,
            rollRear: 280,
          },
          gives: 935 * LBF,
          within: 0.5 * LBF,
          source: { work: 'gillespie', place: 'ch. 2, example of a rear-drive car: 935 lb, 0.294 g', mark: 'from memory' },
        },
      ],
    },
  },
  ({ grip, rear, height, wheelbase, track, radius, finalDrive, rollFront, rollRear }) =>
    (grip * rear * GRAVITY.value) /
    (1 - (grip * height) / wheelbase + (((2 * grip * radius) / (finalDrive * track)) * rollFront) / (rollFront + rollRear)),
)

/** Weight that moves from one axle to the other while the car speeds up or brakes. */
export const loadShift = formula(
  {
    id: 'load-shift',
    label: 'Load moved between the axles',
    gives: { symbol: 'ΔF', unit: 'N' },
    takes: {
      mass: { symbol: 'm', unit: 'kg', label: 'mass' },
      acceleration: { symbol: 'a', unit: 'm/s²', label: 'acceleration', shows: 'acceleration' },
      height: LENGTH('h', 'height of the centre of mass'),
      across: LENGTH('ℓ', 'wheelbase, or track in a bend'),
    },
    text: 'ΔF = m · a · h / ℓ',
    source: { work: 'statics', place: 'moments about a wheel contact' },
    proof: {
      examples: [
        {
          takes: { mass: 1200, acceleration: 3, height: 0.54, across: 2.45 },
          gives: 793.5,
          within: 0.05,
          source: { work: 'statics', place: 'worked by hand: 1200 kg at 3 m/s²' },
        },
      ],
    },
  },
  ({ mass, acceleration, height, across }) => (mass * acceleration * height) / across,
)
