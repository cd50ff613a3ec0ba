import { formula } from '../working/formula.ts'
import { GRAVITY } from './gravity.ts'

const STATICS = { work: 'statics', place: 'moments' } as const
const mass = (symbol: string, label: string) => ({ symbol, unit: 'kg', label }) as const
const length = (symbol: string, label: string) => ({ symbol, unit: 'm', label, shows: 'length' }) as const
const force = (symbol: string, label: string) => ({ symbol, unit: 'N', label }) as const
const deceleration = (symbol: string, label: string) => ({ symbol, unit: 'm/s²', label, shows: 'acceleration' }) as const
const hand = (place: string) => ({ work: 'statics', place: `worked by hand: ${place}` }) as const

/** What a nose load behind the rear axle adds to the rear axle and takes off the front. */
export const noseLoadOnAxles = formula(
  {
    id: 'nose-load-on-axles',
    label: 'Nose load on the axles',
    gives: { rear: mass('Δm_R', 'added to the rear axle'), front: mass('Δm_F', 'added to the front axle') },
    takes: { nose: mass('m_S', 'nose load'), wheelbase: length('L', 'wheelbase'), overhang: length('c', 'coupling behind the rear axle') },
    text: 'Δm_R = m_S · (L + c) / L\nΔm_F = −m_S · c / L',
    source: STATICS,
    proof: {
      examples: [
        {
          takes: { nose: 75, wheelbase: 2.45, overhang: 1.05 },
          gives: { rear: 107.1, front: -32.1 },
          within: 0.05,
          source: hand('75 kg at 1.05 m, wheelbase 2.45 m'),
        },
      ],
    },
  },
  ({ nose, wheelbase, overhang }) => ({ rear: (nose * (wheelbase + overhang)) / wheelbase, front: (-nose * overhang) / wheelbase }),
)

/** Nose load of a trailer, from where its load lies. */
export const noseLoadOfTrailer = formula(
  {
    id: 'nose-load-of-trailer',
    label: 'Nose load of a trailer',
    gives: mass('m_S', 'nose load'),
    takes: {
      trailer: mass('m_t', 'trailer, laden'),
      ahead: length('e', 'its centre of mass ahead of its axle'),
      reach: length('ℓ', 'coupling to trailer axle'),
    },
    text: 'm_S = m_t · e / ℓ',
    source: STATICS,
    leavesOut: 'Several axles with springs between them. In the handbook only: the file states the nose load itself.',
    proof: {
      examples: [
        { takes: { trailer: 750, ahead: 0.36, reach: 3.6 }, gives: 75, within: 1e-9, source: hand('750 kg, a tenth of the reach ahead') },
      ],
    },
  },
  ({ trailer, ahead, reach }) => (trailer * ahead) / reach,
)

/** Strength a coupling needs for a pair of masses. */
export const couplingStrength = formula(
  {
    id: 'coupling-strength',
    label: 'Coupling strength needed (D value)',
    gives: force('D', 'coupling strength'),
    takes: { car: mass('m', 'gross mass of the car'), trailer: mass('m_t', 'gross mass of the trailer') },
    uses: [GRAVITY],
    text: 'D = g · m · m_t / (m + m_t)',
    source: { work: 'un-r55', place: 'D value' },
    proof: {
      examples: [
        {
          takes: { car: 3500, trailer: 2000 },
          gives: 12490,
          within: 15,
          source: { work: 'un-r55', place: 'printed example: 3.5 t and 2.0 t, 12.50 kN' },
          because: 'the printed example takes g as 9.81',
        },
        { takes: { car: 1700, trailer: 1200 }, gives: 6900, within: 5, source: hand('1.7 t and 1.2 t') },
      ],
    },
  },
  ({ car, trailer }) => (GRAVITY.value * car * trailer) / (car + trailer),
)

