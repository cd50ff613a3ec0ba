import { formula } from '../working/formula.ts'
import { area, force, hand, length, ratio, share } from './symbols.ts'

const BAR = 1e5
const PRESSED = { work: 'statics', place: 'two wheels, force at the rim over line pressure' } as const
const piston = (d: number): number => (Math.PI / 4) * d ** 2

/** Brake force of an axle with discs for each unit of line pressure. The pistons of one side count. */
export const discForcePerPressure = formula(
  {
    id: 'disc-force-per-pressure',
    label: 'Brake force over line pressure, discs',
    gives: area('k', 'brake force over line pressure (1 N/bar is 0.1 cm²)'),
    takes: {
      friction: { ...ratio('μ', 'friction of the pads'), holds: [0.1, 0.6] },
      piston: length('d', 'diameter of a piston'),
      pistons: { symbol: 'n', unit: '1', label: 'pistons of one side', shows: 'count' },
      radius: length('r', 'effective radius'),
      wheel: length('R', 'rolling radius of the tyre'),
    },
    text: 'A = n · π / 4 · d²\nk = 2 · 2 · μ · A · r / R',
    source: PRESSED,
    leavesOut: 'The pressure at which the pads begin to press, fade and wet pads.',
    proof: {
      examples: [
        {
          takes: { friction: 0.38, piston: 0.054, pistons: 1, radius: 0.11, wheel: 0.298 },
          gives: 5312 / ((500 * 4 * 0.8) / piston(0.0222)),
          within: 1e-6,
          source: hand('piston 54 mm: 5312 N where 500 N on the pedal make 41.3 bar'),
        },
      ],
    },
  },
  ({ friction, piston: d, pistons, radius, wheel }) => (2 * 2 * friction * pistons * piston(d) * radius) / wheel,
)

/** Brake force of an axle with drums for each unit of line pressure. */
export const drumForcePerPressure = formula(
  {
    id: 'drum-force-per-pressure',
    label: 'Brake force over line pressure, drums',
    gives: area('k', 'brake force over line pressure (1 N/bar is 0.1 cm²)'),
    takes: {
      factor: ratio('C', 'brake factor: force at the rim over force of one piston'),
      cylinder: length('d', 'diameter of the wheel cylinder'),
      radius: length('r', 'radius of the drum'),
      wheel: length('R', 'rolling radius of the tyre'),
    },
    text: 'k = 2 · C · π / 4 · d² · r / R',
    source: PRESSED,
    leavesOut:
      'Return springs, which hold the shoes back up to 3 to 8 bar (common practice): at a light pedal the rear does less than this.',
    proof: {
      examples: [
        {
          takes: { factor: 1.963, cylinder: 0.01905, radius: 0.1, wheel: 0.298 },
          gives: 1314 / (35 * BAR),
          within: 1e-7,
          source: hand('piston 19.05 mm, brake factor 1.963: 1314 N at 35 bar over the springs'),
        },
      ],
    },
  },
  ({ factor, cylinder, radius, wheel }) => (2 * factor * piston(cylinder) * radius) / wheel,
)

/** Share at the front where no valve holds the rear brakes back. */
export const splitOfForces = formula(
  {
    id: 'brake-split-of-forces',
    label: 'Share of the brake force at the front',
    gives: share('β', 'share of the brake force at the front'),
    takes: {
      front: area('k_F', 'brake force over line pressure, front axle'),
      rear: area('k_R', 'brake force over line pressure, rear axle'),
    },
    text: 'β = k_F / (k_F + k_R)',
    source: { work: 'definition', place: 'share' },
    proof: { examples: [{ takes: { front: 92e-5, rear: 52e-5 }, gives: 0.639, within: 0.0005, source: hand('92 and 52 N/bar') }] },
  },
  ({ front, rear }) => front / (front + rear),
)

/** Rear brakes by the front ones and the share a roller tester printed: what was measured stands above what was worked out. */
export const rearBySplit = formula(
  {
    id: 'rear-brakes-by-split',
    label: 'Rear brake force over line pressure, by the print',
    gives: area('k_R', 'brake force over line pressure, rear axle'),
    takes: { front: area('k_F', 'brake force over line pressure, front axle'), split: share('β', 'share at the front, printed') },
    text: 'k_R = k_F · (1 − β) / β',
    source: { work: 'definition', place: 'share' },
    leavesOut: 'A print taken above the knee of a valve: brake lighter on the rollers.',
    proof: { examples: [{ takes: { front: 92e-5, split: 92 / 144 }, gives: 52e-5, within: 1e-9, source: hand('92 and 52 N/bar') }] },
  },
  ({ front, split }) => (front * (1 - split)) / split,
)

/** Share at the front below and above the knee of a valve, and the braking at which the knee lies. */
export const valveShares = formula(
  {
    id: 'valve-shares',
    label: 'Shares through the valve',
    gives: {
      below: share('β_1', 'share at the front below the knee'),
      above: share('β_2', 'share of what is added above it'),
      knee: share('z_k', 'braking over weight at the knee'),
    },
    takes: {
      front: area('k_F', 'brake force over line pressure, front axle'),
      rear: area('k_R', 'brake force over pressure at the brakes, rear axle'),
      knee: { symbol: 'p_k', unit: 'Pa', label: 'pressure at the knee of the valve', shows: 'pressure' },
      slope: { ...share('s', 'slope of the valve above its knee'), holds: [0, 1] },
      weight: force('W', 'weight of the car'),
    },
    text: 'β_1 = k_F / (k_F + k_R)\nβ_2 = k_F / (k_F + s · k_R)\nz_k = p_k · (k_F + k_R) / W',
    source: { work: 'statics', place: 'pressure behind a valve with a knee' },
    proof: {
      examples: [
        {
          takes: { front: 92 / BAR, rear: 52 / BAR, knee: 30 * BAR, slope: 0.35, weight: 1200 * 9.80665 },
          gives: { below: 0.639, above: 0.835, knee: 0.367 },
          within: 0.0005,
          source: hand('92 and 52 N/bar, knee at 30 bar, slope 0.35, 1200 kg'),
        },
      ],
    },
  },
  ({ front, rear, knee, slope, weight }) => ({
    below: front / (front + rear),
    above: front / (front + slope * rear),
    knee: (knee * (front + rear)) / weight,
  }),
)

/** What is left of a share: the rear axle’s part of the brake force. */
export const otherShare = formula(
  {
    id: 'other-share',
    label: 'The other part',
    gives: share('q', 'the other part'),
    takes: { share: share('β', 'one part') },
    text: 'q = 1 − β',
    source: { work: 'definition', place: 'share' },
    proof: { none: 'definition' },
  },
  ({ share }) => 1 - share,
)
