import { GRAVITY } from '../physics/gravity.ts'
import { formula } from '../working/formula.ts'
import { area, braking, caseCar, force, HANDBOOK, hand, length, mass, pressure, share, stance } from './symbols.ts'

const BAR = 1e5
const VALVE = { work: 'statics', place: 'pressure behind a valve with a knee' } as const
const knee = pressure('p_k', 'pressure at the knee of the valve')
const steep = { ...share('s', 'slope of the valve above its knee'), holds: [0, 1] } as const
const perPressure = {
  front: area('k_F', 'brake force over line pressure, front axle (1 N/bar is 0.1 cm²)'),
  rear: area('k_R', 'brake force over pressure at the brakes, rear axle'),
} as const

/** Pressure behind a valve that lets all through up to its knee and part of it above. */
export const pressureBehindValve = formula(
  {
    id: 'pressure-behind-valve',
    label: 'Pressure behind the valve',
    gives: pressure('p_R', 'pressure at the rear brakes'),
    takes: { pressure: pressure('p', 'line pressure'), knee, slope: steep },
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

/** The donor of the cases, and what it became. */
const donor = { mass: 1200, ...caseCar, front: 92 / BAR, rear: 52 / BAR, slope: 0.35 }
const converted = { ...donor, mass: 1420, rearShare: 0.53, height: 0.545 }
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
      front: share('f_F', 'grip used, front axle'),
      rear: share('f_R', 'grip used, rear axle'),
      rearForce: force('F_R', 'brake force, rear axle'),
    },
    takes: { pressure: pressure('p', 'line pressure'), knee, slope: steep, ...perPressure, mass: mass('m', 'mass'), ...stance },
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

const lock = (car: typeof donor, knee: number, grip: number, first: number, efficiency: number | undefined, place: string) =>
  ({
    takes: { ...car, knee: knee * BAR, grip },
    gives: efficiency === undefined ? { first } : { first, efficiency },
    within: 0.0005,
    source: hand(place),
  }) as const
/**
 * Braking at first lock behind a valve. Below the knee both axles brake with all pressure; above it the rear with part of it. Each axle's line pressure at
 * lock is worked out both ways: the one above the knee holds when the one below it would exceed the knee.
 */
export const firstLockThroughValve = formula(
  {
    id: 'first-lock-through-valve',
    label: 'Braking at first lock, behind a valve',
    gives: {
      front: braking('z_F', 'front axle locks at'),
      rear: braking('z_R', 'rear axle locks at'),
      first: braking('z', 'first lock at'),
      efficiency: share('e', 'part of the grip used'),
    },
    takes: {
      grip: { ...share('μ', 'grip'), holds: [0.15, 1] },
      knee,
      slope: steep,
      ...perPressure,
      mass: mass('m', 'mass'),
      ...stance,
    },
    uses: [GRAVITY],
    text: [
      'W = m · g',
      'χ = h / L',
      'K = k_F + k_R',
      'K_s = k_F + s · k_R',
      'c = (1 − s) · k_R · p_k',
      'p_a = μ · W · (1 − ψ) / (k_F − μ · χ · K)',
      'p_F = { ∞ if k_F ≤ μ · χ · K and k_F ≤ μ · χ · K_s; p_a if k_F > μ · χ · K and p_a ≤ p_k; μ · (W · (1 − ψ) + χ · c) / (k_F − μ · χ · K_s) if k_F > μ · χ · K_s; ∞ otherwise }',
      'p_b = μ · W · ψ / (k_R + μ · χ · K)',
      'p_R = { p_b if p_b ≤ p_k; (μ · W · ψ − c · (1 + μ · χ)) / (s · k_R + μ · χ · K_s) otherwise }',
      'z_F = (k_F · p_F + k_R · min(p_F, p_k + s · (p_F − p_k))) / W',
      'z_R = (k_F · p_R + k_R · min(p_R, p_k + s · (p_R − p_k))) / W',
      'z = min(z_F, z_R)',
      'e = z / μ',
    ].join('\n'),
    source: VALVE,
    leavesOut: `Knock-out pressure of the brakes and braking by motors. ${HANDBOOK}`,
    proof: {
      examples: [
        lock(donor, 30, 0.8, 0.754, 0.942, '1200 kg, knee at 30 bar, grip 0.8: the front axle locks first'),
        lock(converted, 30, 0.5, 0.409, 0.818, 'converted, 1420 kg, the valve left as it was, grip 0.5'),
        lock(converted, 30, 0.8, 0.665, 0.831, 'converted, the valve left as it was, grip 0.8'),
        lock(converted, 45, 0.5, 0.445, undefined, 'converted, its knee set to 45 bar, grip 0.5'),
        lock(converted, 45, 0.8, 0.711, undefined, 'converted, its knee set to 45 bar, grip 0.8'),
      ],
    },
  },
  ({ grip, knee, slope, front, rear, mass, rearShare, height, wheelbase }) => {
    const weight = mass * GRAVITY.value,
      moved = (grip * height) / wheelbase,
      all = front + rear,
      above = front + slope * rear,
      held = (1 - slope) * rear * knee
    const below = front > moved * all ? (grip * weight * (1 - rearShare)) / (front - moved * all) : Number.POSITIVE_INFINITY
    const past =
      front > moved * above ? (grip * weight * (1 - rearShare) + moved * held) / (front - moved * above) : Number.POSITIVE_INFINITY
    const atFront = below <= knee ? below : past
    const rearBelow = (grip * weight * rearShare) / (rear + moved * all)
    const atRear = rearBelow <= knee ? rearBelow : (grip * weight * rearShare - held * (1 + moved)) / (slope * rear + moved * above)
    const braking = (p: number): number => (front * p + rear * Math.min(p, knee + slope * (p - knee))) / weight
    const first = Math.min(braking(atFront), braking(atRear))
    return { front: braking(atFront), rear: braking(atRear), first, efficiency: first / grip }
  },
)
