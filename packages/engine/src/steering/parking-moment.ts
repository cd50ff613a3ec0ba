import { formula } from '../working/formula.ts'
import { force, GRIP, HANDBOOK, hand, moment, pressure, STEEP } from './symbols.ts'

const tyre = { grip: GRIP, load: force('W', 'load on the tyre'), pressure: pressure('p', 'tyre pressure') } as const
const GOUGH = { work: 'gough', place: 'moment of a tyre turned at a stand' } as const
const cases = [
  [3384, 220e3, 97.9, 110.5],
  [3384, 250e3, 91.9, 103.7],
  [4200, 220e3, 135.4, 152.8],
] as const
const place = (load: number, p: number): string => `${load} N on the tyre, ${p / 1000} kPa, grip 0.7`

/** Moment it takes to turn one tyre on the spot, by the usual estimate. It grows faster than load: 10 % more load takes 15 % more. */
export const parkingMoment = formula(
  {
    id: 'parking-moment',
    label: 'Parking moment of a tyre',
    gives: moment('M', 'moment of one tyre'),
    takes: tyre,
    text: 'M = μ · W^1.5 / (3 · √p)',
    source: GOUGH,
    leavesOut: `${STEEP}`,
    proof: {
      examples: [
        ...cases.map(([load, p, gives]) => ({
          takes: { grip: 0.7, load, pressure: p },
          gives,
          within: 0.05,
          source: hand(place(load, p)),
        })),
        {
          takes: { grip: 0.8, load: 345 * 9.80665, pressure: 220e3 },
          gives: 111.9,
          within: 0.05,
          source: hand('front axle of 690 kg, 220 kPa, grip 0.8'),
        },
        {
          takes: { grip: 0.7, load: 15e3, pressure: 450e3 },
          gives: 1278 / 2,
          within: 0.05,
          source: hand('two tyres singly under an axle of 30 kN, 450 kPa: 1278.0 N·m together'),
        },
      ],
    },
  },
  ({ grip, load, pressure }) => (grip * load ** 1.5) / (3 * Math.sqrt(pressure)),
)

/** The same by a round patch under even pressure: an eighth more. */
export const parkingMomentRound = formula(
  {
    id: 'parking-moment-round',
    label: 'Parking moment of a tyre, round patch',
    gives: moment('M', 'moment of one tyre'),
    takes: tyre,
    text: 'R = √(W / (π · p))\nM = 2 / 3 · μ · W · R',
    source: { work: 'statics', place: 'friction of a round patch under even pressure, a model Sharp and Granger use' },
    leavesOut: `A carcass that carries part of the load. ${STEEP} ${HANDBOOK}`,
    proof: {
      examples: cases.map(([load, p, , gives]) => ({
        takes: { grip: 0.7, load, pressure: p },
        gives,
        within: 0.05,
        source: hand(place(load, p)),
      })),
    },
  },
  ({ grip, load, pressure }) => (2 / 3) * grip * load * Math.sqrt(load / (Math.PI * pressure)),
)

/** The estimate as many books print it, with the load of the whole axle: √2 more than two tyres taken singly. Say which is used. */
export const parkingMomentOfAxle = formula(
  {
    id: 'parking-moment-of-axle',
    label: 'Parking moment of an axle, as books print it',
    gives: { axle: moment('M', 'moment by the axle load'), tyres: moment('M_2', 'moment of two tyres taken singly') },
    takes: { grip: GRIP, load: force('G', 'load on the axle'), pressure: pressure('p', 'tyre pressure') },
    text: 'M = μ / 3 · √(G^3 / p)\nM_2 = M / √2',
    source: GOUGH,
    leavesOut: `${STEEP} ${HANDBOOK}`,
    proof: {
      examples: [
        {
          takes: { grip: 0.7, load: 30e3, pressure: 450e3 },
          gives: { axle: 1807.4, tyres: 1278 },
          within: 0.05,
          source: hand('axle of 30 kN, 450 kPa, grip 0.7; data of a published exercise, its answer was not read'),
        },
      ],
    },
  },
  ({ grip, load, pressure }) => {
    const axle = (grip / 3) * Math.sqrt(load ** 3 / pressure)
    return { axle, tyres: axle / Math.SQRT2 }
  },
)
