import { formula } from '../working/formula.ts'
import { PER_KELVIN, REFERENCE_PRESSURE, TWENTY } from './road-load-reference.ts'

const GTR = (place: string) => ({ work: 'un-gtr-15', place: `Annex 4, ${place}`, mark: 'from memory' }) as const
const speed = (symbol: string, label: string) => ({ symbol, unit: 'm/s', label, shows: 'speed' }) as const
const times = (symbol: string, label: string) => ({ symbol, unit: 's', label, shows: 'time', many: true }) as const
const force = (symbol: string, label: string) => ({ symbol, unit: 'N', label }) as const
const F0 = force('f_0', 'constant part')
const F1 = { symbol: 'f_1', unit: 'N·s/m', label: 'part rising with speed' } as const
const F2 = { symbol: 'f_2', unit: 'N·s²/m²', label: 'part rising with speed squared' } as const
const HAND = (place: string) => ({ work: 'statics', place }) as const

const step = {
  mass: { symbol: 'm_e', unit: 'kg', label: 'coasting mass' },
  from: speed('v_1', 'from'),
  to: speed('v_2', 'to'),
  out: times('t_o', 'times out'),
  back: times('t_b', 'times back'),
} as const

/**
 * Force that slowed the car through one step of speed: the two directions averaged as forces (harmonic mean of the times), so that a steady wind and a
 * steady slope drop out.
 */
export const stepForce = formula(
  {
    id: 'coast-down-step-force',
    label: 'Coast-down force of a speed step',
    gives: force('F', 'force'),
    takes: { ...step, scatter: { symbol: 'ε', unit: '1', label: 'scatter of the mean', shows: 'share', holds: [-0.5, 0.5] } },
    text: 'n = Σ (t_o / t_o + t_b / t_b)\nF = m_e · (v_1 − v_2) · Σ (1 / t_o + 1 / t_b) / n · (1 + ε)',
    source: GTR('4.3: force from mass, speed step and harmonic mean of both directions'),
    leavesOut: 'The bend of the force within the step: below 0.2 % for steps of 10 km/h.',
    proof: {
      examples: [
        {
          takes: { mass: 1442, from: 90 / 3.6, to: 80 / 3.6, out: [10.438], back: [10.438], scatter: 0 },
          gives: 150 + 0.42 * (85 / 3.6) ** 2,
          within: 0.8,
          source: HAND('a made-up car of 150 N and 0.42 N·s²/m²: exact time of the step 10.438 s, force at its middle'),
          because: 'the bend within the step is worth 0.2 %',
        },
      ],
    },
  },
  ({ mass, from, to, out, back, scatter }) => {
    let sum = 0
    for (let i = 0; i < out.length; i++) sum += 1 / (out[i] as number) + 1 / (back[i] as number)
    return ((mass * (from - to) * sum) / (2 * out.length)) * (1 + scatter)
  },
)

/** How fast it slows in a step, known from the times alone: what the force comes to for each kilogram. */
export const stepSlowing = formula(
  {
    id: 'coast-down-step-slowing',
    label: 'Slowing in a speed step',
    gives: { symbol: 'a', unit: 'm/s²', label: 'slowing', shows: 'acceleration' },
    takes: { from: step.from, to: step.to, out: step.out, back: step.back },
    text: 'n = Σ (t_o / t_o + t_b / t_b)\na = (v_1 − v_2) · Σ (1 / t_o + 1 / t_b) / n',
    source: GTR('4.3: speed step over the harmonic mean of both directions'),
    proof: {
      examples: [
        {
          takes: { from: 25, to: 22.5, out: [10], back: [10] },
          gives: 0.25,
          within: 1e-12,
          source: HAND('2.5 m/s in ten seconds, both ways'),
        },
      ],
    },
  },
  ({ from, to, out, back }) => {
    let sum = 0
    for (let i = 0; i < out.length; i++) sum += 1 / (out[i] as number) + 1 / (back[i] as number)
    return ((from - to) * sum) / (2 * out.length)
  },
)

