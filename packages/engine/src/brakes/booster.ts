import { formula } from '../working/formula.ts'
import { area, force, hand, length, pressure, ratio, share } from './symbols.ts'

const BAR = 1e5

/** Force the vacuum adds. A tandem booster counts both diaphragms. */
export const vacuumAssist = formula(
  {
    id: 'vacuum-assist',
    label: 'Assist of a vacuum booster',
    gives: force('F_a', 'assist at most'),
    takes: {
      area: area('A', 'effective area of the diaphragms'),
      atmosphere: pressure('p_0', 'pressure of the air'),
      vacuum: pressure('p', 'absolute pressure in the booster'),
    },
    text: 'F_a = A · (p_0 − p)',
    source: { work: 'statics', place: 'pressure on a diaphragm' },
    leavesOut: 'The return spring.',
    proof: {
      examples: [{ takes: { area: 0.038, atmosphere: 1e5, vacuum: 3e4 }, gives: 2660, within: 0.5, source: hand('0.038 m², 70 kPa') }],
    },
  },
  ({ area, atmosphere, vacuum }) => area * (atmosphere - vacuum),
)

/** Effective area of a vacuum booster by its nominal diameter. */
export const boosterArea = formula(
  {
    id: 'booster-area',
    label: 'Effective area of a vacuum booster',
    gives: area('A', 'effective area'),
    takes: { diameter: { ...length('D', 'nominal diameter'), holds: [0.15, 0.28] } },
    text: 'A = 0.82 · π / 4 · D²',
    source: { work: 'practice', place: 'about 82 % of the nominal area' },
    leavesOut: 'A tandem booster has two. Measure the pressure at the knee instead.',
    proof: {
      examples: (
        [
          [7, 0.02],
          [8, 0.027],
          [9, 0.034],
          [10, 0.042],
        ] as const
      ).map(([inches, gives]) => ({
        takes: { diameter: inches * 0.0254 },
        gives,
        within: 0.0005,
        source: hand(`${inches} in`),
      })),
    },
  },
  ({ diameter }) => ((0.82 * Math.PI) / 4) * diameter ** 2,
)

const pedal = { ratio: 3.8, efficiency: 0.9, gain: 5, area: 0.038, master: 0.0222 }
const at = (depression: number, pairs: readonly (readonly [number, number])[]) =>
  pairs.map(([force, bar]) => ({
    takes: { ...pedal, pedal: force, depression: depression * 1000 },
    gives: { pressure: bar * BAR },
    within: 0.05 * BAR,
    source: hand(`${force} N on the pedal, ${depression} kPa below the air`),
  }))
const kneeAt = (depression: number, knee: number) => ({
  takes: { ...pedal, pedal: 100, depression: depression * 1000 },
  gives: { knee },
  within: 0.5,
  source: hand(`knee at ${depression} kPa below the air`),
})

/** Line pressure through a booster: steep up to its knee, where all the assist is spent, then by the foot alone. */
export const boosterOutput = formula(
  {
    id: 'booster-output',
    label: 'Line pressure through a booster',
    gives: {
      output: force('F_o', 'force on the master cylinder'),
      pressure: pressure('p', 'line pressure'),
      knee: force('F_k', 'pedal force at the knee'),
    },
    takes: {
      pedal: force('F', 'pedal force'),
      ratio: ratio('i', 'pedal ratio'),
      efficiency: share('η', 'efficiency of pedal and cylinder'),
      gain: { ...ratio('B', 'boost: force out over force in below the knee'), holds: [1.5, 12] },
      area: area('A', 'effective area of the diaphragms'),
      depression: pressure('Δp', 'pressure of the booster below the air'),
      master: length('d', 'diameter of the master cylinder'),
    },
    text: [
      'F_i = F · i · η',
      'F_a = A · Δp',
      'F_o = min(B · F_i, F_i + F_a)',
      'A_m = π / 4 · d²',
      'p = F_o / A_m',
      'F_k = F_a / ((B − 1) · i · η)',
    ].join('\n'),
    source: { work: 'statics', place: 'force in and assist; knee or run-out as SAE J1808 names it' },
    leavesOut: 'The jump-in of the reaction disc and hysteresis. An electric booster has the same two lines.',
    proof: {
      examples: [
        ...at(70, [
          [100, 44.2],
          [200, 86.4],
          [300, 95.2],
          [500, 112.9],
        ]),
        ...at(50, [
          [100, 44.2],
          [200, 66.8],
          [300, 75.6],
          [500, 93.3],
        ]),
        kneeAt(70, 194),
        kneeAt(50, 139),
      ],
    },
  },
  ({ pedal, ratio, efficiency, gain, area, depression, master }) => {
    const input = pedal * ratio * efficiency,
      assist = area * depression,
      output = Math.min(gain * input, input + assist)
    return { output, pressure: output / ((Math.PI / 4) * master ** 2), knee: assist / ((gain - 1) * ratio * efficiency) }
  },
)
