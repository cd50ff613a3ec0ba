import { formula } from '../working/formula.ts'

const DEFINITION = { work: 'definition', place: 'power is torque times speed' } as const
const torque = (symbol: string, label: string) => ({ symbol, unit: 'N·m', label }) as const
const power = (symbol: string, label: string) => ({ symbol, unit: 'W', label }) as const
const speed = (symbol: string, label: string) => ({ symbol, unit: 'rad/s', label, shows: 'rotational speed' }) as const
const volts = (symbol: string, label: string) => ({ symbol, unit: 'V', label }) as const

/** The speed up to which the peak torque holds: there it makes the peak power. */
export const baseSpeed = formula(
  {
    id: 'base-speed',
    label: 'Base speed from peak power and peak torque',
    gives: speed('ω_b', 'base speed'),
    takes: { power: power('P_max', 'peak power'), torque: torque('M_max', 'peak torque') },
    text: 'ω_b = P_max / M_max',
    source: DEFINITION,
    leavesOut: 'Motors that reach their peak power only well above the end of the peak torque: a stated base speed is better.',
    proof: { none: 'definition' },
  },
  ({ power, torque }) => power / torque,
)
/** Power at the corner of a rating, where its torque meets its speed. */
export const powerAtCorner = formula(
  {
    id: 'power-at-corner',
    label: 'Power from torque and base speed',
    gives: power('P', 'power'),
    takes: { torque: torque('M', 'torque'), baseSpeed: speed('ω_b', 'base speed') },
    text: 'P = M · ω_b',
    source: DEFINITION,
    proof: { none: 'definition' },
  },
  ({ torque, baseSpeed }) => torque * baseSpeed,
)
export const torqueAtCorner = formula(
  {
    id: 'torque-at-corner',
    label: 'Torque from power and base speed',
    gives: torque('M', 'torque'),
    takes: { power: power('P', 'power'), baseSpeed: speed('ω_b', 'base speed') },
    text: 'M = P / ω_b',
    source: DEFINITION,
    leavesOut: 'A rating whose torque holds to less or more than the base speed.',
    proof: { none: 'definition' },
  },
  ({ power, baseSpeed }) => power / baseSpeed,
)
export const lesserTorque = formula(
  {
    id: 'lesser-torque',
    label: 'Torque allowed',
    gives: torque('M', 'torque'),
    takes: { motor: torque('M_max', 'of the motor'), limit: torque('M_lim', 'limit set in software') },
    text: 'M = min(M_max, M_lim)',
    source: { work: 'definition', place: 'the lesser governs' },
    proof: { none: 'definition' },
  },
  ({ motor, limit }) => Math.min(motor, limit),
)
export const lesserPower = formula(
  {
    id: 'lesser-power',
    label: 'Power allowed',
    gives: power('P', 'power'),
    takes: { motor: power('P_max', 'of the motor'), limit: power('P_lim', 'limit set in software') },
    text: 'P = min(P_max, P_lim)',
    source: { work: 'definition', place: 'the lesser governs' },
    proof: { none: 'definition' },
  },
  ({ motor, limit }) => Math.min(motor, limit),
)
/** What one torque and one power allow at a speed. */
export const torqueAtSpeed = formula(
  {
    id: 'torque-at-speed',
    label: 'Torque at a speed',
    gives: torque('M_ω', 'torque at the speed'),
    takes: { torque: torque('M', 'torque'), power: power('P', 'power'), speed: speed('ω', 'motor speed') },
    text: 'M_ω = min(M, P / ω)',
    source: { work: 'ehsani', place: 'traction motor characteristics: constant torque, then constant power', mark: 'from memory' },
    leavesOut: 'The fall of power near top speed that some motors show.',
    proof: {
      examples: [
        {
          takes: { torque: 140, power: 102e3, speed: 1000 },
          gives: 102,
          within: 1e-9,
          source: {
            work: 'larminie-lowry',
            place: '7.3, coupé with 102 kW induction motor: 140 N·m, then constant power',
            mark: 'from memory',
          },
        },
      ],
    },
  },
  ({ torque, power, speed }) => Math.min(torque, power / speed),
)
/** Rotor and what is fixed to it. */
export const inertiaAtMotor = formula(
  {
    id: 'inertia-at-motor',
    label: 'Inertia at the motor shaft',
    gives: { symbol: 'J', unit: 'kg·m²', label: 'inertia' },
    takes: {
      rotor: { symbol: 'J_m', unit: 'kg·m²', label: 'rotor' },
      input: { symbol: 'J_in', unit: 'kg·m²', label: 'flywheel, clutch, gearbox input' },
    },
    text: 'J = J_m + J_in',
    source: { work: 'statics', place: 'bodies on one shaft' },
    proof: { none: 'definition' },
  },
  ({ rotor, input }) => rotor + input,
)
/** Base speed when the battery gives more or less than the stated voltage: the voltage the motor makes rises with speed. */
export const baseSpeedAtVoltage = formula(
  {
    id: 'base-speed-at-voltage',
    label: 'Base speed at a battery voltage',
    gives: speed('ω_U', 'base speed'),
    takes: {
      baseSpeed: speed('ω_b', 'base speed as stated'),
      voltage: volts('U', 'battery voltage under load'),
      stated: volts('U_0', 'stated voltage'),
    },
    text: 'ω_U = ω_b · U / U_0',
    source: { work: 'ehsani', place: 'field weakening above base speed', mark: 'from memory' },
    leavesOut: 'Resistance of the winding, saturation.',
    proof: { none: 'proportion' },
  },
  ({ baseSpeed, voltage, stated }) => (baseSpeed * voltage) / stated,
)