/** By how much the force differs out and back: wind and slope along the track. */
export const stepDifference = formula(
  {
    id: 'coast-down-step-difference',
    label: 'Coast-down force, out less back',
    gives: force('D', 'out less back'),
    takes: step,
    text: 'n = Σ (t_o / t_o)\nD = m_e · (v_1 − v_2) · Σ (1 / t_o − 1 / t_b) / n',
    source: GTR('4.3, the two directions kept apart'),
    proof: { none: 'difference of two step forces' },
  },
  ({ mass, from, to, out, back }) => {
    let sum = 0
    for (let i = 0; i < out.length; i++) sum += 1 / (out[i] as number) - 1 / (back[i] as number)
    return (mass * (from - to) * sum) / out.length
  },
)

/** Statistical accuracy of one step: half-width of the mean of the pairs over the mean. Pairs are added until it is 3 % or less everywhere. */
export const statisticalAccuracy = formula(
  {
    id: 'coast-down-accuracy',
    label: 'Statistical accuracy of a speed step',
    gives: { symbol: 'p_j', unit: '1', shows: 'share' },
    takes: {
      out: times('t_o', 'times out'),
      back: times('t_b', 'times back'),
      student: { symbol: 't_95', unit: '1', label: 'Student factor, 95 %, pairs less one' },
    },
    text: 'n = Σ (t_o / t_o)\nt_m = Σ (2 / (1 / t_o + 1 / t_b)) / n\ns = √(Σ (2 / (1 / t_o + 1 / t_b) − t_m)² / (n − 1))\np_j = t_95 · s / (√(n) · t_m)',
    source: GTR('4.3: statistical accuracy, 3 % at each reference speed'),
    proof: {
      examples: [
        {
          takes: { out: [10, 10.2, 9.8], back: [10, 10.2, 9.8], student: 4.303 },
          gives: (4.303 * 0.2) / (Math.sqrt(3) * 10),
          within: 1e-9,
          source: HAND('three pairs of 10.0, 10.2, 9.8 s: mean 10 s, deviation 0.2 s'),
        },
      ],
    },
  },
  ({ out, back, student }) => {
    const pairs = out.map((t, i) => 2 / (1 / t + 1 / (back[i] as number))),
      n = pairs.length
    let mean = 0
    for (const t of pairs) mean += t
    mean /= n
    let squares = 0
    for (const t of pairs) squares += (t - mean) ** 2
    return (student * Math.sqrt(squares / (n - 1))) / (Math.sqrt(n) * mean)
  },
)

const SUMS = [
  'n = Σ (v_1 / v_1)',
  'a = Σ ((v_1 + v_2) / 2) / n',
  'S_2 = Σ ((v_1 + v_2) / 2 − a)²',
  'S_3 = Σ ((v_1 + v_2) / 2 − a)^3',
  'S_4 = Σ ((v_1 + v_2) / 2 − a)^4',
  'Y_0 = Σ F_j',
  'Y_1 = Σ F_j · ((v_1 + v_2) / 2 − a)',
  'Y_2 = Σ F_j · ((v_1 + v_2) / 2 − a)²',
].join('\n')

