import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'
import { deceleration, distance, HANDBOOK, hand, share, speed } from './symbols.ts'

/** The rules count v in km/h; these are the same laws with v in m/s. */
const PER_KMH = 3.6,
  PER_KMH2 = 3.6 ** 2
const ANNEX_3 = {
  work: 'un-r13-h',
  place: 'Annex 3: s = 0.1·v + 0.0060, 0.0067 or 0.0158·v², v in km/h; FMVSS 135 S7.5, S7.6 and S7.10 ask for the same',
  mark: 'from memory',
} as const
export const LAG = standard('brake-lag', 'Time lost before the brakes hold, as the rule counts it', 't_0', 0.1 * PER_KMH, 's', ANNEX_3)
const COLD = standard('stop-cold', 'Stop with cold brakes', 'b_1', 0.006 * PER_KMH2, 's²/m', ANNEX_3)
const FAST = standard('stop-fast', 'Stop from high speed', 'b_2', 0.0067 * PER_KMH2, 's²/m', ANNEX_3)
const FAILED = standard('stop-failed', 'Stop with part of the brakes or the assist failed', 'b_3', 0.0158 * PER_KMH2, 's²/m', ANNEX_3)

/**
 * Longest stop the approval of a car accepts: cold brakes from 100 km/h, motor out of gear; from 80 % of top speed, at most 160 km/h, in gear; and with part
 * of the brakes or the assist failed.
 */
export const prescribedStop = formula(
  {
    id: 'prescribed-stop',
    label: 'Longest stop accepted',
    gives: {
      cold: distance('s_1', 'cold brakes'),
      fast: distance('s_2', 'high speed'),
      failed: distance('s_3', 'a circuit or the assist failed'),
    },
    takes: { speed: { ...speed('v', 'speed as the brakes are applied'), holds: [5, 45] } },
    uses: [LAG, COLD, FAST, FAILED],
    text: 's_1 = t_0 · v + b_1 · v²\ns_2 = t_0 · v + b_2 · v²\ns_3 = t_0 · v + b_3 · v²',
    source: ANNEX_3,
    leavesOut: 'The limits of pedal force: 65 to 500 N.',
    proof: {
      examples: (
        [
          [50, 20, 21.75, 44.5],
          [80, 46.4, 50.9, 109.1],
          [100, 70, 77, 168],
          [120, 98.4, 108.5, 239.5],
        ] as const
      ).map(([kmh, cold, fast, failed]) => ({
        takes: { speed: kmh / 3.6 },
        gives: { cold, fast, failed },
        within: 0.05,
        source: hand(`the three laws at ${kmh} km/h`),
      })),
    },
  },
  ({ speed }) => {
    const lag = LAG.value * speed,
      square = speed ** 2
    return { cold: lag + COLD.value * square, fast: lag + FAST.value * square, failed: lag + FAILED.value * square }
  },
)

/** Mean fully developed deceleration: between 80 and 10 % of the speed a stop began at. */
export const fullyDevelopedDeceleration = formula(
  {
    id: 'fully-developed-deceleration',
    label: 'Mean fully developed deceleration',
    gives: deceleration('d_m', 'mean fully developed deceleration'),
    takes: {
      speed: speed('v_0', 'speed as the brakes are applied'),
      from: distance('s_b', 'distance run when 80 % of it is left'),
      to: distance('s_e', 'distance run when 10 % of it is left'),
    },
    text: 'v_b = 0.8 · v_0\nv_e = 0.1 · v_0\nd_m = (v_b² − v_e²) / (2 · (s_e − s_b))',
    source: { work: 'un-r13-h', place: 'Annex 3, mean fully developed deceleration, as in GRRF-56-3' },
    leavesOut: HANDBOOK,
    proof: {
      examples: [
        {
          takes: { speed: 100 / 3.6, from: 31.6, to: 69.397 },
          gives: 6.43,
          within: 0.001,
          source: hand('80 to 10 km/h in 37.797 m: the 6.43 m/s² that 0.0060·v² stands for'),
        },
      ],
    },
  },
  ({ speed, from, to }) => ((0.8 * speed) ** 2 - (0.1 * speed) ** 2) / (2 * (to - from)),
)

/** What hot brakes must still do after the heating run: part of what is prescribed, and part of what they did cold. */
export const hotDeceleration = formula(
  {
    id: 'hot-deceleration',
    label: 'Deceleration asked of hot brakes',
    gives: deceleration('d', 'least deceleration, hot'),
    takes: {
      prescribed: deceleration('d_p', 'prescribed with cold brakes'),
      cold: deceleration('d_c', 'reached with cold brakes at the same pedal force'),
      ofPrescribed: { ...share('q_p', 'part of the prescribed, 0.75 for cars by UN R13-H, 0.80 by UN R13'), holds: [0.5, 1] },
      ofCold: { ...share('q_c', 'part of the cold result, 0.60'), holds: [0.5, 1] },
    },
    text: 'd = max(q_p · d_p, q_c · d_c)',
    source: { work: 'un-r13-h', place: 'Annex 3, hot performance after the heating run', mark: 'from memory' },
    leavesOut: HANDBOOK,
    proof: { none: 'the greater of two shares' },
  },
  ({ prescribed, cold, ofPrescribed, ofCold }) => Math.max(ofPrescribed * prescribed, ofCold * cold),
)