/** Nose load of a braking trailer: its own mass leans forward, the push at the coupling leans it back. */
export const noseLoadBraking = formula(
  {
    id: 'nose-load-braking',
    label: 'Nose load while braking',
    gives: force('S′', 'nose load while braking'),
    takes: {
      trailer: mass('m_t', 'trailer'),
      nose: mass('m_S', 'nose load, standing'),
      deceleration: deceleration('a', 'deceleration'),
      height: length('h_t', 'centre of mass of the trailer, above the ground'),
      own: force('F_t', 'brake force of the trailer itself'),
      coupling: length('h_c', 'coupling, above the ground'),
      reach: length('ℓ', 'coupling to trailer axle'),
    },
    uses: [GRAVITY],
    text: 'H = m_t · a − F_t\nS′ = m_S · g + (m_t · a · h_t − H · h_c) / ℓ',
    source: STATICS,
    leavesOut: 'Several axles with springs between them.',
    proof: {
      examples: [
        {
          takes: { trailer: 750, nose: 75, deceleration: 5, height: 0.75, own: 0, coupling: 0.42, reach: 3.6 },
          gives: 110.1 * 9.80665,
          within: 0.5,
          source: hand('750 kg unbraked at 5 m/s²: 110.1 kg'),
        },
        {
          takes: { trailer: 1000, nose: 75, deceleration: 5, height: 0.75, own: 5000, coupling: 0.42, reach: 3.6 },
          gives: 181.2 * 9.80665,
          within: 2,
          source: hand('1000 kg braked by itself: 181.2 kg'),
          because: 'whole tenths of a kilogram of a longer sum',
        },
      ],
    },
  },
  ({ trailer, nose, deceleration, height, own, coupling, reach }) =>
    nose * GRAVITY.value + (trailer * deceleration * height - (trailer * deceleration - own) * coupling) / reach,
)

/** What a braking trailer pushes with: what its own brakes do not hold. */
export const couplingPush = formula(
  {
    id: 'coupling-push',
    label: 'Push of the trailer while braking',
    gives: force('H', 'push at the coupling'),
    takes: {
      trailer: mass('m_t', 'trailer'),
      deceleration: deceleration('a', 'deceleration'),
      own: force('F_t', 'brake force of the trailer itself'),
    },
    text: 'H = m_t · a − F_t',
    source: STATICS,
    proof: {
      examples: [
        { takes: { trailer: 750, deceleration: 5, own: 0 }, gives: 3750, within: 1e-9, source: hand('750 kg unbraked at 5 m/s²') },
        { takes: { trailer: 1000, deceleration: 5, own: 5000 }, gives: 0, within: 1e-9, source: hand('1000 kg braked by itself') },
      ],
    },
  },
  ({ trailer, deceleration, own }) => trailer * deceleration - own,
)

/** Axle loads of the car while it brakes with a trailer. */
export const axlesBraking = formula(
  {
    id: 'axles-braking',
    label: 'Axle loads while braking with a trailer',
    gives: { front: force('N_F', 'front axle'), rear: force('N_R', 'rear axle') },
    takes: {
      mass: mass('m', 'car'),
      rearShare: { symbol: 'ψ', unit: '1', label: 'static share on the rear axle', shows: 'share' },
      deceleration: deceleration('a', 'deceleration'),
      height: length('h', 'height of the centre of mass'),
      wheelbase: length('L', 'wheelbase'),
      nose: force('S′', 'nose load while braking'),
      overhang: length('c', 'coupling behind the rear axle'),
      push: force('H', 'push of the trailer'),
      coupling: length('h_c', 'coupling, above the ground'),
    },
    uses: [GRAVITY],
    text: 'N_F = m · g · (1 − ψ) + (m · a · h − S′ · c + H · h_c) / L\nN_R = m · g + S′ − N_F',
    source: STATICS,
    proof: {
      examples: [
        {
          takes: {
            mass: 1400,
            rearShare: 0.5,
            deceleration: 5,
            height: 0.54,
            wheelbase: 2.45,
            nose: 110.1 * 9.80665,
            overhang: 1.05,
            push: 3750,
            coupling: 0.42,
          },
          gives: { front: 8588, rear: 6221 },
          within: 1,
          source: hand('1400 kg car, 750 kg unbraked trailer, 5 m/s²'),
        },
        {
          takes: {
            mass: 1400,
            rearShare: 0.5,
            deceleration: 5,
            height: 0.54,
            wheelbase: 2.45,
            nose: 0,
            overhang: 1.05,
            push: 0,
            coupling: 0.42,
          },
          gives: { rear: 5322 },
          within: 1,
          source: hand('the car alone'),
        },
      ],
    },
  },
  ({ mass, rearShare, deceleration, height, wheelbase, nose, overhang, push, coupling }) => {
    const front = mass * GRAVITY.value * (1 - rearShare) + (mass * deceleration * height - nose * overhang + push * coupling) / wheelbase
    return { front, rear: mass * GRAVITY.value + nose - front }
  },
)