/** Coefficients of road load by least squares over the steps: F = f0 + f1·v + f2·v² at the middle of each step. */
export const coastDownFit = formula(
  {
    id: 'coast-down-fit',
    label: 'Road load fitted to the speed steps',
    gives: { f0: F0, f1: F1, f2: F2 },
    takes: {
      from: { ...speed('v_1', 'from'), many: true },
      to: { ...speed('v_2', 'to'), many: true },
      forces: { ...force('F_j', 'force of a step'), many: true },
    },
    // Powers about the mean speed: the sums of plain powers would lose half the digits.
    text: [
      SUMS,
      'k = (n · S_2 · S_4 − n · S_3 · S_3 − S_2 · S_2 · S_2)',
      'c = (n · S_2 · Y_2 − n · S_3 · Y_1 − S_2 · S_2 · Y_0) / k',
      'b = (Y_1 − c · S_3) / S_2',
      'f_2 = c',
      'f_1 = b − 2 · c · a',
      'f_0 = (Y_0 − c · S_2) / n − b · a + c · a²',
    ].join('\n'),
    source: GTR('4.3: least-squares regression of the second degree'),
    leavesOut: 'Steps are weighed alike. Needs three steps or more, well spread.',
    proof: {
      examples: [
        {
          takes: {
            from: [120, 110, 100, 90, 80, 70, 60, 50, 40, 30].map(v => v / 3.6),
            to: [110, 100, 90, 80, 70, 60, 50, 40, 30, 20].map(v => v / 3.6),
            forces: [115, 105, 95, 85, 75, 65, 55, 45, 35, 25].map(v => 160 + 3 * (v / 3.6) + 0.42 * (v / 3.6) ** 2),
          },
          gives: { f0: 160, f1: 3, f2: 0.42 },
          within: 1e-9,
          source: HAND('forces laid on 160 N + 3 N·s/m · v + 0.42 N·s²/m² · v²'),
        },
      ],
    },
  },
  ({ from, to, forces }) => {
    const n = from.length
    let a = 0
    for (let i = 0; i < n; i++) a += ((from[i] as number) + (to[i] as number)) / 2
    a /= n
    let s2 = 0,
      s3 = 0,
      s4 = 0,
      y0 = 0,
      y1 = 0,
      y2 = 0
    for (let i = 0; i < n; i++) {
      const u = ((from[i] as number) + (to[i] as number)) / 2 - a,
        f = forces[i] as number
      s2 += u ** 2
      s3 += u ** 3
      s4 += u ** 4
      y0 += f
      y1 += f * u
      y2 += f * u ** 2
    }
    const c = (n * s2 * y2 - n * s3 * y1 - s2 * s2 * y0) / (n * s2 * s4 - n * s3 * s3 - s2 * s2 * s2),
      b = (y1 - c * s3) / s2
    return { f0: (y0 - c * s2) / n - b * a + c * a ** 2, f1: b - 2 * c * a, f2: c }
  },
)

/** Wind and slope along the track, read from how the force differs out and back over speed. */
export const windAndSlope = formula(
  {
    id: 'coast-down-wind-and-slope',
    label: 'Wind along the track, from both directions',
    gives: { ...speed('v_w', 'wind along the track') },
    takes: {
      from: { ...speed('v_1', 'from'), many: true },
      to: { ...speed('v_2', 'to'), many: true },
      differences: { ...force('D_j', 'force out less back'), many: true },
      f2: F2,
    },
    text: 'n = Σ (v_1 / v_1)\na = Σ ((v_1 + v_2) / 2) / n\nS_2 = Σ ((v_1 + v_2) / 2 − a)²\nb = Σ D_j · ((v_1 + v_2) / 2 − a) / S_2\nv_w = b / (4 · f_2)',
    source: HAND('air drag against the wind and with it differs by 4·f2·v·v_w; a slope differs by the same force at every speed'),
    leavesOut: 'Side wind and gusts.',
    proof: {
      examples: [
        {
          takes: {
            from: [31, 21, 11],
            to: [29, 19, 9],
            differences: [30, 20, 10].map(v => 0.42 * ((v + 1.5) ** 2 - (v - 1.5) ** 2) + 25),
            f2: 0.42,
          },
          gives: 1.5,
          within: 1e-9,
          source: HAND('a wind of 1.5 m/s and a slope worth 25 N'),
        },
      ],
    },
  },
  ({ from, to, differences, f2 }) => {
    const n = from.length
    let a = 0
    for (let i = 0; i < n; i++) a += ((from[i] as number) + (to[i] as number)) / 2
    a /= n
    let squares = 0,
      product = 0
    for (let i = 0; i < n; i++) {
      const u = ((from[i] as number) + (to[i] as number)) / 2 - a
      squares += u ** 2
      product += (differences[i] as number) * u
    }
    return product / squares / (4 * f2)
  },
)

