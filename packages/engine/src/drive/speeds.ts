import { formula } from '../working/formula.ts'

const KINEMATICS = { work: 'definition', place: 'rolling without slip' } as const
const metre = { symbol: 'r', unit: 'm', label: 'rolling radius', shows: 'length' } as const
const ratio = { symbol: 'i', unit: '1', label: 'total ratio', shows: 'ratio' } as const
const turning = (symbol: string, label: string) => ({ symbol, unit: 'rad/s', label, shows: 'rotational speed' }) as const
const road = (symbol: string, label: string) => ({ symbol, unit: 'm/s', label, shows: 'speed' }) as const
const OWN = { work: 'statics', place: 'worked by hand: rolling radius 0.305 m, 9000 rpm, 140 km/h' } as const

export const roadSpeed = formula(
  {
    id: 'road-speed',
    label: 'Road speed at a motor speed',
    gives: road('v', 'road speed'),
    takes: { speed: turning('ω', 'motor speed'), radius: metre, ratio },
    text: 'v = ω · r / i',
    source: KINEMATICS,
    leavesOut: 'Slip of the tyre under pull: one or two per cent.',
    proof: {
      examples: [{ takes: { speed: 150 * 2 * Math.PI, radius: 0.305, ratio: 7.392 }, gives: 140 / 3.6, within: 0.005, source: OWN }],
    },
  },
  ({ speed, radius, ratio }) => (speed * radius) / ratio,
)
export const motorSpeed = formula(
  {
    id: 'motor-speed',
    label: 'Motor speed at a road speed',
    gives: turning('ω', 'motor speed'),
    takes: { speed: road('v', 'road speed'), radius: metre, ratio },
    text: 'ω = v · i / r',
    source: KINEMATICS,
    leavesOut: 'Slip of the tyre under pull.',
    proof: {
      examples: [
        {
          takes: { speed: 100 / 3.6, radius: (3.05 * 0.6345) / (2 * Math.PI), ratio: 9 },
          gives: (7751 * 2 * Math.PI) / 60,
          within: 0.1,
          source: { work: 'etrto', place: '195/65 R15, ratio 9, 100 km/h: 7751 rpm', mark: 'from memory' },
        },
      ],
    },
  },
  ({ speed, radius, ratio }) => (speed * ratio) / radius,
)
/** The ratio at which a motor speed and a road speed belong together. */
export const ratioForSpeed = formula(
  {
    id: 'ratio-for-speed',
    label: 'Ratio that joins a motor speed and a road speed',
    gives: ratio,
    takes: { speed: turning('ω', 'motor speed'), radius: metre, roadSpeed: road('v', 'road speed') },
    text: 'i = ω · r / v',
    source: { work: 'ehsani', place: 'gear ratio from maximum speed', mark: 'from memory' },
    proof: {
      examples: [{ takes: { speed: 300 * Math.PI, radius: 0.305, roadSpeed: 140 / 3.6 }, gives: 7.392, within: 0.0005, source: OWN }],
    },
  },
  ({ speed, radius, roadSpeed }) => (speed * radius) / roadSpeed,
)
/** The ratio at which a torque makes the pull that is needed. */
export const ratioForPull = formula(
  {
    id: 'ratio-for-pull',
    label: 'Ratio that makes a pull',
    gives: ratio,
    takes: {
      force: { symbol: 'F', unit: 'N', label: 'pull needed' },
      others: { symbol: 'F_o', unit: 'N', label: 'of which other units give' },
      radius: metre,
      torque: { symbol: 'M', unit: 'N·m', label: 'torque' },
      efficiency: { symbol: 'η', unit: '1', label: 'motor to wheels', shows: 'share' },
    },
    text: 'i = max(0, F − F_o) · r / (M · η)',
    source: { work: 'ehsani', place: 'gear ratio from gradeability', mark: 'from memory' },
    proof: {
      examples: [
        {
          takes: { force: 3969, others: 0, radius: 0.305, torque: 220, efficiency: 0.95 },
          gives: 5.792,
          within: 0.0005,
          source: { work: 'statics', place: 'worked by hand: 1350 kg on 30 %, 220 N·m' },
        },
      ],
    },
  },
  ({ force, others, radius, torque, efficiency }) => (Math.max(0, force - others) * radius) / (torque * efficiency),
)
/** Pull of one unit at a road speed. */
export const pullAtSpeed = formula(
  {
    id: 'pull-at-speed',
    label: 'Pull at a speed',
    gives: { symbol: 'F', unit: 'N', label: 'pull' },
    takes: {
      torque: { symbol: 'M', unit: 'N·m', label: 'torque' },
      power: { symbol: 'P', unit: 'W', label: 'power' },
      ratio,
      efficiency: { symbol: 'η', unit: '1', label: 'motor to wheels', shows: 'share' },
      radius: metre,
      speed: road('v', 'road speed'),
    },
    text: 'F = min(M · i / r, P / v) · η',
    source: { work: 'gillespie', place: 'ch. 2, tractive force', mark: 'from memory' },
    leavesOut: 'Top speed of the motor.',
    proof: { none: 'the lesser of torque at the wheel and power over speed' },
  },
  ({ torque, power, ratio, efficiency, radius, speed }) => Math.min((torque * ratio) / radius, power / speed) * efficiency,
)
/** Road load on the level at a speed. */
export const roadLoadAt = formula(
  {
    id: 'road-load-at',
    label: 'Road load at a speed',
    gives: { symbol: 'F_r', unit: 'N', label: 'road load' },
    takes: {
      f0: { symbol: 'f_0', unit: 'N', label: 'constant part' },
      f1: { symbol: 'f_1', unit: 'N·s/m', label: 'part rising with speed' },
      f2: { symbol: 'f_2', unit: 'N·s²/m²', label: 'part rising with speed squared' },
      headWind: { symbol: 'v_w', unit: 'm/s', label: 'head wind', shows: 'speed' },
      speed: road('v', 'road speed'),
    },
    text: 'F_r = f_0 + f_1 · v + f_2 · (v + v_w) · abs(v + v_w)',
    source: { work: 'gillespie', place: 'ch. 4, road load', mark: 'from memory' },
    proof: { none: 'definition of the coefficients' },
  },
  ({ f0, f1, f2, headWind, speed }) => f0 + f1 * speed + f2 * (speed + headWind) * Math.abs(speed + headWind),
)
/** What a climb at a steady speed needs: road load on the level, and the weight along the slope. */
export const climbForce = formula(
  {
    id: 'climb-force',
    label: 'Pull a climb needs',
    gives: { symbol: 'F', unit: 'N', label: 'pull needed' },
    takes: {
      level: { symbol: 'F_r', unit: 'N', label: 'road load on the level' },
      mass: { symbol: 'm', unit: 'kg', label: 'mass' },
      rolling: { symbol: 'c_r', unit: '1', label: 'rolling resistance', shows: 'ratio' },
      slope: { symbol: 'p', unit: '1', label: 'slope', shows: 'slope' },
      gravity: { symbol: 'g', unit: 'm/s²', label: 'acceleration of free fall' },
    },
    text: 'θ = atan(p)\nF = F_r + m · g · (sin(θ) − c_r · (1 − cos(θ)))',
    source: { work: 'statics', place: 'inclined plane' },
    proof: {
      examples: [
        {
          takes: { level: 0.013 * 1350 * 9.80665, mass: 1350, rolling: 0.013, slope: 0.3, gravity: 9.80665 },
          gives: 3969,
          within: 0.1,
          source: { work: 'statics', place: 'worked by hand: 1350 kg on 30 %' },
        },
      ],
    },
  },
  ({ level, mass, rolling, slope, gravity }) => {
    const angle = Math.atan(slope)
    return level + mass * gravity * (Math.sin(angle) - rolling * (1 - Math.cos(angle)))
  },
)