/** Deceleration with a trailer that does not brake itself. */
export const decelerationWithTrailer = formula(
  {
    id: 'deceleration-with-trailer',
    label: 'Deceleration with an unbraked trailer',
    gives: deceleration('a_t', 'deceleration'),
    takes: { alone: deceleration('a', 'deceleration of the car alone'), mass: mass('m', 'car'), trailer: mass('m_t', 'trailer') },
    text: 'a_t = a · m / (m + m_t)',
    source: { work: 'un-r13-h', place: 'Annex 3, car with unbraked trailer', mark: 'from memory' },
    leavesOut: 'A car already at the limit of grip.',
    proof: {
      examples: [
        {
          takes: { alone: 6.43, mass: 1400, trailer: 750 },
          gives: 4.19,
          within: 0.005,
          source: hand('1400 kg and 750 kg: 6.43 becomes 4.19, below the 5.4 asked for'),
        },
        {
          takes: { alone: 7.68, mass: 1400, trailer: 750 },
          gives: 5,
          within: 0.005,
          source: hand('5.0 with the trailer needs 7.68 alone'),
        },
      ],
    },
  },
  ({ alone, mass, trailer }) => (alone * mass) / (mass + trailer),
)

/** Pull a train needs on a hill, and the grip the driven axle needs for it. */
export const trainOnHill = formula(
  {
    id: 'train-on-hill',
    label: 'Train on a hill',
    gives: {
      push: force('H', 'pull at the coupling'),
      pull: force('F', 'pull at the wheels'),
      front: { symbol: 'μ_F', unit: '1', label: 'grip needed, front drive', shows: 'ratio' },
      rear: { symbol: 'μ_R', unit: '1', label: 'grip needed, rear drive', shows: 'ratio' },
    },
    takes: {
      mass: mass('m', 'car, nose load not counted'),
      trailer: mass('m_t', 'trailer'),
      nose: mass('m_S', 'nose load'),
      slope: { symbol: 'p', unit: '1', label: 'slope', shows: 'slope' },
      rolling: { symbol: 'c_r', unit: '1', label: 'rolling resistance', shows: 'ratio' },
      rearShare: { symbol: 'ψ', unit: '1', label: 'static share on the rear axle', shows: 'share' },
      wheelbase: length('L', 'wheelbase'),
      height: length('h', 'height of the centre of mass'),
      overhang: length('c', 'coupling behind the rear axle'),
      coupling: length('h_c', 'coupling, above the ground'),
    },
    uses: [GRAVITY],
    text: [
      'θ = atan(p)',
      'q = sin(θ) + c_r · cos(θ)',
      'H = m_t · g · q',
      'F = (m + m_t) · g · q',
      'N_F = (m · g · ((1 − ψ) · L · cos(θ) − h · sin(θ)) − m_S · g · c · cos(θ) − H · h_c) / L',
      'N_R = (m + m_S) · g · cos(θ) − N_F',
      'μ_F = F / N_F',
      'μ_R = F / N_R',
    ].join('\n'),
    source: STATICS,
    proof: {
      examples: [
        {
          takes: {
            mass: 1700,
            trailer: 1200,
            nose: 75,
            slope: 0.12,
            rolling: 0.012,
            rearShare: 0.47,
            wheelbase: 2.6,
            height: 0.58,
            overhang: 1.1,
            coupling: 0.42,
          },
          gives: { push: 1542, pull: 3727, front: 0.48, rear: 0.392 },
          within: 0.6,
          source: hand('1700 kg and 1200 kg on 12 %'),
        },
        {
          takes: {
            mass: 1700,
            trailer: 0,
            nose: 0,
            slope: 0.12,
            rolling: 0.012,
            rearShare: 0.47,
            wheelbase: 2.6,
            height: 0.58,
            overhang: 1.1,
            coupling: 0.42,
          },
          gives: { front: 0.262, rear: 0.266 },
          within: 0.0006,
          source: hand('the same car alone'),
        },
      ],
    },
  },
  ({ mass, trailer, nose, slope, rolling, rearShare, wheelbase, height, overhang, coupling }) => {
    const angle = Math.atan(slope),
      sin = Math.sin(angle),
      cos = Math.cos(angle),
      q = sin + rolling * cos,
      g = GRAVITY.value
    const push = trailer * g * q,
      pull = (mass + trailer) * g * q
    const onFront =
      (mass * g * ((1 - rearShare) * wheelbase * cos - height * sin) - nose * g * overhang * cos - push * coupling) / wheelbase
    const onRear = (mass + nose) * g * cos - onFront
    return { push, pull, front: pull / onFront, rear: pull / onRear }
  },
)
