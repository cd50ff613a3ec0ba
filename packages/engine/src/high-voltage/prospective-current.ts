import { root } from '../numerics/index.ts'
import { formula } from '../working/formula.ts'
import { amps, henries, integral, many, ohms, seconds, volts } from './conductor-symbols.ts'

const RISE = { work: 'circuits', place: 'current in a resistance and an inductance' } as const
const recomputed = (place: string) => ({ work: 'circuits', place: `${place}; recomputed` }) as const
/** The pack the sums are shown on: 96 in series, 2 in parallel, links, 6 m of cable, two contactors, fuse. Cells by a factor on 1 mΩ. */
const path = (cells: number) => [96 * 0.5e-3 * cells, 96 * 0.05e-3, 6 * 0.386e-3, 2 * 0.2e-3, 0.3e-3]
const exampleLoop = { prospective: 6000, constant: 0.5e-3 }

/** Current a dead short would reach. Highest: full, warm, new pack, short at the pack. Lowest: empty, cold, aged pack, at the far end of the thinnest cable. */
export const prospectiveCurrent = formula(
  {
    id: 'prospective-current',
    label: 'Prospective short-circuit current',
    gives: { resistance: ohms('R', 'loop'), current: amps('I_k', 'prospective current') },
    takes: { voltage: volts('U_oc', 'open circuit'), resistances: many(ohms('R_i', 'resistance of the loop')) },
    text: 'R = Σ R_i\nI_k = U_oc / R',
    source: { work: 'circuits', place: 'Ohm’s law' },
    leavesOut: 'An arc, which makes it less; cells that give more in the first milliseconds than their resistance says.',
    proof: {
      examples: (
        [
          [1, 96 * 4.15, 55.816, 7138, 'warm'],
          [3.189, 96 * 3.4, 160.888, 2029, 'cells at −10 °C, nearly empty'],
          [0.85, 96 * 4.2, 48.616, 8294, 'warm cells, full'],
        ] as const
      ).flatMap(([cells, voltage, milliohms, current, place]) => {
        const takes = { voltage, resistances: path(cells) },
          source = recomputed(`96 in series, 2 in parallel, ${place}`)
        return [
          { takes, gives: { resistance: milliohms / 1000 }, within: 6e-7, source },
          { takes, gives: { current }, within: 0.6, source },
        ]
      }),
    },
  },
  ({ voltage, resistances }) => {
    const resistance = resistances.reduce((sum, r) => sum + r, 0)
    return { resistance, current: voltage / resistance }
  },
)

/** Time in which a fault current gets to 63 % of where it is going. */
export const faultTimeConstant = formula(
  {
    id: 'fault-time-constant',
    label: 'Time constant of a fault',
    gives: seconds('τ', 'time constant'),
    takes: { inductance: henries('L', 'loop'), resistance: ohms('R', 'loop') },
    text: 'τ = L / R',
    source: RISE,
    proof: {
      examples: [
        { takes: { inductance: 30e-6, resistance: 60e-3 }, gives: 0.5e-3, within: 1e-12, source: recomputed('30 µH, 60 mΩ') },
        { takes: { inductance: 20e-6, resistance: 50e-3 }, gives: 0.4e-3, within: 1e-12, source: recomputed('20 µH, 50 mΩ') },
      ],
    },
  },
  ({ inductance, resistance }) => inductance / resistance,
)

const rising = {
  prospective: amps('I_k', 'prospective current'),
  constant: seconds('τ', 'time constant'),
} as const
const since = { time: seconds('t', 'since the fault began') } as const