/** Coefficients as measured brought to 20 °C, 100 kPa and no wind. */
export const toReferenceConditions = formula(
  {
    id: 'coast-down-to-reference',
    label: 'Road load at reference conditions',
    gives: { f0: force('f_0r', 'constant part'), f1: { ...F1, symbol: 'f_1r' }, f2: { ...F2, symbol: 'f_2r' } },
    takes: {
      f0: F0,
      f1: F1,
      f2: F2,
      wind: speed('v_w', 'wind along the track'),
      temperature: { symbol: 'T', unit: 'K', label: 'air temperature', shows: 'temperature', holds: [278.15, 313.15] },
      pressure: { symbol: 'p', unit: 'Pa', label: 'air pressure', shows: 'pressure', holds: [91e3, 104e3] },
    },
    uses: [PER_KELVIN, TWENTY, REFERENCE_PRESSURE],
    text: [
      'w_1 = f_2 · v_w²',
      'f_0r = (f_0 − w_1) · (1 + K_0 · (T − T_20))',
      'f_1r = f_1 · (1 + K_0 · (T − T_20))',
      'f_2r = f_2 · T / T_20 · p_ref / p',
    ].join('\n'),
    source: GTR('4.5: correction to reference conditions'),
    leavesOut: 'Mass: the coefficients stay at the mass of the test.',
    proof: {
      examples: [
        {
          takes: { f0: 150, f1: 2, f2: 0.42, wind: 2, temperature: 283.15, pressure: 98e3 },
          gives: { f0: (150 - 0.42 * 4) * 0.914, f1: 2 * 0.914, f2: (0.42 * 283.15 * 100) / (293.15 * 98) },
          within: 1e-9,
          source: GTR('4.5, worked by hand at 10 °C and 98 kPa'),
        },
      ],
    },
  },
  ({ f0, f1, f2, wind, temperature, pressure }) => {
    const warm = 1 + PER_KELVIN.value * (temperature - TWENTY.value)
    return {
      f0: (f0 - f2 * wind ** 2) * warm,
      f1: f1 * warm,
      f2: (((f2 * temperature) / TWENTY.value) * REFERENCE_PRESSURE.value) / pressure,
    }
  },
)

/** Time to coast from one speed to a lower one where road load has no part rising with speed. */
export const coastTime = formula(
  {
    id: 'coast-time',
    label: 'Time to coast down',
    gives: { symbol: 't', unit: 's', shows: 'time' },
    takes: { mass: step.mass, f0: F0, f2: F2, from: step.from, to: step.to },
    text: 'q = √(f_2 / f_0)\nt = m_e / √(f_0 · f_2) · (atan(v_1 · q) − atan(v_2 · q))',
    source: { work: 'definition', place: 'integral of dv over the force' },
    proof: {
      examples: [
        {
          takes: { mass: 1442, f0: 150, f2: 0.42, from: 120 / 3.6, to: 110 / 3.6 },
          gives: 6.929,
          within: 0.0006,
          source: HAND('made-up car, worked by hand'),
        },
        {
          takes: { mass: 1442, f0: 150, f2: 0.42, from: 30 / 3.6, to: 20 / 3.6 },
          gives: 23.507,
          within: 0.0006,
          source: HAND('made-up car, worked by hand'),
        },
        {
          takes: { mass: 1442, f0: 150, f2: 0.42, from: 120 / 3.6, to: 20 / 3.6 },
          gives: 139.729,
          within: 0.0006,
          source: HAND('made-up car, worked by hand'),
        },
      ],
    },
  },
  ({ mass, f0, f2, from, to }) => {
    const q = Math.sqrt(f2 / f0)
    return (mass / Math.sqrt(f0 * f2)) * (Math.atan(from * q) - Math.atan(to * q))
  },
)
