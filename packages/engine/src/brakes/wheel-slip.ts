import { formula } from '../working/formula.ts'
import { HANDBOOK, hand, inertia, length, ratio, share, speed, time, torque } from './symbols.ts'

/** Inertia of the wheels of a driven axle: the motor turns with them. It locks later than a free axle and is slower to turn again. */
export const drivenAxleInertia = formula(
  {
    id: 'driven-axle-inertia',
    label: 'Inertia of a driven axle',
    gives: inertia('J', 'at the wheels'),
    takes: {
      motor: inertia('J_m', 'motor'),
      ratio: ratio('i', 'ratio from motor to wheel'),
      wheels: inertia('J_w', 'both wheels together'),
    },
    text: 'J = J_m · i² + J_w',
    source: { work: 'statics', place: 'inertia through a gear' },
    leavesOut: `Shafts and gears. ${HANDBOOK}`,
    proof: {
      examples: [
        { takes: { motor: 0.05, ratio: 9, wheels: 2 }, gives: 6.05, within: 1e-9, source: hand('0.05 kg·m² at 9 to 1, two wheels of 1.0') },
      ],
    },
  },
  ({ motor, ratio, wheels }) => motor * ratio ** 2 + wheels,
)

/** How long wheels that brake harder than their grip take to a slip. Braking by motors should be out within 0.1 s of slip above 10 to 15 %. */
export const timeToSlip = formula(
  {
    id: 'time-to-slip',
    label: 'Time to a slip',
    gives: time('t', 'time from the limit of grip'),
    takes: {
      slip: share('λ', 'slip'),
      speed: speed('v', 'speed'),
      radius: length('r', 'rolling radius'),
      inertia: inertia('J', 'inertia of the axle at the wheels'),
      excess: torque('T_e', 'brake torque less what grip carries'),
    },
    text: 't = λ · (v / r) · J / T_e',
    source: { work: 'statics', place: 'a wheel slowed by the torque that grip does not carry' },
    leavesOut: `Grip that falls as slip grows, and the car slowing meanwhile. The 0.1 s and the 10 to 15 % are common practice. ${HANDBOOK}`,
    proof: {
      examples: (
        [
          [6.05, 0.187, 'with the motor, inertia 6.05 kg·m²'],
          [2, 0.062, 'without the motor, inertia 2.0 kg·m²'],
        ] as const
      ).map(([inertia, t, place]) => ({
        takes: { slip: 0.2, speed: 50 / 3.6, radius: 0.3, inertia, excess: 300 },
        gives: t,
        within: 0.0005,
        source: hand(`300 N·m too much at 50 km/h, ${place}`),
      })),
    },
  },
  ({ slip, speed, radius, inertia, excess }) => (slip * (speed / radius) * inertia) / excess,
)

/** Braking by motors faded out in a straight line with speed: how the car then slows and how hard it jerks at first. */
export const lowSpeedFade = formula(
  {
    id: 'low-speed-fade',
    label: 'Fading out of braking by motors at low speed',
    gives: { time: time('τ', 'time constant'), jerk: { symbol: 'j', unit: 'm/s³', label: 'jerk as it begins' } },
    takes: {
      from: speed('v_1', 'speed at which it begins'),
      to: speed('v_2', 'speed at which none is left'),
      deceleration: { symbol: 'a_0', unit: 'm/s²', label: 'deceleration by motors before', shows: 'acceleration' },
    },
    text: 'τ = (v_1 − v_2) / a_0\nj = a_0² / (v_1 − v_2)',
    source: { work: 'statics', place: 'torque in a straight line with speed' },
    leavesOut: 'Drag and friction brakes. Usual: from 8–15 to 2–5 km/h, jerk at most 2 to 3 m/s³ (common practice).',
    proof: {
      examples: [
        {
          takes: { from: 12 / 3.6, to: 4 / 3.6, deceleration: 1.5 },
          gives: { time: 1.48, jerk: 1.01 },
          within: 0.005,
          source: hand('from 12 to 4 km/h at 1.5 m/s²'),
        },
      ],
    },
  },
  ({ from, to, deceleration }) => ({ time: (from - to) / deceleration, jerk: deceleration ** 2 / (from - to) }),
)