/** Fault current while it rises. */
export const faultCurrent = formula(
  {
    id: 'fault-current',
    label: 'Fault current as it rises',
    gives: amps('i', 'current'),
    takes: { ...rising, ...since },
    text: 'i = I_k · (1 − exp(−t / τ))',
    source: RISE,
    proof: {
      examples: [
        { takes: { ...exampleLoop, time: 1.2204e-3 }, gives: 5477, within: 0.6, source: recomputed('6000 A, 0.5 ms, after 1.2204 ms') },
        { takes: { ...exampleLoop, time: 2.4086e-3 }, gives: 5951, within: 0.6, source: recomputed('6000 A, 0.5 ms, after 2.4086 ms') },
        {
          takes: { prospective: 8000, constant: 0.4e-3, time: 1.00525e-3 },
          gives: 7352,
          within: 0.6,
          source: recomputed('8000 A, 0.4 ms, after 1.00525 ms'),
        },
      ],
    },
  },
  ({ prospective, constant, time }) => prospective * (1 - Math.exp(-time / constant)),
)

/** Current squared times time since a fault began: what melts a fuse. */
export const faultIntegral = formula(
  {
    id: 'fault-integral',
    label: 'Current squared times time of a rising fault',
    gives: integral('W', 'since the fault began'),
    takes: { ...rising, ...since },
    text: 'W = I_k² · (t − 2 · τ · (1 − exp(−t / τ)) + τ / 2 · (1 − exp(−2 · t / τ)))',
    source: RISE,
    proof: {
      examples: [
        { takes: { ...exampleLoop, time: 1.2204e-3 }, gives: 20e3, within: 2, source: recomputed('6000 A, 0.5 ms, after 1.2204 ms') },
        { takes: { ...exampleLoop, time: 2.4086e-3 }, gives: 60e3, within: 2, source: recomputed('6000 A, 0.5 ms, after 2.4086 ms') },
        {
          takes: { prospective: 8000, constant: 0.4e-3, time: 1.00525e-3 },
          gives: 30e3,
          within: 0.6,
          source: recomputed('8000 A, 0.4 ms, after 1.00525 ms'),
        },
      ],
    },
  },
  ({ prospective, constant, time }) =>
    prospective ** 2 * (time - 2 * constant * (1 - Math.exp(-time / constant)) + (constant / 2) * (1 - Math.exp((-2 * time) / constant))),
)

/** Time until a rising fault melts a fuse, none of the heat lost. Arcing comes on top. */
export const timeToMelt = formula(
  {
    id: 'time-to-melt',
    label: 'Time until a rising fault melts a fuse',
    gives: seconds('t_m', 'until the fuse melts'),
    takes: { ...rising, melting: integral('W_m', 'melting integral of the fuse') },
    text: 'I_k²·(t − 2·τ·(1 − exp(−t/τ)) + τ/2·(1 − exp(−2·t/τ))) = W_m, solved for t',
    words: 'solved by trial, to a hundred-millionth of the time',
    source: RISE,
    leavesOut: 'Heat the fuse loses meanwhile, so only for times of a few milliseconds; arcing.',
    proof: {
      examples: [
        { takes: { ...exampleLoop, melting: 20e3 }, gives: 1.2204e-3, within: 6e-8, source: recomputed('360 V, 60 mΩ, 30 µH, 20 000 A²s') },
        { takes: { ...exampleLoop, melting: 60e3 }, gives: 2.4086e-3, within: 6e-8, source: recomputed('360 V, 60 mΩ, 30 µH, 60 000 A²s') },
        {
          takes: { prospective: 8000, constant: 0.4e-3, melting: 30e3 },
          gives: 1.00525e-3,
          within: 6e-9,
          source: recomputed('400 V, 50 mΩ, 20 µH, 30 000 A²s'),
        },
        {
          takes: { prospective: 6000, constant: 0, melting: 20e3 },
          gives: 0.556e-3,
          within: 6e-7,
          source: recomputed('360 V, 60 mΩ, no inductance, 20 000 A²s'),
        },
      ],
    },
  },
  ({ prospective, constant, melting }) => {
    const steady = melting / prospective ** 2
    if (constant === 0) return steady
    // The rise costs less than two time constants, so the end of the bracket lies behind the answer.
    const last = steady + 2 * constant
    return root(time => faultIntegral({ prospective, constant, time }) - melting, 0, last, 1e-8 * steady) ?? last
  },
)
