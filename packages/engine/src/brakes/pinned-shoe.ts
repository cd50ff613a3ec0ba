import { formula } from '../working/formula.ts'
import { angle, force, HANDBOOK, length, pressure, ratio, torque } from './symbols.ts'

const SHIGLEY = {
  work: 'shigley',
  place: 'ch. 16, problem 16-1: drum 300 mm, pivot at 125 mm, lining 40 mm over 0 to 120°, 2.2 kN each, friction 0.28',
} as const
const problem = { friction: 0.28, radius: 0.15, pivot: 0.125, arm: 0.2165, from: 0, to: (120 * Math.PI) / 180, force: 2200, width: 0.04 }
const worked = (gives: object, within: number) =>
  ({
    takes: problem,
    gives,
    within,
    source: SHIGLEY,
    because: 'greatest pressure of the leading shoe read in the book, the rest worked by hand; the arm is rounded to 0.1 mm',
  }) as const

/** A shoe that turns about a pin, exactly: torque and greatest pressure, when it leads and when it trails. Pressure follows the sine of the angle from the pin. */
export const pinnedShoe = formula(
  {
    id: 'pinned-shoe',
    label: 'Drum brake, shoes on pins',
    gives: {
      leading: ratio('S_1', 'shoe factor, leading'),
      trailing: ratio('S_2', 'shoe factor, trailing'),
      leadingTorque: torque('T_1', 'torque, leading'),
      trailingTorque: torque('T_2', 'torque, trailing'),
      leadingPressure: pressure('p_1', 'greatest pressure, leading'),
      trailingPressure: pressure('p_2', 'greatest pressure, trailing'),
    },
    takes: {
      friction: { ...ratio('μ', 'friction of the linings'), holds: [0.1, 0.5] },
      radius: length('r', 'radius of the drum'),
      pivot: length('a', 'pin from the centre of the drum'),
      arm: length('h', 'pin from the line of force'),
      from: { ...angle('θ_1', 'angle from the pin to the start of the lining'), holds: [0, 0.6] },
      to: { ...angle('θ_2', 'angle from the pin to the end of the lining'), holds: [1.6, 2.6] },
      force: force('F', 'force on the shoe'),
      width: length('b', 'width of the lining'),
    },
    text: [
      'A = cos(θ_1) − cos(θ_2)',
      'B = (θ_2 − θ_1) / 2 − (sin(2 · θ_2) − sin(2 · θ_1)) / 4',
      'D = r · A − a · (sin(θ_2)² − sin(θ_1)²) / 2',
      'S_1 = μ · h · A / (a · B − μ · D)',
      'S_2 = μ · h · A / (a · B + μ · D)',
      'T_1 = S_1 · r · F',
      'T_2 = S_2 · r · F',
      'p_1 = T_1 / (μ · b · r² · A)',
      'p_2 = T_2 / (μ · b · r² · A)',
    ].join('\n'),
    source: { work: 'shigley', place: 'ch. 16, internal expanding rim brakes' },
    leavesOut: `Shoes and drum that give. The greatest pressure is that at 90° from the pin, which the lining must pass. ${HANDBOOK}`,
    proof: {
      examples: [
        worked({ leadingPressure: 734.5e3, trailingPressure: 382e3 }, 100),
        worked({ leadingTorque: 277.6, trailingTorque: 144.4 }, 0.05),
        worked({ leading: 0.841, trailing: 0.438 }, 0.0005),
      ],
    },
  },
  ({ friction, radius, pivot, arm, from, to, force, width }) => {
    const a = Math.cos(from) - Math.cos(to),
      b = (to - from) / 2 - (Math.sin(2 * to) - Math.sin(2 * from)) / 4,
      d = radius * a - (pivot * (Math.sin(to) ** 2 - Math.sin(from) ** 2)) / 2
    const leading = (friction * arm * a) / (pivot * b - friction * d),
      trailing = (friction * arm * a) / (pivot * b + friction * d)
    const pressed = (factor: number): number => (factor * radius * force) / (friction * width * radius ** 2 * a)
    return {
      leading,
      trailing,
      leadingTorque: leading * radius * force,
      trailingTorque: trailing * radius * force,
      leadingPressure: pressed(leading),
      trailingPressure: pressed(trailing),
    }
  },
)
