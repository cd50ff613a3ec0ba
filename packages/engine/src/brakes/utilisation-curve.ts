import { standard } from '../working/value.ts'

/** A car's brakes and stance as the curves over braking take them: everything over weight. */
export type Braked = {
  readonly below: number
  readonly above: number
  readonly knee: number
  readonly motors: number
  readonly motorsFront: number
  readonly rearShare: number
  readonly height: number
  readonly wheelbase: number
}
/** Where there is no valve: a knee that no braking reaches. */
export const NO_VALVE = standard('no-valve', 'no valve: a knee no braking reaches', 'z_k', 10, '1', {
  work: 'definition',
  place: 'ten times the weight',
})
/** A rear axle about to lift still counts as barely loaded, as a share of the weight. */
const LIFTING = 0.01

/**
 * Front brake force over weight at a braking z over weight, the motors’ part first.
 *
 * Below what the motors brake with alone they brake with less: φ = s·z. Above it the friction brakes add, with one share up to the knee of a valve and another beyond.
 * Source: definition of the shares; pressure behind a valve with a knee.
 */
function frontForce({ below, above, knee, motors, motorsFront }: Braked, z: number): number {
  const own = Math.min(z, motors),
    friction = z - own
  return motorsFront * own + below * Math.min(friction, knee) + above * Math.max(0, friction - knee)
}

/** Grip each axle uses at a braking z over weight: force over load of each axle, as UN R13-H Annex 5 defines it. */
export function utilisation(x: Braked, z: number): { readonly front: number; readonly rear: number } {
  const front = frontForce(x, z),
    moved = (z * x.height) / x.wheelbase
  return { front: front / (1 - x.rearShare + moved), rear: (z - front) / Math.max(LIFTING, x.rearShare - moved) }
}

/** Rear brake force over weight that goes with a front one, by the same brakes: the installed line of the force diagram. Below the motors’ own front force it is theirs. */
export function rearForce(x: Braked, front: number): number {
  const { below, above, knee, motors, motorsFront } = x,
    own = motorsFront * motors
  if (front < own) return motorsFront > 0 ? (front * (1 - motorsFront)) / motorsFront : 0
  const friction = front - own,
    bend = below * knee
  const rear = friction <= bend ? (friction * (1 - below)) / below : (1 - below) * knee + ((friction - bend) * (1 - above)) / above
  return rear + (1 - motorsFront) * motors
}

/** Rear brake force over weight of the ideal parabola at a front one: F = z·(1 − ψ + z·χ) solved for z. */
export function idealRear({ rearShare, height, wheelbase }: Pick<Braked, 'rearShare' | 'height' | 'wheelbase'>, front: number): number {
  const chi = height / wheelbase,
    still = 1 - rearShare
  const z = (Math.sqrt(still ** 2 + 4 * chi * front) - still) / (2 * chi)
  return z - front
}
/** Front axle about to lock on a grip: rear force over weight at a front one. Below nought the front locks by itself. */
export function frontLocks(
  { rearShare, height, wheelbase }: Pick<Braked, 'rearShare' | 'height' | 'wheelbase'>,
  grip: number,
  front: number,
): number {
  const moved = (grip * height) / wheelbase
  return (front * (1 - moved) - grip * (1 - rearShare)) / moved
}
/** Rear axle about to lock on a grip: rear force over weight at a front one. */
export function rearLocks(
  { rearShare, height, wheelbase }: Pick<Braked, 'rearShare' | 'height' | 'wheelbase'>,
  grip: number,
  front: number,
): number {
  const chi = height / wheelbase
  return (grip * (rearShare - front * chi)) / (1 + grip * chi)
}
