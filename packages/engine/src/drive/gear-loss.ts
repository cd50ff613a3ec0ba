import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'

const torque = (symbol: string, label: string) => ({ symbol, unit: 'N·m', label }) as const
const speed = (symbol: string, label: string) => ({ symbol, unit: 'rad/s', label, shows: 'rotational speed' }) as const
const share = (symbol: string, label: string) => ({ symbol, unit: '1', label, shows: 'share' }) as const
const RISE = { symbol: 'b', unit: 'N·m·s', label: 'drag rising with speed' } as const
const REDUCER = { work: 'definition', place: 'a reduction gear with c 0.02, a 0.5 N·m, b 0.002 N·m·s, worked by hand' } as const

/** How much gear and bearing drag grows per speed of the motor: a straight line from standing to the motor's top speed. */
export const gearDragRise = formula(
  {
    id: 'gear-drag-rise',
    label: 'Rise of gear drag with speed',
    gives: RISE,
    takes: {
      still: torque('a', 'drag turned slowly'),
      atTop: torque('M_g', 'drag at the top speed of the motor'),
      topSpeed: speed('ω_max', 'top speed of the motor'),
    },
    text: 'b = (M_g − a) / ω_max',
    source: { work: 'definition', place: 'slope of a line' },
    leavesOut: 'Cold oil, its level, and seals that run in.',
    proof: { none: 'elementary' },
  },
  ({ still, atTop, topSpeed }) => (atTop - still) / topSpeed,
)

/**
 * What teeth under load let through. The efficiency of a driveline is stated at full load, where the drag without load is a small part of what is lost; the rest goes
 * with the load.
 */
export const efficiencyOfTeeth = formula(
  {
    id: 'efficiency-of-teeth',
    label: 'Efficiency without the drag',
    gives: share('η_z', 'what teeth under load let through'),
    takes: {
      efficiency: share('η', 'motor to wheels at full load'),
      still: torque('a', 'drag turned slowly'),
      rise: RISE,
      speed: speed('ω_b', 'base speed'),
      torque: torque('M_max', 'peak torque of the motor'),
    },
    text: 'η_z = min(1, η + (a + b · ω_b) / M_max)',
    source: { work: 'definition', place: 'loss of a gear: a share of the power and a drag, at peak torque and base speed' },
    proof: {
      examples: [
        { takes: { efficiency: 0.965, still: 0.5, rise: 0.002, speed: 500, torque: 100 }, gives: 0.98, within: 1e-12, source: REDUCER },
      ],
    },
  },
  ({ efficiency, still, rise, speed, torque }) => Math.min(1, efficiency + (still + rise * speed) / torque),
)

/** Lost between motor and wheels: a share of the power in teeth under load, and what gears and bearings drag whatever the load. */
export const gearLoss = formula(
  {
    id: 'gear-loss',
    label: 'Loss in gears and bearings',
    gives: { symbol: 'P_V', unit: 'W', label: 'loss' },
    takes: {
      torque: torque('M', 'torque of the motor'),
      speed: speed('ω', 'speed of the motor'),
      teeth: share('η_z', 'what teeth under load let through'),
      still: torque('a', 'drag turned slowly'),
      rise: RISE,
    },
    text: 'P_V = (1 − η_z) · M · ω + (a + b · ω) · ω',
    source: { work: 'definition', place: 'loss of a gear: a share of the power and a drag' },
    leavesOut: 'Temperature of the oil. A loss that falls with speed, as of some bearings.',
    proof: {
      examples: [
        { takes: { torque: 100, speed: 500, teeth: 0.98, still: 0.5, rise: 0.002 }, gives: 1750, within: 1e-9, source: REDUCER },
        { takes: { torque: 10, speed: 500, teeth: 0.98, still: 0.5, rise: 0.002 }, gives: 850, within: 1e-9, source: REDUCER },
      ],
    },
  },
  ({ torque, speed, teeth, still, rise }) => (1 - teeth) * torque * speed + (still + rise * speed) * speed,
)

/** Part of its peak torque a motor gives on a level road. */
export const LIGHT_LOAD = standard('light-load', 'part of its peak torque a motor gives on a level road', 's_L', 0.1, '1', {
  work: 'practice',
  place: 'cruising on a level road takes about a tenth of the peak torque',
  mark: 'common practice',
})
export const lightTorque = formula(
  {
    id: 'light-torque',
    label: 'Torque at light load',
    gives: torque('M_L', 'torque at light load'),
    takes: { torque: torque('M_max', 'peak torque of the motor') },
    uses: [LIGHT_LOAD],
    text: 'M_L = s_L · M_max',
    source: { work: 'definition', place: 'proportion' },
    proof: { none: 'proportion' },
  },
  ({ torque }) => LIGHT_LOAD.value * torque,
)
/** Efficiency behind a loss; nothing arrives where the loss takes all. */
export const efficiencyAtLoad = formula(
  {
    id: 'efficiency-at-load',
    label: 'Efficiency at a load',
    gives: share('η_L', 'efficiency there'),
    takes: {
      loss: { symbol: 'P_V', unit: 'W', label: 'loss' },
      torque: torque('M', 'torque of the motor'),
      speed: speed('ω', 'speed of the motor'),
    },
    text: 'η_L = max(0, 1 − P_V / (M · ω))',
    source: { work: 'definition', place: 'efficiency' },
    proof: {
      examples: [
        { takes: { loss: 1750, torque: 100, speed: 500 }, gives: 0.965, within: 1e-12, source: REDUCER },
        { takes: { loss: 850, torque: 10, speed: 500 }, gives: 0.83, within: 1e-12, source: REDUCER },
      ],
    },
  },
  ({ loss, torque, speed }) => Math.max(0, 1 - loss / (torque * speed)),
)
