import { formula } from '../working/formula.ts'
import { force, HANDBOOK, hand, length, moment, ratio, share } from './symbols.ts'

/** Force on the rack that turns both wheels at a stand. */
export const rackForce = formula(
  {
    id: 'rack-force',
    label: 'Force on the rack',
    gives: force('F', 'force on the rack'),
    takes: {
      moments: moment('M', 'moments of both wheels together'),
      arm: length('l', 'steering arm at the lock considered, 30 to 40 % shorter near full lock'),
      efficiency: { ...share('η', 'efficiency of rods and joints, 0.85 to 0.9'), holds: [0.6, 1] },
    },
    text: 'F = M / (l · η)',
    source: { work: 'statics', place: 'moment over arm; arm and efficiency are common practice' },
    leavesOut: 'Allow half as much again where nothing was measured (common practice).',
    proof: {
      examples: [
        {
          takes: { moments: 2 * 111.9 + 15.8, arm: 0.105, efficiency: 0.9 },
          gives: 2535,
          within: 1,
          source: hand('two tyres of 111.9 N·m and jacking of 15.8, arm 105 mm'),
        },
      ],
    },
  },
  ({ moments, arm, efficiency }) => moments / (arm * efficiency),
)

/** Torque and pull at the handwheel of a rack without assist: all of it with the assist dead. */
export const handwheelTorque = formula(
  {
    id: 'handwheel-torque',
    label: 'Torque at the handwheel',
    gives: { torque: moment('T', 'torque at the handwheel'), rim: force('F_h', 'pull at its rim') },
    takes: {
      force: force('F', 'force on the rack'),
      travel: length('C', 'travel of the rack in one turn'),
      efficiency: { ...share('η', 'efficiency of rack and column'), holds: [0.6, 1] },
      radius: length('R', 'radius of the handwheel'),
    },
    text: 'T = F · C / (2 · π · η)\nF_h = T / R',
    source: { work: 'statics', place: 'work in one turn' },
    leavesOut: 'Rolling at 10 km/h without assist takes 25 to 40 % of it (common practice): measure with a spring balance.',
    proof: {
      examples: [
        {
          takes: { force: 2535, travel: 0.05, efficiency: 0.9, radius: 0.19 },
          gives: { torque: 22.4 },
          within: 0.05,
          source: hand('2535 N, 50 mm in one turn'),
        },
        {
          takes: { force: 2535, travel: 0.05, efficiency: 0.9, radius: 0.19 },
          gives: { rim: 118 },
          within: 0.5,
          source: hand('2535 N, 50 mm in one turn, rim of 0.19 m'),
        },
        {
          takes: { force: 5000, travel: 0.044, efficiency: 0.9, radius: 0.19 },
          gives: { torque: 38.9 },
          within: 0.05,
          source: hand('5.0 kN, 44 mm in one turn'),
        },
      ],
    },
  },
  ({ force, travel, efficiency, radius }) => {
    const torque = (force * travel) / (2 * Math.PI * efficiency)
    return { torque, rim: torque / radius }
  },
)

/** Travel of a rack in one turn of the handwheel, from lock to lock. */
export const rackTravel = formula(
  {
    id: 'rack-travel',
    label: 'Travel of the rack in one turn',
    gives: length('C', 'travel of the rack in one turn'),
    takes: { all: length('s', 'travel from lock to lock'), turns: ratio('n', 'turns from lock to lock') },
    text: 'C = s / n',
    source: { work: 'definition', place: 'mean over the travel' },
    leavesOut: `Racks whose ratio changes with travel. ${HANDBOOK}`,
    proof: {
      examples: [
        { takes: { all: 0.149, turns: 2.98 }, gives: 0.05, within: 0.00005, source: hand('149 mm in 2.98 turns, read in a repair manual') },
        { takes: { all: 0.135, turns: 2.7 }, gives: 0.05, within: 0.00005, source: hand('135 mm in 2.70 turns, read in a repair manual') },
      ],
    },
  },
  ({ all, turns }) => all / turns,
)

/** Pull at the rim of a steering box with drop arm and knuckle arm. */
export const steeringBoxRim = formula(
  {
    id: 'steering-box-rim',
    label: 'Pull at the handwheel, steering box',
    gives: force('F_h', 'pull at the rim'),
    takes: {
      moments: moment('M', 'moments of both wheels together'),
      knuckle: length('l_k', 'arm at the knuckle'),
      drop: length('l_d', 'drop arm of the box'),
      ratio: ratio('i', 'ratio of the box'),
      efficiency: { ...share('η', 'efficiency of box and linkage'), holds: [0.3, 1] },
      radius: length('R', 'radius of the handwheel'),
    },
    text: 'F_h = M / l_k · l_d / (i · η · R)',
    source: { work: 'statics', place: 'levers and gear' },
    leavesOut: HANDBOOK,
    proof: {
      examples: [
        {
          takes: { moments: 1807.4, knuckle: 0.2, drop: 0.15, ratio: 20, efficiency: 0.7, radius: 0.25 },
          gives: 387,
          within: 0.5,
          source: hand('1807.4 N·m, arms 200 and 150 mm, ratio 20; data of a published exercise, its answer was not read'),
        },
      ],
    },
  },
  ({ moments, knuckle, drop, ratio, efficiency, radius }) => ((moments / knuckle) * drop) / (ratio * efficiency * radius),
)
