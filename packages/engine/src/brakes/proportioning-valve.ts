import { GRAVITY } from '../physics/gravity.ts'
import { formula } from '../working/formula.ts'
import { braking, force, HANDBOOK, hand, mass, pressure, ratio, stance } from './symbols.ts'
import { BAR, converted, donor, perPressure, VALVE, valve } from './valve-takes.ts'

/** Pressure behind a valve that lets all through up to its knee and part of it above. */
export const pressureBehindValve = formula(
  {
    id: 'pressure-behind-valve',
    label: 'Pressure behind the valve',
    gives: pressure('p_R', 'pressure at the rear brakes'),
    takes: { pressure: pressure('p', 'line pressure'), ...valve },
    text: 'p_R = min(p, p_k + s · (p − p_k))',
    source: VALVE,
    leavesOut: `Usual slope 0.25 to 0.45 (common practice). ${HANDBOOK}`,
    proof: {
      examples: [
        {
          takes: { pressure: 70 * BAR, knee: 30 * BAR, slope: 0.35 },
          gives: 44 * BAR,
          within: 1,
          source: hand('knee at 30 bar, slope 0.35, 70 bar'),
        },
        {
          takes: { pressure: 25 * BAR, knee: 30 * BAR, slope: 0.35 },
          gives: 25 * BAR,
          within: 1,
          source: hand('the same, below the knee'),
        },
      ],
    },
  },
  ({ pressure, knee, slope }) => Math.min(pressure, knee + slope * (pressure - knee)),
)

const NONE = 1000 * BAR
const atPressure = (car: typeof donor, knee: number, line: number, gives: [number, number, number], place: string) =>
  [
    {
      takes: { ...car, knee: knee * BAR, pressure: line * BAR },
      gives: { braking: gives[0], front: gives[1], rear: gives[2] },
      within: 0.0005,
      source: hand(place),
    },
  ] as const

/** Braking of a car at a line pressure through a valve, and the grip each axle uses. No valve: a knee no pressure reaches. */
export const brakingThroughValve = formula(
  {
    id: 'braking-through-valve',
    label: 'Braking at a line pressure',
    gives: {
      braking: braking(),
      front: ratio('f_F', 'grip used, front axle'),
      rear: ratio('f_R', 'grip used, rear axle'),
      rearForce: force('F_R', 'brake force, rear axle'),
    },
    takes: { pressure: pressure('p', 'line pressure'), ...valve, ...perPressure, mass: mass('m', 'mass'), ...stance },
    uses: [GRAVITY],
    text: [
      'χ = h / L',
      'p_R = min(p, p_k + s · (p − p_k))',
      'F_R = k_R · p_R',
      'z = (k_F · p + F_R) / (m · g)',
      'f_F = k_F · p / (m · g) / (1 − ψ + z · χ)',
      'f_R = F_R / (m · g) / (ψ − z · χ)',
    ].join('\n'),
    source: VALVE,
    leavesOut: `Knock-out pressure of the brakes and braking by motors. Look at the knee and at 0.8, kerb and laden. ${HANDBOOK}`,
    proof: {
      examples: [
        ...atPressure(donor, NONE / BAR, 60, [0.734, 0.677, 0.862], '1200 kg, 92 and 52 N/bar, no valve, 60 bar: the rear axle leads'),
        ...atPressure(
          donor,
          30,
          70,
          [0.742, 0.788, 0.636],
          'the same behind a valve with its knee at 30 bar, 70 bar: the front axle leads',
        ),
        ...atPressure(converted, NONE / BAR, 80, [0.827, 0.808, 0.8635], 'converted, 1420 kg, no valve, 80 bar: the rear axle leads'),
      ],
    },
  },
  ({ pressure, knee, slope, front, rear, mass, rearShare, height, wheelbase }) => {
    const weight = mass * GRAVITY.value,
      rearForce = rear * Math.min(pressure, knee + slope * (pressure - knee)),
      braking = (front * pressure + rearForce) / weight,
      moved = (braking * height) / wheelbase
    return {
      braking,
      front: (front * pressure) / weight / (1 - rearShare + moved),
      rear: rearForce / weight / (rearShare - moved),
      rearForce,
    }
  },
)
