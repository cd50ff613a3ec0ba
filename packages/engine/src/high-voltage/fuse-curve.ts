import { at, type Curve, inverseAt } from '../numerics/index.ts'
import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'
import { amps, integral, seconds } from './conductor-symbols.ts'
import { logLine, type Point } from './log-lines.ts'

const AMPERE = standard('one-ampere', 'one ampere', 'A_1', 1, 'A', { work: 'definition', place: 'unit of current' })
const SECOND = standard('one-second', 'one second', 's_1', 1, 's', { work: 'definition', place: 'unit of time' })
const READING = { work: 'iec-60269', place: 'time–current characteristics, drawn by logarithms', mark: 'from memory' } as const

/** Melting curve of a fuse: ln t [s] over ln I [A], and its two end points. */
export type FuseCurve = { readonly line: Curve; readonly points: readonly Point[]; readonly slowest: Point; readonly quickest: Point }
/** A melting curve through points. Throws RangeError when there are fewer than two, currents do not rise, times do not fall, or one is not above zero. */
export function fuseCurve(points: readonly Point[]): FuseCurve {
  const line = logLine(points)
  return { line, points, slowest: points[0] as Point, quickest: points.at(-1) as Point }
}
/** The same fuse as late as its tolerance lets it be: all currents larger by a share. 0.1 is the usual band (from memory). */
export const late = ({ points }: FuseCurve, share: number): FuseCurve => fuseCurve(points.map(([i, t]) => [i * (1 + share), t]))

const example = fuseCurve([
  [400, 1000],
  [600, 60],
  [1000, 2],
  [2000, 0.08],
  [5000, 0.006],
])
const taken = (fuse: FuseCurve, current: number) => ({
  current,
  line: fuse.line,
  startCurrent: fuse.slowest[0],
  endCurrent: fuse.quickest[0],
  endTime: fuse.quickest[1],
})

/** Time until a fuse melts. Quicker than its last point it takes the same current squared times time; slower than its first point nothing is known: without end. */
export const fuseMelting = formula(
  {
    id: 'fuse-melting-time',
    label: 'Time until a fuse melts',
    gives: seconds('t_m', 'until it melts'),
    takes: {
      current: amps('I', 'current'),
      line: { symbol: 'F', unit: ['1', '1'], label: 'ln of the time over ln of the current', curve: true },
      startCurrent: amps('I_s', 'first point of the curve'),
      endCurrent: amps('I_e', 'last point of the curve'),
      endTime: seconds('t_e', 'its time'),
    },
    uses: [AMPERE, SECOND],
    text: 't_m = { ∞ if I < I_s; s_1 · exp(F(ln(I / A_1))) if I ≤ I_e; t_e · I_e² / I² otherwise }',
    source: READING,
    leavesOut: 'Arcing, which comes on top; the tolerance of the curve. Below the first point nothing is known, so it counts as never.',
    proof: {
      examples: (
        [
          [500, 212.6, 0.05],
          [800, 8.836, 0.0006],
          [1500, 0.3043, 0.00006],
          [3000, 0.02543, 0.000006],
          [10000, 0.0015, 1e-9],
        ] as const
      ).map(([current, gives, within]) => ({
        takes: taken(example, current),
        gives,
        within,
        source: { work: 'iec-60269', place: 'curve made up for the purpose; recomputed', mark: 'from memory' } as const,
      })),
    },
  },
  ({ current, line, startCurrent, endCurrent, endTime }) =>
    current < startCurrent
      ? Number.POSITIVE_INFINITY
      : current <= endCurrent
        ? SECOND.value * Math.exp(at(line, Math.log(current / AMPERE.value)))
        : (endTime * endCurrent ** 2) / current ** 2,
)
/** Time [s] until a fuse melts at a current [A]; undefined below the first point of its curve, where nothing is known. */
export const meltingTime = (fuse: FuseCurve, current: number): number | undefined =>
  current < fuse.slowest[0] ? undefined : fuseMelting(taken(fuse, current))
/** Current [A] that melts a fuse in a time [s]; undefined beyond the slow end of its curve. */
export function meltingCurrent(fuse: FuseCurve, time: number): number | undefined {
  const [current, quickest] = fuse.quickest
  if (time < quickest) return current * Math.sqrt(quickest / time)
  const found = inverseAt(fuse.line, Math.log(time))
  return found === undefined ? undefined : Math.exp(found)
}

/** Current squared times time until a fuse melts: what it lets through, arcing apart. */
export const meltingIntegral = formula(
  {
    id: 'fuse-melting-integral',
    label: 'What a fuse lets through until it melts',
    gives: integral('W_m', 'current squared times time'),
    takes: { current: amps('I', 'current'), time: seconds('t_m', 'until it melts') },
    text: 'W_m = I² · t_m',
    source: { work: 'circuits', place: 'integral of a steady current squared' },
    leavesOut: 'Arcing: add what the sheet states for the voltage and the circuit.',
    proof: {
      examples: [
        {
          takes: { current: 2000, time: 2.179 },
          gives: 8.72e6,
          within: 6e3,
          source: { work: 'circuits', place: '2000 A for 2.179 s; recomputed' },
        },
      ],
    },
  },
  ({ current, time }) => current ** 2 * time,
)

/** Share of the current that melts a fuse in a time which a load step of that time may use, over and over. */
export const STEP_SHARE = standard('fuse.step-share', 'load step, share of the melting current', 'k_s', 0.5, '1', {
  work: 'ev-fuses',
  place: 'load steps that come again',
})