/** A slope counts only at speeds at which motor and gearbox input may turn. */
export const slopeBelowSpeed = formula(
  {
    id: 'slope-below-speed',
    label: 'Slope climbed below the fastest speed allowed',
    gives: { symbol: 'p', unit: '1', label: 'slope', shows: 'slope' },
    takes: {
      slope: { symbol: 'p_F', unit: '1', label: 'slope by pull', shows: 'slope' },
      speed: road('v', 'road speed'),
      fastest: road('v_max', 'fastest that motor and gearbox input allow'),
    },
    text: 'p = p_F · max(0, min(1, (1.01 · v_max − v) / (0.01 · v_max)))',
    source: { work: 'practice', place: 'inverters take torque back at the top speed of the motor', mark: 'common practice' },
    leavesOut: 'How an inverter takes the torque back: here over a hundredth of the speed, so that the answer has no step.',
    proof: {
      examples: [
        {
          takes: { slope: 0.08, speed: 100 / 3.6, fastest: 62 / 3.6 },
          gives: 0,
          within: 1e-12,
          source: { work: 'definition', place: 'beyond the fastest speed nothing is climbed' },
        },
        {
          takes: { slope: 0.08, speed: 50.25, fastest: 50 },
          gives: 0.04,
          within: 1e-12,
          source: { work: 'definition', place: 'half way through the last hundredth: half the slope' },
        },
      ],
    },
  },
  ({ slope, speed, fastest }) => slope * Math.max(0, Math.min(1, (1.01 * fastest - speed) / (0.01 * fastest))),
)

