import { GRAVITY } from '../physics/gravity.ts'
import { formula } from '../working/formula.ts'
import { angle, force, HANDBOOK, hand, length, mass, ratio, share, slope, torque } from './symbols.ts'

const LEVER = { work: 'statics', place: 'lever, cable, shoe and wheel' } as const
const cable = {
  lever: ratio('i_h', 'ratio of the lever'),
  cable: share('η', 'efficiency of the cables'),
  branches: { symbol: 'n', unit: '1', label: 'branches of the cable', shows: 'count' },
  shoe: ratio('i_s', 'ratio of the lever at the shoe'),
  factor: ratio('C', 'brake factor, one force on the shoes; a disc has twice its friction'),
  radius: length('r', 'radius of the drum'),
  wheel: length('R', 'rolling radius of the tyre'),
} as const
const rig = { lever: 6.5, cable: 0.75, branches: 2, shoe: 4, factor: 1.9, radius: 0.1, wheel: 0.298 }

/** Force it takes to hold a car, or a car with its trailer, on a hill. */
export const forceToHold = formula(
  {
    id: 'force-to-hold',
    label: 'Force to hold on a hill',
    gives: force('F', 'at the wheels'),
    takes: { mass: mass('m', 'what is held, the trailer with it'), slope: slope('p', 'slope') },
    uses: [GRAVITY],
    text: 'F = m · g · sin(atan(p))',
    source: { work: 'statics', place: 'weight down a slope' },
    leavesOut:
      'Rolling resistance. Cars: 20 % laden, and a whole train on 12 %, by UN R13-H Annex 3 (from memory); 16 % in the yearly UK test.',
    proof: {
      examples: (
        [
          [1700, 0.2, 3270, '1700 kg, 20 %'],
          [2450, 0.12, 2863, '1700 kg with a trailer of 750 kg, 12 %'],
          [3200, 0.12, 3739, '1700 kg with a trailer of 1500 kg, 12 %'],
        ] as const
      ).map(([mass, slope, gives, place]) => ({ takes: { mass, slope }, gives, within: 0.5, source: hand(place) })),
    },
  },
  ({ mass, slope }) => mass * GRAVITY.value * Math.sin(Math.atan(slope)),
)

/** What the hand at the lever holds, through cables and shoes. */
export const parkingBrakeHold = formula(
  {
    id: 'parking-brake-hold',
    label: 'Hold of the parking brake',
    gives: {
      cable: force('F_c', 'pull of one branch'),
      shoe: force('F_s', 'force on the shoes of one wheel'),
      torque: torque('T', 'torque of one wheel'),
      hold: force('F', 'hold of all wheels on it'),
    },
    takes: { hand: force('F_h', 'force at the lever'), ...cable },
    text: 'F_c = F_h · i_h · η / n\nF_s = F_c · i_s\nT = C · F_s · r\nF = n · T / R',
    source: LEVER,
    leavesOut:
      'Grip of the braked axle. At most 400 N by hand, 500 N by foot (UN R13-H, from memory). A motor without power holds nothing, and the gearbox may be gone.',
    proof: {
      examples: [
        {
          takes: { hand: 400, ...rig },
          gives: { cable: 975, shoe: 3900, torque: 741 },
          within: 0.5,
          source: hand('400 N at the lever, drums of 200 mm'),
        },
        { takes: { hand: 400, ...rig }, gives: { hold: 4973 }, within: 0.5, source: hand('400 N at the lever, tyre 0.298 m') },
      ],
    },
  },
  ({ hand, lever, cable, branches, shoe, factor, radius, wheel }) => {
    const pull = (hand * lever * cable) / branches,
      pressed = pull * shoe,
      torque = factor * pressed * radius
    return { cable: pull, shoe: pressed, torque, hold: (branches * torque) / wheel }
  },
)

/** Force at the lever that a hold takes. */
export const leverForce = formula(
  {
    id: 'lever-force',
    label: 'Force at the lever of the parking brake',
    gives: force('F_h', 'force at the lever'),
    takes: {
      hold: force('F', 'hold wanted'),
      lever: cable.lever,
      cable: cable.cable,
      shoe: cable.shoe,
      factor: cable.factor,
      radius: cable.radius,
      wheel: cable.wheel,
    },
    text: 'F_h = F · R / (C · r · i_s · η · i_h)',
    source: LEVER,
    proof: {
      examples: (
        [
          [3270, 263, '1700 kg on 20 %'],
          [3739, 301, '1700 kg with a trailer of 1500 kg on 12 %: the trailer governs'],
        ] as const
      ).map(([hold, gives, place]) => {
        const { branches: _, ...alone } = rig
        return { takes: { hold, ...alone }, gives, within: 0.5, source: hand(place) }
      }),
    },
  },
  ({ hold, lever, cable, shoe, factor, radius, wheel }) => (hold * wheel) / (factor * radius * shoe * cable * lever),
)

/** What bends leave of the pull of a cable. */
export const cableEfficiency = formula(
  {
    id: 'cable-efficiency',
    label: 'Efficiency of a cable',
    gives: share('η', 'efficiency'),
    takes: {
      friction: { ...ratio('μ', 'friction in the sheath: 0.12 lined and new, 0.15 to 0.25 old'), holds: [0, 0.4] },
      bends: angle('φ', 'all bends together'),
    },
    text: 'η = exp(−μ · φ)',
    source: { work: 'statics', place: 'rope round a bend; the frictions are common practice' },
    leavesOut: `Rust, kinks and stretch. ${HANDBOOK}`,
    proof: { examples: [{ takes: { friction: 0.12, bends: Math.PI }, gives: 0.686, within: 0.0005, source: hand('180° of bends, 0.12') }] },
  },
  ({ friction, bends }) => Math.exp(-friction * bends),
)
