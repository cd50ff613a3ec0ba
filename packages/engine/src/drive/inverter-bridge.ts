import { formula } from '../working/formula.ts'
import { type Fact, standard } from '../working/value.ts'

const APPLICATION = {
  work: 'igbt-manual',
  place: 'losses of a half-bridge under sinusoidal modulation',
  mark: 'from memory',
} as const
const EXPONENT = { work: 'igbt-manual', place: 'how switching losses follow voltage and current', mark: 'from memory' } as const
const CASE = {
  work: 'igbt-manual',
  place:
    'module of 1.0 V and 2.0 mΩ, diode of 0.9 V and 1.6 mΩ, 300 A amplitude, 0.8 modulated, cos φ 0.85; conduction checked by integration over a period',
  mark: 'from memory',
} as const

const watts = (symbol: string, label: string) => ({ symbol, unit: 'W', label }) as const
const volts = (symbol: string, label: string) => ({ symbol, unit: 'V', label }) as const
const ohms = (symbol: string, label: string) => ({ symbol, unit: 'Ω', label, shows: 'resistance' }) as const
const joules = (symbol: string, label: string) => ({ symbol, unit: 'J', label, shows: 'energy' }) as const
const share = (symbol: string, label: string) => ({ symbol, unit: '1', label, shows: 'share' }) as const
const AMPLITUDE = { symbol: 'Î', unit: 'A', label: 'amplitude of the phase current' } as const
const MODULATION = { ...share('m', 'modulation'), holds: [0, 1.155] } as const
const POWER_FACTOR = { ...share('cosφ', 'power factor'), holds: [-1, 1] } as const
const FREQUENCY = { symbol: 'f', unit: '1/s', label: 'switching frequency', shows: 'frequency' } as const
const AT_CURRENT = { symbol: 'I_ref', unit: 'A', label: 'current the switching energies are stated at' } as const
const AT_VOLTAGE = volts('U_ref', 'voltage the switching energies are stated at')

/** How switching energy follows voltage and, for the diode, current. */
export const SWITCHING_POWER: Fact = standard('switching-exponent', 'transistor: exponent of voltage', 'k_T', 1.35, '1', EXPONENT)
export const RECOVERY_POWER: Fact = standard('recovery-exponent', 'diode: exponent of current and voltage', 'k_D', 0.6, '1', EXPONENT)

/** Greatest value of a phase current behind its effective value. */
export const phaseAmplitude = formula(
  {
    id: 'phase-amplitude',
    label: 'Amplitude of the phase current',
    gives: AMPLITUDE,
    takes: { current: { symbol: 'I_ph', unit: 'A', label: 'phase current, effective' } },
    text: 'Î = √(2) · I_ph',
    source: { work: 'circuits', place: 'sine' },
    proof: { none: 'elementary' },
  },
  ({ current }) => Math.SQRT2 * current,
)

/** Conduction loss of one transistor of a two-level bridge that makes a sine. */
export const transistorConduction = formula(
  {
    id: 'transistor-conduction',
    label: 'Conduction loss of one transistor',
    gives: watts('P_T', 'one transistor, conducting'),
    takes: {
      threshold: volts('U_T0', 'threshold voltage of the transistor'),
      resistance: ohms('r_T', 'resistance of the transistor when on'),
      amplitude: AMPLITUDE,
      modulation: MODULATION,
      powerFactor: POWER_FACTOR,
    },
    text: 'P_T = U_T0 · Î · (1 / (2 · π) + m · cosφ / 8) + r_T · Î² · (1 / 8 + m · cosφ / (3 · π))',
    source: APPLICATION,
    leavesOut: 'Over-modulation, third harmonic, temperature of the chip, dead time.',
    proof: {
      examples: [
        {
          takes: { threshold: 1, resistance: 0.002, amplitude: 300, modulation: 0.8, powerFactor: 0.85 },
          gives: 108.734,
          within: 5e-4,
          source: CASE,
        },
      ],
    },
  },
  ({ threshold, resistance, amplitude, modulation, powerFactor }) =>
    threshold * amplitude * (1 / (2 * Math.PI) + (modulation * powerFactor) / 8) +
    resistance * amplitude ** 2 * (1 / 8 + (modulation * powerFactor) / (3 * Math.PI)),
)
/** The same of one diode: it carries the current while its transistor does not. */
export const diodeConduction = formula(
  {
    id: 'diode-conduction',
    label: 'Conduction loss of one diode',
    gives: watts('P_D', 'one diode, conducting'),
    takes: {
      threshold: volts('U_D0', 'threshold voltage of the diode'),
      resistance: ohms('r_D', 'resistance of the diode'),
      amplitude: AMPLITUDE,
      modulation: MODULATION,
      powerFactor: POWER_FACTOR,
    },
    text: 'P_D = U_D0 · Î · (1 / (2 · π) − m · cosφ / 8) + r_D · Î² · (1 / 8 − m · cosφ / (3 · π))',
    source: APPLICATION,
    leavesOut: 'Over-modulation, third harmonic, temperature of the chip, dead time.',
    proof: {
      examples: [
        {
          takes: { threshold: 0.9, resistance: 0.0016, amplitude: 300, modulation: 0.8, powerFactor: 0.85 },
          gives: 27.632,
          within: 5e-4,
          source: CASE,
        },
      ],
    },
  },
  ({ threshold, resistance, amplitude, modulation, powerFactor }) =>
    threshold * amplitude * (1 / (2 * Math.PI) - (modulation * powerFactor) / 8) +
    resistance * amplitude ** 2 * (1 / 8 - (modulation * powerFactor) / (3 * Math.PI)),
)
const SWITCHED = { frequency: FREQUENCY, amplitude: AMPLITUDE, voltage: volts('U', 'voltage of the bridge') } as const
const REFERRED = { atCurrent: AT_CURRENT, atVoltage: AT_VOLTAGE } as const
const POINT = { frequency: 10e3, amplitude: 300, voltage: 350, atCurrent: 400, atVoltage: 300 } as const
const SWITCHED_CASE = { ...CASE, place: '10 kHz, 32 mJ and 10 mJ at 400 A and 300 V, 300 A amplitude at 350 V' } as const

