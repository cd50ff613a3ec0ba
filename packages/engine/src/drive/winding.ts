import { formula } from '../working/formula.ts'

const LUMPED = { work: 'incropera', place: 'lumped capacitance method', mark: 'from memory' } as const
const kelvin = (symbol: string, label: string) => ({ symbol, unit: 'K', label, shows: 'temperature' }) as const
const watts = (symbol: string, label: string) => ({ symbol, unit: 'W', label }) as const
const seconds = (symbol: string, label: string) => ({ symbol, unit: 's', label }) as const
const newtonMetres = (symbol: string, label: string) => ({ symbol, unit: 'N·m', label }) as const
const number = (symbol: string, label: string) => ({ symbol, unit: '1', label, shows: 'number' }) as const

/** Motor speed at the corner of the continuous rating. */
export const ratedSpeed = formula(
  {
    id: 'rated-speed',
    label: 'Speed of the continuous rating',
    gives: { symbol: 'ω_c', unit: 'rad/s', label: 'rated speed', shows: 'rotational speed' },
    takes: {
      power: watts('P_c', 'continuous power'),
      torque: newtonMetres('M_c', 'continuous torque'),
      baseSpeed: { symbol: 'ω_b', unit: 'rad/s', label: 'base speed', shows: 'rotational speed' },
    },
    text: 'ω_c = min(P_c / M_c, ω_b)',
    source: { work: 'definition', place: 'power is torque times speed' },
    proof: { none: 'definition' },
  },
  ({ power, torque, baseSpeed }) => Math.min(power / torque, baseSpeed),
)

/**
 * Time constant of the winding, from two ratings: at continuous torque it settles at its limit, at peak torque it gets there, from the coolant's temperature,
 * in the time the peak is allowed.
 */
