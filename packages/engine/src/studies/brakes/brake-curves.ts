import { allowedGrip } from '../../brakes/allowed-grip.ts'
import { type Braked, frontLocks, utilisation as gripUsed, idealRear, rearForce, rearLocks } from '../../brakes/utilisation-curve.ts'
import { type Gaps, isGaps, type Maker } from '../study.ts'
import { AT_KERB, type MotorBraking } from './motor-braking.ts'
import type { Under, Utilised } from './utilisation.ts'

const POINTS = 200
/** Braking over weight drawn up to. */
const TO = 1
/** Front brake force over weight drawn up to. */
const FORCE_TO = 0.9

const brakedOf = (u: Under, motors = 0, motorsFront = 0): Braked => ({
  below: u.below.value,
  above: u.above.value,
  knee: u.knee.value,
  motors,
  motorsFront,
  rearShare: u.rearShare.value,
  height: u.height.value,
  wheelbase: u.wheelbase.value,
})
const motorsOf = (item: string, motors: MotorBraking | Gaps): readonly [number, number] | undefined => {
  const braking = isGaps(motors) ? undefined : motors.cases[item]
  return braking && !isGaps(braking) && !isGaps(motors) && braking.braking.value > 0
    ? [braking.braking.value, motors.frontShare.value]
    : undefined
}
const axis = (to: number): Float64Array => Float64Array.from({ length: POINTS + 1 }, (_, i) => (to * i) / POINTS)

/** Grip used by each axle over braking, under one load, with the most the line of least braking lets an axle use. */
export function drawGrip(make: Maker, item: string, { under }: Utilised, motors: MotorBraking | Gaps): void {
  const values = axis(TO),
    over = (f: (z: number) => number): Float64Array => Float64Array.from(values, f),
    series = (name: string, label: string, y: Float64Array, leading = false) => ({
      name,
      label,
      unit: '1',
      shows: 'ratio' as const,
      values: y,
      ...(leading ? { leading: true as const } : {}),
    })
  const friction = brakedOf(under),
    with_ = motorsOf(item, motors),
    both = with_ && brakedOf(under, ...with_)
  make.trace(
    'grip',
    {
      label: `Grip used by each axle, ${item}`,
      axis: { label: 'braking over weight', unit: '1', values },
      series: [
        series(
          'front',
          'front axle',
          over(z => gripUsed(friction, z).front),
          true,
        ),
        series(
          'rear',
          'rear axle',
          over(z => gripUsed(friction, z).rear),
          true,
        ),
        ...(both
          ? [
              series(
                'front with motors',
                'front axle, motors braking',
                over(z => gripUsed(both, z).front),
              ),
              series(
                'rear with motors',
                'rear axle, motors braking',
                over(z => gripUsed(both, z).rear),
              ),
            ]
          : []),
        series('allowed', 'most the line lets an axle use', over(allowedGrip)),
      ],
    },
    item,
  )
}

/** Rear brake force over front brake force, both over weight: the ideal parabola of each load, what is installed, and where axles lock on dry, wet and snow. */
export function drawForces(
  make: Maker,
  cases: Readonly<Record<string, Utilised | Gaps>>,
  motors: MotorBraking | Gaps,
  grips: readonly { readonly surface: string; readonly grip: number }[],
): void {
  const kerb = cases[AT_KERB]
  if (!kerb || isGaps(kerb)) return
  const values = axis(FORCE_TO),
    over = (f: (front: number) => number): Float64Array => Float64Array.from(values, f),
    series = (name: string, label: string, y: Float64Array, leading = false) => ({
      name,
      label,
      unit: '1',
      shows: 'ratio' as const,
      values: y,
      ...(leading ? { leading: true as const } : {}),
    })
  const stand = brakedOf(kerb.under),
    with_ = motorsOf(AT_KERB, motors)
  make.trace('forces', {
    label: 'Brake force in front and behind, over weight',
    axis: { label: 'front brake force over weight', unit: '1', values },
    series: [
      ...Object.entries(cases).flatMap(([name, c]) =>
        isGaps(c)
          ? []
          : [
              series(
                `ideal ${name}`,
                `ideal, ${name}`,
                over(f => idealRear(brakedOf(c.under), f)),
              ),
            ],
      ),
      series(
        'installed',
        'friction brakes',
        over(f => rearForce(stand, f)),
        true,
      ),
      ...(with_
        ? [
            series(
              'with motors',
              'with motors braking',
              over(f => rearForce(brakedOf(kerb.under, ...with_), f)),
              true,
            ),
          ]
        : []),
      ...grips.flatMap(({ surface, grip }) => [
        series(
          `front locks ${surface}`,
          `front locks, ${surface}`,
          over(f => frontLocks(stand, grip, f)),
        ),
        series(
          `rear locks ${surface}`,
          `rear locks, ${surface}`,
          over(f => rearLocks(stand, grip, f)),
        ),
      ]),
    ],
  })
}
