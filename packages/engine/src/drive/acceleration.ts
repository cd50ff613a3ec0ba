import { formula } from '../working/formula.ts'
import { run } from './full-throttle.ts'
import { CAR, WINDING } from './pull-takes.ts'

const MPH = 0.44704,
  G = 9.80665
const larminie = {
  mass: 1540,
  front: 770,
  rear: 770,
  height: 0.5,
  wheelbase: 2.5,
  f0: 0.0048 * 1540 * G,
  f1: 0,
  f2: 0.5 * 1.25 * 0.19 * 1.8,
  headWind: 0,
  grip: 2,
  radius: 0.3,
  wheelsInertia: 20 * 0.09,
  torque: [140],
  power: [102e3],
  efficiency: [0.95],
  topSpeed: [1250],
  inertia: [0],
  ratios: [11],
  gears: [1],
  frontShare: [1],
  centre: 'open',
  shiftTime: [],
  ratedTorque: [],
  ratedPower: [],
  windingTime: [],
  start: 0,
  from: 0,
} as const
const BOOK = { work: 'larminie-lowry', place: '7.3, battery coupé, 102 kW', mark: 'from memory' } as const

/**
 * A run at full pull: speed, way and winding temperatures followed through torque and power of each motor, grip of each axle with the load the pull moves, turning parts, gear
 * changes, road load, and windings that fall back to their continuous rating once at their limit.
 */
export const fullThrottle = formula(
  {
    id: 'full-throttle',
    label: 'Run at full pull',
    gives: {
      time: { symbol: 't', unit: 's', label: 'time' },
      distance: { symbol: 's', unit: 'm', label: 'way', shows: 'distance' },
      speed: { symbol: 'v', unit: 'm/s', label: 'speed at the end', shows: 'speed' },
      warmest: { symbol: 'θ', unit: '1', label: 'warmest winding, 0 as the coolant, 1 at its limit', shows: 'share' },
      slipping: { symbol: 't_μ', unit: 's', label: 'time held back by grip' },
      rollout: { symbol: 't_1', unit: 's', label: 'time of the first foot' },
    },
    takes: {
      ...CAR,
      ...WINDING,
      from: { symbol: 'v_1', unit: 'm/s', label: 'from', shows: 'speed' },
      to: { symbol: 'v_2', unit: 'm/s', label: 'to', shows: 'speed' },
      travel: { symbol: 's_2', unit: 'm', label: 'or over', shows: 'distance' },
    },
    text: 'dv/dt = (Σ min(M, P/ω)·i·η/r limited by grip − f_0 − f_1·v − f_2·(v + v_w)²) / (m + (J_w + Σ J·i²·η) / r²), dθ/dt = (p − θ)/τ_w, followed from v_1 to v_2 or over s_2',
    words: 'a differential equation followed in steps of 0.1 s by the method of Runge and Kutta',
    source: { work: 'ehsani', place: 'vehicle performance, acceleration; turning parts counted as they are', mark: 'from memory' },
    leavesOut:
      'How the driver and a torque ramp shape the first tenths of a second, tyre slip, lift, pull at a coupling. Loss in the driveline is one share of power.',
    proof: {
      examples: [
        {
          takes: { ...larminie, to: 60 * MPH, travel: Number.POSITIVE_INFINITY },
          gives: { time: 9.15 },
          within: 0.14,
          source: BOOK,
          because: 'the book rounds ratio over radius: 9.1 to 9.2 s to 96 and 60 mph',
        },
        {
          takes: { ...larminie, to: 100 / 3.6, travel: Number.POSITIVE_INFINITY },
          gives: { time: 9.62 },
          within: 0.145,
          source: BOOK,
          because: '1.5 %: the book rounds ratio over radius',
        },
      ],
    },
  },
  x => {
    const { travel, ...plan } = x
    return run({ ...plan, distance: travel })
  },
)
/** The same at four times the step, for spread. */
export const fullThrottleCoarse = (x: Parameters<typeof fullThrottle>[0]): ReturnType<typeof fullThrottle> => {
  const { travel, ...plan } = x
  return run({ ...plan, distance: travel }, 0.4)
}
/** The clock of a drag strip starts after the first foot. */
export const clocked = formula(
  {
    id: 'clocked',
    label: 'Time on the clock',
    gives: { symbol: 't', unit: 's', label: 'time on the clock' },
    takes: {
      time: { symbol: 't_0', unit: 's', label: 'time from standstill' },
      rollout: { symbol: 't_1', unit: 's', label: 'time of the first foot' },
    },
    text: 't = t_0 − t_1',
    source: { work: 'practice', place: 'drag strip timing: one foot of rollout', mark: 'common practice' },
    proof: { none: 'definition' },
  },
  ({ time, rollout }) => time - rollout,
)
