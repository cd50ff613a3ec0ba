import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'
import { leastBraking } from './corridor.ts'
import { braking, caseCar, frontPart, hand, share, stance } from './symbols.ts'
import { type Braked, NO_VALVE, utilisation } from './utilisation-curve.ts'

const ANNEX_5 = { work: 'un-r13-h', place: 'Annex 5: order of locking between 0.15 and 0.8', mark: 'from memory' } as const
const FROM = standard('brake-order-from', 'Braking from which the order of locking is asked for', 'z_f', 0.15, '1', ANNEX_5)
const TO = standard('brake-order-to', 'Braking up to which the order of locking is asked for', 'z_t', 0.8, '1', ANNEX_5)

const takes = {
  below: { ...frontPart, symbol: 'β_1', label: 'share of the friction brakes at the front, below the knee of a valve' },
  above: share('β_2', 'share at the front of what is added above the knee'),
  knee: braking('z_k', 'braking at the knee; without a valve, one that is never reached'),
  motors: braking('z_m', 'braking by motors, over weight'),
  motorsFront: { ...share('s', 'share of the motors’ braking at the front'), holds: [0, 1] },
  ...stance,
} as const
const braked = (motors: number, motorsFront: number): Braked => ({
  below: 0.72,
  above: 0.72,
  knee: NO_VALVE.value,
  motors,
  motorsFront,
  ...caseCar,
})
const BAR_CAR = { below: 92 / 144, above: 92 / (92 + 0.35 * 52), knee: (30 * 144) / (1200 * 9.80665) }
/** One line of text for the front force and the lead of the front axle at one braking. */
const lead = (i: number): string =>
  [
    `b_${i} = z_${i} − z_m`,
    `φ_${i} = s · z_m + β_1 · min(b_${i}, z_k) + β_2 · max(0, b_${i} − z_k)`,
    `d_${i} = φ_${i} / (1 − ψ + z_${i} · χ) − (z_${i} − φ_${i}) / max(0.01, ψ − z_${i} · χ)`,
  ].join('\n')

/**
 * By how much the front axle leads in grip used, at the braking that decides over the whole range. The lead times both loads is the front force less the ideal one,
 * concave between the foot of the range, the knee and its end: where the front leads at these three it leads at all.
 */
export const leastLead = formula(
  {
    id: 'least-lead',
    label: 'Lead of the front axle in grip used',
    gives: { lead: share('d', 'grip used in front less grip used behind, where it decides'), at: braking('z', 'braking there') },
    takes,
    uses: [FROM, TO],
    text: [
      'χ = h / L',
      'z_1 = max(z_f, z_m)',
      'z_3 = max(z_1, z_t)',
      'z_2 = min(z_3, max(z_1, z_k + z_m))',
      lead(1),
      lead(2),
      lead(3),
      'd = min(d_1, d_2, d_3)',
      'z = { z_1 if d_1 ≤ d; z_2 if d_2 ≤ d; z_3 otherwise }',
    ].join('\n'),
    source: ANNEX_5,
    leavesOut: 'A rear axle about to lift counts as barely loaded. Cars whose anti-lock brakes watch the rear axle need not lead.',
    proof: {
      examples: [
        {
          takes: braked(0, 0),
          gives: { lead: 0.8148 - 0.7643, at: 0.8 },
          within: 0.0001,
          source: hand('1200 kg, 72 % at the front: 0.8148 and 0.7643 at 0.8'),
        },
        {
          takes: braked(0.05, 0),
          gives: { lead: 0.7639 - 0.8872, at: 0.8 },
          within: 0.0001,
          source: hand('the same with 0.05 by motors on the rear axle: 0.7639 and 0.8872 at 0.8'),
        },
        {
          takes: { ...BAR_CAR, motors: 0, motorsFront: 0, ...caseCar },
          gives: { lead: 0.3835 - 0.341, at: 0.3671 },
          within: 0.0005,
          source: hand('92 and 52 N/bar behind a valve at 30 bar: 0.3835 and 0.3410 at its knee, which decides'),
        },
      ],
    },
  },
  x => {
    const first = Math.max(FROM.value, x.motors),
      last = Math.max(first, TO.value),
      bend = Math.min(last, Math.max(first, x.knee + x.motors))
    let lead = Number.POSITIVE_INFINITY,
      at = first
    for (const z of [first, bend, last]) {
      const { front, rear } = utilisation(x, z)
      if (front - rear < lead) {
        lead = front - rear
        at = z
      }
    }
    return { lead, at }
  },
)

const STEP = 0.005
const GRIPS = [0.2, 0.8] as const
/**
 * Braking above the line of least braking, where it is least, for every grip from 0.2 to 0.8 that the axle that leads uses. Followed in steps of 0.005 of the weight; what the
 * motors brake with alone, before the pedal, is not on the line.
 */
export const leastAboveLine = formula(
  {
    id: 'least-above-line',
    label: 'Least braking above the line',
    gives: { room: share('r', 'braking above the line, least'), at: braking('z', 'braking there') },
    takes,
    uses: leastBraking.card.uses ?? [],
    text: 'r = least of z − (z_0 + b · (k − k_0)), k the greater grip used by an axle, over all z from z_m with k from 0.2 to 0.8',
    words: 'the least over a range is a search',
    source: { ...ANNEX_5, place: 'Annex 5: least braking by grip, laden and unladen' },
    leavesOut: 'Grip that differs left and right.',
    proof: {
      examples: [
        {
          takes: { ...braked(0.2, 1) },
          gives: { room: 0.2 - 0.2036, at: 0.2 },
          within: 0.0005,
          source: hand('0.20 by motors at the front alone: its wheels use 0.348, for which the line asks 0.2036'),
        },
      ],
    },
  },
  x => {
    let room = Number.POSITIVE_INFINITY,
      at = x.motors
    for (let i = 0; i <= 200; i++) {
      const z = Math.max(STEP, x.motors) + i * STEP,
        { front, rear } = utilisation(x, z),
        grip = Math.max(front, rear)
      if (grip < GRIPS[0] || grip > GRIPS[1]) continue
      const here = z - leastBraking({ grip })
      if (here < room) {
        room = here
        at = z
      }
    }
    // No braking at all within these grips: the motors alone ask for more than the greatest of them.
    return Number.isFinite(room) ? { room, at } : { room: -1, at: x.motors }
  },
)
