import { formula } from '../working/formula.ts'
import { type Fact, standard } from '../working/value.ts'
import { amps, celsius, integral, ratio, seconds, share, temperature } from './conductor-symbols.ts'

const GUIDE = { work: 'fuse-guide', place: 'appendix, factor for the air' } as const
const recomputed = (place: string) => ({ work: 'fuse-guide', place: `${place}; recomputed` }) as const

/** Constants of fuses for the factor of the air: temperature it ends at (130 to 150 °C by fuse) and air its rating holds in (25 to 30 °C). The middle and the lower. */
export const FUSE_AIR = {
  end: { ...standard('fuse.end', 'fuse constant of the air factor', 'T_f', celsius(140), 'K', GUIDE), half: 10 },
  rated: standard('fuse.rated-air', 'air a fuse is rated in', 'T_0', celsius(25), 'K', GUIDE),
} as const

/** Factor on the rating of a fuse for the air around it. */
export const fuseAirFactor = formula(
  {
    id: 'fuse-air-factor',
    label: 'Factor on a fuse for the air around it',
    gives: ratio('A_1', 'factor on the rating'),
    takes: { end: temperature('T_f', 'fuse constant'), ambient: temperature('T_a', 'air'), rated: temperature('T_0', 'air of the rating') },
    text: 'A_1 = √(max(0, T_f − T_a) / (T_f − T_0))',
    source: GUIDE,
    proof: {
      examples: (
        [
          [140, 60, 0.8341],
          [140, 45, 0.9089],
          [130, 60, 0.8165],
          [150, 60, 0.8485],
        ] as const
      ).map(([end, ambient, gives]) => ({
        takes: { end: celsius(end), ambient: celsius(ambient), rated: celsius(25) },
        gives,
        within: 6e-5,
        source: recomputed(`constant ${end} °C, air ${ambient} °C`),
      })),
    },
  },
  ({ end, ambient, rated }) => Math.sqrt(Math.max(0, end - ambient) / (end - rated)),
)

/** What is kept back of a fuse's rating at 25 °C for a load that lasts: the lower of 0.75 to 0.80. */
export const CONTINUOUS_SHARE = {
  ...standard('fuse.continuous', 'rating of a fuse used continuously', 'C', 0.75, '1', {
    work: 'practice',
    place: 'fuses at 25 °C, continuous load: 0.75 to 0.80',
    mark: 'common practice',
  }),
  shows: 'ratio',
} as const

/** Least rating of a fuse for a load. */
export const fuseRating = formula(
  {
    id: 'fuse-rating',
    label: 'Least rating of a fuse for its load',
    gives: amps('I_n', 'least rating'),
    takes: { load: amps('I_rms', 'load'), air: ratio('A_1', 'factor for the air'), other: ratio('C', 'other factors, multiplied') },
    text: 'I_n = I_rms / (A_1 · C)',
    source: { work: 'fuse-guide', place: 'appendix, rated current from the load' },
    leavesOut: 'Thin cables on the fuse, which heat it; moved air, which cools it by up to a quarter. Pulses: see the melting integral.',
    proof: {
      examples: [
        {
          takes: { load: 239.27, air: 0.8341, other: 0.8 },
          gives: 358.6,
          within: 0.05,
          source: recomputed('239.27 A, factors 0.8341 and 0.80: 400 A fuse'),
        },
      ],
    },
  },
  ({ load, air, other }) => load / (air * other),
)

export type PulseShape = 'square' | 'half sine' | 'triangle' | 'exponential decay'
const SHAPES: Readonly<Record<PulseShape, number>> = { square: 1, 'half sine': 0.5, triangle: 1 / 3, 'exponential decay': 0.5 }
/** Mean of the square of a pulse by its peak squared, over its time; for a decay over its time constant. */
export const pulseShape = (shape: PulseShape): Fact => ({
  ...standard(`pulse.${shape.replace(' ', '-')}`, `square of a pulse, ${shape}`, 'c_p', SHAPES[shape], '1', {
    work: 'fuse-pulse-guide',
    place: 'chart 1, shapes of pulses',
  }),
  shows: 'ratio',
})

/** Current squared times time of one pulse. */
export const pulseIntegral = formula(
  {
    id: 'pulse-integral',
    label: 'Current squared times time of a pulse',
    gives: integral('W_p', 'of one pulse'),
    takes: { peak: amps('I_p', 'peak'), time: seconds('t_p', 'time, or time constant of a decay'), shape: ratio('c_p', 'by the shape') },
    text: 'W_p = c_p · I_p² · t_p',
    source: { work: 'fuse-pulse-guide', place: 'chart 1, shapes of pulses' },
    proof: {
      examples: [
        {
          takes: { peak: 500, time: 0.0025, shape: 1 },
          gives: 625,
          within: 1e-9,
          source: { work: 'fuse-pulse-guide', place: 'square pulse of 500 A, 2.5 ms; recomputed' },
        },
      ],
    },
  },
  ({ peak, time, shape }) => shape * peak ** 2 * time,
)

/** Pulses in a life, and the share of the melting integral one may use. */
const PULSES: readonly (readonly [pulses: number, share: number])[] = [
  [100, 0.48],
  [1000, 0.38],
  [10_000, 0.29],
  [100_000, 0.22],
]
/**
 * Share of a fuse's melting integral that one pulse may use when it comes a number of times, at least 10 s apart; the next larger number of the chart
 * holds. Undefined above 100 000, where nothing is published.
 *
 * Throws RangeError when `pulses` is not above zero. Source: guide of a maker of fuses, chart 2. Example: 10 000 → 29 %.
 */
export function pulseShare(pulses: number): Fact | undefined {
  if (!(pulses > 0)) throw new RangeError(`pulseShare: pulses must be above zero, found ${pulses}`)
  const row = PULSES.find(([n]) => n >= pulses)
  return (
    row && {
      ...standard(`fuse.pulses-${row[0]}`, `melting integral one of ${row[0]} pulses may use`, 'k_p', row[1], '1', {
        work: 'fuse-pulse-guide',
        place: 'chart 2, pulses to a fuse’s life',
      }),
      shows: 'share',
    }
  )
}

/** Least melting integral of a fuse that pulses go through. */
export const meltingIntegralNeeded = formula(
  {
    id: 'fuse-integral-needed',
    label: 'Least melting integral of a fuse for its pulses',
    gives: integral('W_n', 'melting integral at least'),
    takes: { pulse: integral('W_p', 'of one pulse'), share: share('k_p', 'share one pulse may use') },
    text: 'W_n = W_p / k_p',
    source: { work: 'fuse-pulse-guide', place: 'chart 2, pulses to a fuse’s life' },
    proof: {
      examples: (
        [
          [0.22, 2841],
          [0.29, 2155],
          [0.38, 1645],
          [0.48, 1302],
        ] as const
      ).map(([share, gives]) => ({
        takes: { pulse: 625, share },
        gives,
        within: 0.5,
        source: { work: 'fuse-pulse-guide', place: `625 A²s, ${share * 100} %; recomputed` } as const,
      })),
    },
  },
  ({ pulse, share }) => pulse / share,
)
