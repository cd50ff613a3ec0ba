import { root } from '../numerics/root.ts'
import { formula } from '../working/formula.ts'
import { STANDARD_GRAVITY } from './pull-plan.ts'

const kilogram = (symbol: string, label: string) => ({ symbol, unit: 'kg', label }) as const
const metre = (symbol: string, label: string) => ({ symbol, unit: 'm', label, shows: 'length' }) as const
const STEEPEST = 3
const HAND = {
  work: 'statics',
  place: 'worked by hand: 1700 kg, L 2.60 m, h 0.58 m, 47 % rear, nose 75 kg at 1.10 m, trailer 1200 kg coupled at 0.42 m, 12 %',
} as const
const towing = {
  carMass: 1775,
  front: 1700 * 0.53 - (75 * 1.1) / 2.6,
  rear: 1700 * 0.47 + (75 * 3.7) / 2.6,
  mass: 2900,
  height: (1700 * 0.58) / 1775,
  wheelbase: 2.6,
  coupling: 0.42,
  rolling: 0.012,
  centre: 'open',
} as const

type Start = {
  pulls: readonly number[]
  frontShare: readonly number[]
  carMass: number
  mass: number
  front: number
  rear: number
  height: number
  coupling: number
  wheelbase: number
  rolling: number
  grip: number
  centre: string
}
/** Pull that is left over on a slope once the car is to be held and moved: motors and grip of each axle against weight along the slope and rolling. */
function spare(x: Start, p: number): number {
  const g = STANDARD_GRAVITY,
    angle = Math.atan(p),
    sin = Math.sin(angle),
    cos = Math.cos(angle),
    q = sin + x.rolling * cos
  const moved = (x.carMass * g * sin * x.height + (x.mass - x.carMass) * g * q * x.coupling) / x.wheelbase
  const onFront = x.grip * Math.max(0, x.front * g * cos - moved),
    onRear = x.grip * Math.max(0, x.rear * g * cos + moved)
  let front = 0,
    rear = 0,
    linked = false
  for (const [u, pull] of x.pulls.entries()) {
    const s = x.frontShare[u] as number
    front += pull * s
    rear += pull * (1 - s)
    if (s > 0 && s < 1) linked = true
  }
  const all = front + rear
  const held =
    x.centre === 'locked'
      ? Math.min(all, onFront + onRear)
      : linked
        ? Math.min(all, (onFront / front) * all, (onRear / rear) * all)
        : Math.min(front, onFront) + Math.min(rear, onRear)
  return held - x.mass * g * q
}

/** The steepest hill on which a car pulls away: each axle gives what its motors and its grip allow, load moves to the rear with the slope and with a trailer's pull. */
export const steepestStart = formula(
  {
    id: 'steepest-start',
    label: 'Steepest hill start, axle by axle',
    gives: { symbol: 'p', unit: '1', label: 'slope', shows: 'slope' },
    takes: {
      pulls: { symbol: 'F_k', unit: 'N', label: 'pull of each unit', many: true },
      frontShare: { symbol: 's_k', unit: '1', label: 'share of it at the front axle', many: true },
      carMass: kilogram('m_c', 'mass of the car'),
      mass: kilogram('m', 'mass that moves, with trailer'),
      front: kilogram('m_F', 'front axle mass'),
      rear: kilogram('m_R', 'rear axle mass'),
      height: metre('h', 'height of the centre of mass'),
      coupling: metre('h_c', 'height of the coupling'),
      wheelbase: metre('L', 'wheelbase'),
      rolling: { symbol: 'c_r', unit: '1', label: 'rolling resistance', shows: 'ratio' },
      grip: { symbol: 'μ', unit: '1', label: 'grip', shows: 'ratio' },
      centre: { symbol: 'axles', oneOf: ['open', 'locked'], label: 'axles locked together or not' },
    },
    text: 'Σ min(F_axle, μ·N_axle(p)) = m·g·(sin θ + c_r·cos θ), θ = atan(p), solved for p',
    words: 'solved by trial for the slope',
    source: { work: 'statics', place: 'moments about the wheel contacts on a slope' },
    leavesOut: 'The push it takes to gather speed; a centre differential that locks only when a wheel slips.',
    proof: {
      examples: [
        { takes: { ...towing, pulls: [1e5], frontShare: [1], grip: 0.48 }, gives: 0.12, within: 0.0005, source: HAND },
        { takes: { ...towing, pulls: [1e5], frontShare: [0], grip: 0.392 }, gives: 0.12, within: 0.0005, source: HAND },
        {
          takes: { ...towing, pulls: [3727], frontShare: [0], grip: 1 },
          gives: 0.12,
          within: 0.0005,
          source: HAND,
          because: 'held by pull instead of grip',
        },
      ],
    },
  },
  x => {
    if (spare(x, 0) <= 0) return 0
    return root(p => spare(x, p), 0, STEEPEST, 1e-9) ?? STEEPEST
  },
)