export const transistorSwitching = formula(
  {
    id: 'transistor-switching',
    label: 'Switching loss of one transistor',
    gives: watts('P_Ts', 'one transistor, switching'),
    takes: { ...SWITCHED, energy: joules('E_T', 'switching energy, on and off'), ...REFERRED },
    uses: [SWITCHING_POWER],
    text: 'P_Ts = f · E_T · Î / (π · I_ref) · exp(k_T · ln(U / U_ref))',
    source: APPLICATION,
    leavesOut: 'Gate resistor, temperature of the chip.',
    proof: { examples: [{ takes: { ...POINT, energy: 0.032 }, gives: 94.07, within: 0.005, source: SWITCHED_CASE }] },
  },
  ({ frequency, amplitude, voltage, energy, atCurrent, atVoltage }) =>
    ((frequency * energy * amplitude) / (Math.PI * atCurrent)) * (voltage / atVoltage) ** SWITCHING_POWER.value,
)
/** Recovery loss of one diode. Taken from the mean current, the more cautious of two habits; the mean of the powered sine gives about a quarter less. */
export const diodeRecovery = formula(
  {
    id: 'diode-recovery',
    label: 'Recovery loss of one diode',
    gives: watts('P_Ds', 'one diode, recovering'),
    takes: { ...SWITCHED, energy: joules('E_rr', 'recovery energy of the diode'), ...REFERRED },
    uses: [RECOVERY_POWER],
    text: 'P_Ds = f · E_rr · exp(k_D · ln(Î / (π · I_ref))) · exp(k_D · ln(U / U_ref))',
    source: APPLICATION,
    leavesOut: 'Gate resistor, temperature of the chip. Averaging the powered sine instead of the current gives 33.78 W in the example.',
    proof: { examples: [{ takes: { ...POINT, energy: 0.01 }, gives: 46.44, within: 0.005, source: SWITCHED_CASE }] },
  },
  ({ frequency, amplitude, voltage, energy, atCurrent, atVoltage }) =>
    frequency * energy * (amplitude / (Math.PI * atCurrent)) ** RECOVERY_POWER.value * (voltage / atVoltage) ** RECOVERY_POWER.value,
)

/** Six transistors and six diodes. */
export const bridgeLoss = formula(
  {
    id: 'bridge-loss',
    label: 'Loss of the bridge',
    gives: watts('P_B', 'bridge'),
    takes: {
      transistor: watts('P_T', 'one transistor, conducting'),
      diode: watts('P_D', 'one diode, conducting'),
      switching: watts('P_Ts', 'one transistor, switching'),
      recovery: watts('P_Ds', 'one diode, recovering'),
    },
    text: 'P_B = 6 · (P_T + P_D + P_Ts + P_Ds)',
    source: { work: 'circuits', place: 'three half-bridges' },
    leavesOut: 'Capacitors, busbars, gate drivers, control: some tens of watts.',
    proof: {
      examples: [
        {
          takes: { transistor: 108.734, diode: 27.632, switching: 94.07, recovery: 46.44 },
          gives: 1661.3,
          within: 0.06,
          source: SWITCHED_CASE,
        },
      ],
    },
  },
  ({ transistor, diode, switching, recovery }) => 6 * (transistor + diode + switching + recovery),
)
/** Power of three phases out of a bridge. */
export const bridgePower = formula(
  {
    id: 'bridge-power',
    label: 'Power out of the bridge',
    gives: watts('P_out', 'to the motor'),
    takes: { voltage: volts('U', 'voltage of the bridge'), amplitude: AMPLITUDE, modulation: MODULATION, powerFactor: POWER_FACTOR },
    text: 'P_out = 3 / 4 · m · U · Î · cosφ',
    source: { work: 'circuits', place: 'three phases of amplitude m · U / 2' },
    proof: {
      examples: [
        { takes: { voltage: 350, amplitude: 300, modulation: 0.8, powerFactor: 0.85 }, gives: 53550, within: 1e-6, source: SWITCHED_CASE },
      ],
    },
  },
  ({ voltage, amplitude, modulation, powerFactor }) => 0.75 * modulation * voltage * amplitude * powerFactor,
)
export const bridgeEfficiency = formula(
  {
    id: 'bridge-efficiency',
    label: 'Efficiency of the bridge',
    gives: share('η_inv', 'efficiency of the inverter'),
    takes: { power: watts('P_out', 'to the motor'), loss: watts('P_B', 'bridge') },
    text: 'η_inv = P_out / (P_out + P_B)',
    source: { work: 'definition', place: 'efficiency' },
    proof: { examples: [{ takes: { power: 53550, loss: 1661.3 }, gives: 0.96991, within: 5e-6, source: SWITCHED_CASE }] },
  },
  ({ power, loss }) => power / (power + loss),
)