/** The slowest of several limits governs. */
export const leastSpeed = formula(
  {
    id: 'least-speed',
    label: 'Speed by the tightest limit',
    gives: road('v', 'speed'),
    takes: { limits: { ...road('v_k', 'speed by one limit'), many: true } },
    text: 'v = min(v_k)',
    source: { work: 'definition', place: 'the least governs' },
    proof: { none: 'definition' },
  },
  ({ limits }) => Math.min(...limits),
)
/** Turns of a speedometer driven behind the gearbox for one turn of the wheels, against before. */
export const axleRatioChange = formula(
  {
    id: 'axle-ratio-change',
    label: 'Axle ratio against before',
    gives: { symbol: 'i_s', unit: '1', label: 'ratio against before', shows: 'ratio' },
    takes: {
      now: { symbol: 'i_ax', unit: '1', label: 'axle ratio now', shows: 'ratio' },
      before: { symbol: 'i_ax0', unit: '1', label: 'axle ratio before', shows: 'ratio' },
    },
    text: 'i_s = i_ax / i_ax0',
    source: { work: 'definition', place: 'kinematics of the speedometer drive' },
    proof: { none: 'definition' },
  },
  ({ now, before }) => now / before,
)
/** Torque a unit gives when all carry a pull in proportion to what they could. */
export const torqueInShare = formula(
  {
    id: 'torque-in-share',
    label: 'Torque for its share of a pull',
    gives: { symbol: 'M', unit: 'N·m', label: 'torque' },
    takes: {
      full: { symbol: 'M_f', unit: 'N·m', label: 'torque it could give' },
      need: { symbol: 'F', unit: 'N', label: 'pull needed' },
      all: { symbol: 'F_f', unit: 'N', label: 'pull all could give' },
    },
    text: 'M = M_f · F / F_f',
    source: { work: 'definition', place: 'proportion' },
    proof: { none: 'definition' },
  },
  ({ full, need, all }) => (full * need) / all,
)

const ratios = { symbol: 'i_k', unit: '1', label: 'ratio by one goal', shows: 'ratio', many: true } as const
/** The tallest ratio that every goal still allows: the greatest of the least. */
export const greatestRatio = formula(
  {
    id: 'greatest-ratio',
    label: 'Tallest ratio that meets every goal',
    gives: ratio,
    takes: { ratios },
    text: 'i = max(i_k)',
    source: { work: 'definition', place: 'every goal must be met' },
    proof: { none: 'definition' },
  },
  ({ ratios }) => Math.max(...ratios),
)
/** The shortest ratio that every goal still allows: the least of the greatest. */
export const leastRatio = formula(
  {
    id: 'least-ratio',
    label: 'Shortest ratio that meets every goal',
    gives: ratio,
    takes: { ratios },
    text: 'i = min(i_k)',
    source: { work: 'definition', place: 'every goal must be met' },
    proof: { none: 'definition' },
  },
  ({ ratios }) => Math.min(...ratios),
)
/** A ratio asked for in one range of the transfer case, said for the range the car is usually in. */
export const ratioInUsualRange = formula(
  {
    id: 'ratio-in-usual-range',
    label: 'Ratio in the usual range',
    gives: { symbol: 'i_u', unit: '1', label: 'ratio', shows: 'ratio' },
    takes: {
      ratio: { symbol: 'i', unit: '1', label: 'ratio in the range of the goal', shows: 'ratio' },
      usual: { symbol: 'i_1', unit: '1', label: 'total ratio, usual range', shows: 'ratio' },
      here: { symbol: 'i_2', unit: '1', label: 'total ratio, range of the goal', shows: 'ratio' },
    },
    text: 'i_u = i · i_1 / i_2',
    source: { work: 'definition', place: 'gear train' },
    proof: { none: 'definition' },
  },
  ({ ratio, usual, here }) => (ratio * usual) / here,
)
