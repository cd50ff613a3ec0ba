import { formula } from '../working/formula.ts'
import { area, force, HANDBOOK, hand, length, pressure, ratio, torque } from './symbols.ts'

const BAR = 1e5
const piston = (d: number): number => (Math.PI / 4) * d ** 2
const FRICTION = { ...ratio('μ', 'friction of the pads'), holds: [0.1, 0.6] } as const

/** Radius at which the friction of a pad acts: pads run in wear evenly, new pads press evenly. */
export const effectiveRadius = formula(
  {
    id: 'effective-radius',
    label: 'Effective radius of a brake disc',
    gives: { worn: length('r_1', 'pads run in'), fresh: length('r_2', 'pads new') },
    takes: { outer: length('d_o', 'outer diameter the pads rub on'), inner: length('d_i', 'inner diameter the pads rub on') },
    text: 'r_o = d_o / 2\nr_i = d_i / 2\nr_1 = (r_o + r_i) / 2\nr_2 = 2 / 3 · (r_o³ − r_i³) / (r_o² − r_i²)',
    source: { work: 'statics', place: 'friction over a ring, even wear and even pressure' },
    leavesOut: `Pads narrower at one end. ${HANDBOOK}`,
    proof: {
      examples: [
        {
          takes: { outer: 0.26, inner: 0.17 },
          gives: { worn: 0.1075, fresh: 0.1091 },
          within: 0.00005,
          source: hand('rubbed from 170 to 260 mm'),
        },
      ],
    },
  },
  ({ outer, inner }) => {
    const o = outer / 2,
      i = inner / 2
    return { worn: (o + i) / 2, fresh: ((2 / 3) * (o ** 3 - i ** 3)) / (o ** 2 - i ** 2) }
  },
)

/** Torque of one disc brake. The pistons of one side count, whether the caliper is fixed or slides. */
export const discTorque = formula(
  {
    id: 'disc-torque',
    label: 'Torque of a disc brake',
    gives: torque('T', 'torque of one wheel'),
    takes: {
      friction: FRICTION,
      pressure: pressure('p', 'line pressure'),
      knockOut: pressure('p_0', 'pressure at which the pads begin to press'),
      pistons: area('A', 'pistons of one side'),
      radius: length('r', 'effective radius'),
    },
    text: 'T = 2 · μ · max(0, p − p_0) · A · r',
    source: { work: 'statics', place: 'two faces of a disc' },
    leavesOut: `Fade and wet pads. The pads begin to press at 0.3 to 1 bar (common practice). ${HANDBOOK}`,
    proof: {
      examples: [
        {
          takes: { friction: 0.38, pressure: 60 * BAR, knockOut: 0.5 * BAR, pistons: piston(0.054), radius: 0.11 },
          gives: 1139.2,
          within: 0.05,
          source: hand('piston 54 mm, 60 bar'),
        },
      ],
    },
  },
  ({ friction, pressure, knockOut, pistons, radius }) => 2 * friction * Math.max(0, pressure - knockOut) * pistons * radius,
)

/** Brake force of an axle with two disc brakes. */
export const discAxleForce = formula(
  {
    id: 'disc-axle-force',
    label: 'Brake force of an axle with discs',
    gives: force('F', 'brake force of the axle'),
    takes: {
      friction: FRICTION,
      pressure: pressure('p', 'line pressure'),
      piston: length('d', 'diameter of the piston of one side'),
      radius: length('r', 'effective radius'),
      wheel: length('R', 'rolling radius of the tyre'),
    },
    text: 'A = π / 4 · d²\nF = 2 · 2 · μ · p · A · r / R',
    source: { work: 'statics', place: 'two wheels, two faces' },
    leavesOut: `The pressure at which the pads begin to press. ${HANDBOOK}`,
    proof: {
      examples: (
        [
          [0.054, 0.11, 5312],
          [0.034, 0.115, 2201],
        ] as const
      ).map(([d, radius, gives]) => ({
        takes: { friction: 0.38, pressure: (500 * 4 * 0.8) / piston(0.0222), piston: d, radius, wheel: 0.298 },
        gives,
        within: 0.5,
        source: hand(`500 N on the pedal without assist, piston ${d * 1000} mm`),
      })),
    },
  },
  ({ friction, pressure, piston, radius, wheel }) => (2 * 2 * friction * pressure * (Math.PI / 4) * piston ** 2 * radius) / wheel,
)
