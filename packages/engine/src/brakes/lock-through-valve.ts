import { GRAVITY } from '../physics/gravity.ts'
import { formula } from '../working/formula.ts'
import { braking, hand, mass, ratio, share, stance } from './symbols.ts'
import { BAR, converted, donor, perPressure, VALVE, valve } from './valve-takes.ts'

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
      grip: { ...ratio('μ', 'grip'), holds: [0.15, 1] },
      ...valve,
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
      'p_F = { p_a if k_F > μ · χ · K and p_a ≤ p_k; μ · (W · (1 − ψ) + χ · c) / (k_F − μ · χ · K_s) if k_F > μ · χ · K_s; ∞ otherwise }',
      'p_b = μ · W · ψ / (k_R + μ · χ · K)',
      'p_R = { p_b if p_b ≤ p_k; (μ · W · ψ − c · (1 + μ · χ)) / (s · k_R + μ · χ · K_s) otherwise }',
      'z_F = { ∞ if p_F ≥ ∞; (k_F · p_F + k_R · min(p_F, p_k + s · (p_F − p_k))) / W otherwise }',
      'z_R = (k_F · p_R + k_R · min(p_R, p_k + s · (p_R − p_k))) / W',
      'z = min(z_F, z_R)',
      'e = z / μ',
    ].join('\n'),
    source: VALVE,
    leavesOut: 'Knock-out pressure of the brakes and braking by motors.',
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
    // A valve that holds its pressure, slope nought, has none times without limit to add.
    const braking = (p: number): number =>
      p === Number.POSITIVE_INFINITY ? p : (front * p + rear * Math.min(p, knee + slope * (p - knee))) / weight
    const first = Math.min(braking(atFront), braking(atRear))
    return { front: braking(atFront), rear: braking(atRear), first, efficiency: first / grip }
  },
)