export const windingTime = formula(
  {
    id: 'winding-time',
    label: 'Time constant of the winding',
    gives: seconds('τ_w', 'time constant'),
    takes: {
      time: seconds('t_max', 'peak for'),
      rated: watts('Q_c', 'heat at the continuous rating'),
      peak: watts('Q_max', 'heat at the peak rating'),
    },
    text: 'τ_w = −t_max / ln(max(0.000001, 1 − Q_c / Q_max))',
    source: LUMPED,
    leavesOut: 'That a winding heats faster at first, before the iron around it has warmed; ratings stated from a warm motor.',
    proof: { none: 'inverse of the exponential rise' },
  },
  ({ time, rated, peak }) => -time / Math.log(Math.max(1e-6, 1 - rated / peak)),
)
export const windingConductance = formula(
  {
    id: 'winding-conductance',
    label: 'Heat from winding to coolant',
    gives: { symbol: 'G_w', unit: 'W/K', label: 'conductance', shows: 'thermal conductance' },
    takes: {
      rated: watts('Q_c', 'heat at the continuous rating'),
      limit: kelvin('T_w', 'temperature limit of the winding'),
      coolant: kelvin('T_cool', 'coolant temperature of the rating'),
    },
    text: 'G_w = Q_c / (T_w − T_cool)',
    source: LUMPED,
    leavesOut: 'Heat that takes no way through the winding; coolant warmer than that of the rating.',
    proof: { none: 'definition of a conductance' },
  },
  ({ rated, limit, coolant }) => rated / (limit - coolant),
)
export const windingHeatCapacity = formula(
  {
    id: 'winding-heat-capacity',
    label: 'Heat capacity of the winding',
    gives: { symbol: 'C_w', unit: 'J/K', label: 'heat capacity', shows: 'heat capacity' },
    takes: {
      time: seconds('τ_w', 'time constant'),
      conductance: { symbol: 'G_w', unit: 'W/K', label: 'conductance', shows: 'thermal conductance' },
    },
    text: 'C_w = τ_w · G_w',
    source: LUMPED,
    proof: { none: 'definition of a time constant' },
  },
  ({ time, conductance }) => time * conductance,
)
/** Where the winding settles under a steady heat. */
export const windingSteady = formula(
  {
    id: 'winding-steady',
    label: 'Winding temperature in the long run',
    gives: kelvin('T_s', 'winding temperature'),
    takes: {
      heat: watts('Q_w', 'heat in the winding'),
      conductance: { symbol: 'G_w', unit: 'W/K', label: 'conductance', shows: 'thermal conductance' },
      coolant: kelvin('T_cool', 'coolant temperature'),
    },
    text: 'T_s = T_cool + Q_w / G_w',
    source: LUMPED,
    proof: { none: 'definition of a conductance' },
  },
  ({ heat, conductance, coolant }) => coolant + heat / conductance,
)
/** Heating at a torque over heating at the continuous rating; 1 is what the motor stands for ever. */
export const heating = formula(
  {
    id: 'winding-heating',
    label: 'Heating over continuous heating',
    gives: number('p', 'heating'),
    takes: {
      torque: newtonMetres('M', 'torque'),
      rated: newtonMetres('M_c', 'continuous torque'),
    },
    text: 'p = (M / M_c)²',
    source: { work: 'larminie-lowry', place: 'copper loss goes with torque squared', mark: 'from memory' },
    leavesOut: 'Field weakening above base speed.',
    proof: { none: 'definition: 1 at continuous torque' },
  },
  ({ torque, rated }) => (torque / rated) ** 2,
)
/** How long a heating is stood from a warm start. A start of 0 is the coolant's temperature, 1 the limit. */
export const timeAtHeating = formula(
  {
    id: 'time-at-heating',
    label: 'Time until the winding reaches its limit',
    gives: seconds('t', 'time'),
    takes: {
      heating: { ...number('p', 'heating over continuous heating'), holds: [1.001, 100] },
      start: { symbol: 'θ_0', unit: '1', label: 'start, 0 at coolant temperature, 1 at the limit', shows: 'share', holds: [0, 1] },
      time: seconds('τ_w', 'time constant'),
    },
    text: 'q = max(1.000001, p)\nt = τ_w · ln((q − θ_0) / (q − 1))',
    source: LUMPED,
    leavesOut: 'A heating the motor stands for ever: some fourteen time constants come out then.',
    proof: { none: 'solution of the first-order rise' },
  },
  ({ heating, start, time }) => {
    const q = Math.max(1.000001, heating)
    return time * Math.log((q - start) / (q - 1))
  },
)
/** Torque the winding stands for a time from a start; never more than the peak. */
export const torqueForTime = formula(
  {
    id: 'torque-for-time',
    label: 'Torque for a time',
    gives: newtonMetres('M_t', 'torque'),
    takes: {
      duration: seconds('t', 'for'),
      start: { symbol: 'θ_0', unit: '1', label: 'start, 0 at coolant temperature, 1 at the limit', shows: 'share', holds: [0, 0.95] },
      time: seconds('τ_w', 'time constant'),
      rated: newtonMetres('M_c', 'continuous torque'),
      allowed: newtonMetres('M_lim', 'torque allowed'),
    },
    text: 'x = exp(−t / τ_w)\np = (1 − θ_0 · x) / (1 − x)\nM_t = min(M_lim, M_c · √(p))',
    source: LUMPED,
    proof: { none: 'inverse of the first-order rise' },
  },
  ({ duration, start, time, rated, allowed }) => {
    const x = Math.exp(-duration / time),
      p = (1 - start * x) / (1 - x)
    return Math.min(allowed, rated * Math.sqrt(p))
  },
)
/** Power that goes with a torque allowed for a time: as much above the continuous power as the torque is above the continuous torque. */
export const powerForTime = formula(
  {
    id: 'power-for-time',
    label: 'Power for a time',
    gives: watts('P_t', 'power'),
    takes: {
      rated: watts('P_c', 'continuous power'),
      torque: newtonMetres('M_t', 'torque for the time'),
      ratedTorque: newtonMetres('M_c', 'continuous torque'),
      allowed: watts('P_lim', 'power allowed'),
    },
    text: 'P_t = min(P_lim, P_c · M_t / M_c)',
    source: { work: 'practice', place: 'ratings between peak and continuous', mark: 'common practice' },
    leavesOut: 'That iron loss makes fast running costlier than slow running at the same torque.',
    proof: { none: 'proportion' },
  },
  ({ rated, torque, ratedTorque, allowed }) => Math.min(allowed, (rated * torque) / ratedTorque),
)
