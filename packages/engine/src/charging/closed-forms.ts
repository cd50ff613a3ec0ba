import { formula } from '../working/formula.ts'

/**
 * Charging a source with a straight open-circuit line U_0 + k·q near the top, on paper. Charge in coulombs, k in volts per coulomb.
 */
const LINE = {
  base: { symbol: 'U_0', unit: 'V', label: 'open-circuit voltage of the line at no charge' },
  rise: { symbol: 'k', unit: 'V/C', label: 'rise of the open-circuit voltage' },
  resistance: { symbol: 'R', unit: 'Ω', label: 'resistance on the scale of minutes' },
} as const
const amps = (symbol: string, label: string) => ({ symbol, unit: 'A', label }) as const
const volts = (symbol: string, label: string) => ({ symbol, unit: 'V', label }) as const
const coulombs = (symbol: string, label: string) => ({ symbol, unit: 'C', label, shows: 'charge' }) as const
const spell = (symbol: string, label: string) => ({ symbol, unit: 's', label, shows: 'duration' }) as const
const DERIVED = { work: 'circuits', place: 'a source, a resistance, a limit' } as const
const worked = (place: string) => ({ work: 'circuits', place: `${place}; recomputed` }) as const
const AH = 3600

/** Constant current, until the voltage is reached. */
export const constantCurrentPhase = formula(
  {
    id: 'constant-current-phase',
    label: 'Charging at constant current',
    gives: { reached: coulombs('q_s', 'charge where the voltage is reached'), time: spell('t_cc', 'time') },
    takes: {
      ...LINE,
      current: amps('I_0', 'current'),
      voltage: volts('U_c', 'charge voltage'),
      from: coulombs('q_0', 'charge at the start'),
    },
    text: 'q_s = (U_c − I_0 · R − U_0) / k\nt_cc = (q_s − q_0) / I_0',
    source: DERIVED,
    leavesOut: 'That the line is straight only near the top.',
    proof: {
      examples: [
        {
          takes: { base: 3.45, rise: 0.012 / AH, resistance: 0.0015, current: 40, voltage: 4.2, from: 10 * AH },
          gives: { reached: 57.5 * AH, time: 4275 },
          within: 1e-6,
          source: worked('cell of 3.45 V + 0.012 V/Ah, 1.5 mΩ, from 10 Ah with 40 A to 4.2 V'),
        },
      ],
    },
  },
  ({ base, rise, resistance, current, voltage, from }) => {
    const reached = (voltage - current * resistance - base) / rise
    return { reached, time: (reached - from) / current }
  },
)
/** Constant voltage, while the current falls. */
export const constantVoltagePhase = formula(
  {
    id: 'constant-voltage-phase',
    label: 'Charging at constant voltage',
    gives: {
      constant: spell('τ', 'time constant'),
      time: spell('t_cv', 'time'),
      charge: coulombs('q_cv', 'charge taken'),
      heat: { symbol: 'W', unit: 'J', label: 'heat' },
    },
    takes: {
      rise: LINE.rise,
      resistance: LINE.resistance,
      from: amps('I_0', 'current at the start'),
      to: amps('I_1', 'current at the end'),
    },
    text: 'τ = R / k\nt_cv = τ · ln(I_0 / I_1)\nq_cv = τ · (I_0 − I_1)\nW = R · τ · (I_0² − I_1²) / 2',
    source: DERIVED,
    leavesOut: 'Diffusion: to C/10 add 10 to 20 %, to C/50 a third (one measured cell).',
    proof: {
      examples: [
        {
          takes: { rise: 0.012 / AH, resistance: 0.0015, from: 40, to: 3 },
          gives: { constant: 450, time: 1165.62, charge: 4.625 * AH },
          within: 0.01,
          source: worked('the same cell, to 3 A'),
        },
        {
          takes: { rise: 0.6 / AH, resistance: 0.12, from: 60, to: 6 },
          gives: { constant: 720, time: 1657.9, charge: 10.8 * AH },
          within: 0.05,
          source: worked('pack of 0.6 V/Ah and 0.12 Ω, 60 to 6 A'),
        },
        {
          takes: { rise: 0.66 / AH, resistance: 0.1, from: 8.1161, to: 2 },
          gives: { time: 0.2122 * 3600 },
          within: 0.2,
          source: worked('pack of 0.66 V/Ah and 0.1 Ω, 8.1161 to 2 A: 0.2122 h'),
        },
        {
          takes: { rise: 0.66 / AH, resistance: 0.1, from: 20e3 / 403.2, to: 5 },
          gives: { time: 0.3477 * 3600 },
          within: 0.2,
          source: worked('the same pack, 20 kW at 403.2 V, to 5 A: 0.3477 h'),
        },
      ],
    },
  },
  ({ rise, resistance, from, to }) => {
    const constant = resistance / rise
    return {
      constant,
      time: constant * Math.log(from / to),
      charge: constant * (from - to),
      heat: (resistance * constant * (from * from - to * to)) / 2,
    }
  },
)
/** Constant voltage with one RC branch: the current is the sum of two falling exponentials. */
export const currentWithBranch = formula(
  {
    id: 'current-with-branch',
    label: 'Current at constant voltage, one RC branch',
    gives: amps('I', 'current'),
    takes: {
      rise: LINE.rise,
      ohmic: { symbol: 'R_0', unit: 'Ω', label: 'ohmic resistance' },
      branch: { symbol: 'R_1', unit: 'Ω', label: 'branch resistance' },
      constant: spell('τ_1', 'time constant of the branch'),
      from: amps('I_0', 'current at the start'),
      voltage: volts('u_0', 'voltage over the branch at the start'),
      time: spell('t', 'time'),
    },
    text: 'b = k / R_0 + R_1 / (R_0 · τ_1) + 1 / τ_1\nw = √(b² − 4 · k / (R_0 · τ_1))\nλ_1 = (−b − w) / 2\nλ_2 = (−b + w) / 2\ns = −k · I_0 / R_0 − (R_1 · I_0 − u_0) / (R_0 · τ_1)\nB = (s − λ_1 · I_0) / (λ_2 − λ_1)\nI = (I_0 − B) · exp(λ_1 · t) + B · exp(λ_2 · t)',
    source: DERIVED,
    proof: {
      examples: [
        [60, 33.59394],
        [300, 20.04639],
        [1200, 3.02567],
      ].map(([time, gives]) => ({
        takes: { rise: 0.012 / AH, ohmic: 0.0009, branch: 0.0006, constant: 60, from: 40, voltage: 0.024, time: time as number },
        gives: gives as number,
        within: 2e-5,
        source: worked('0.9 mΩ, 0.6 mΩ and 60 s, 0.012 V/Ah, 40 A; a numerical solution agrees to 1e-8'),
      })),
    },
  },
  ({ rise, ohmic, branch, constant, from, voltage, time }) => {
    const b = rise / ohmic + branch / (ohmic * constant) + 1 / constant,
      w = Math.sqrt(b * b - (4 * rise) / (ohmic * constant)),
      fast = (-b - w) / 2,
      slow = (-b + w) / 2
    const start = (-rise * from) / ohmic - (branch * from - voltage) / (ohmic * constant),
      part = (start - fast * from) / (slow - fast)
    return (from - part) * Math.exp(fast * time) + part * Math.exp(slow * time)
  },
)
/** Time at constant power from one charge to another. */
export const constantPowerTime = formula(
  {
    id: 'constant-power-time',
    label: 'Charging at constant power',
    gives: spell('t_cp', 'time'),
    takes: {
      ...LINE,
      power: { symbol: 'P', unit: 'W', label: 'power to the pack' },
      from: coulombs('q_1', 'from'),
      to: coulombs('q_2', 'to'),
    },
    text: 'c = 4 · R · P\nU_1 = U_0 + k · q_1\nU_2 = U_0 + k · q_2\nv_1 = √(U_1² + c)\nv_2 = √(U_2² + c)\nt_cp = (U_2² / 2 − U_1² / 2 + (U_2 · v_2 − U_1 · v_1 + c · ln((U_2 + v_2) / (U_1 + v_1))) / 2) / (2 · k · P)',
    source: DERIVED,
    proof: {
      examples: [
        {
          takes: { base: 330, rise: 0.6 / AH, resistance: 0.1, power: 3300, from: 10.92 * AH, to: 98 * AH },
          gives: 34539.27,
          within: 0.01,
          source: worked('330 V + 0.6 V/Ah, 0.1 Ω, 3300 W from 10.92 to 98 Ah'),
        },
        {
          takes: { base: 330, rise: 0.66 / AH, resistance: 0.1, power: 3272.4, from: 10.92 * AH, to: 109.6794 * AH },
          gives: 11.187 * 3600,
          within: 0.2,
          source: worked('330 V + 0.66 V/Ah, 0.1 Ω, 3272.4 W from 10.92 to 109.6794 Ah: 11.1870 h, 36.6084 kWh'),
        },
        {
          takes: { base: 330, rise: 0.66 / AH, resistance: 0.1, power: 20e3, from: 10.92 * AH, to: (73.2 - 2000 / 403.2) * (AH / 0.66) },
          gives: 1.7251 * 3600,
          within: 0.2,
          source: worked('the same at 20 kW, to 403.2 V: 1.7251 h, 34.501 kWh'),
        },
      ],
    },
  },
  ({ base, rise, resistance, power, from, to }) => {
    const c = 4 * resistance * power,
      u1 = base + rise * from,
      u2 = base + rise * to,
      v1 = Math.sqrt(u1 * u1 + c),
      v2 = Math.sqrt(u2 * u2 + c)
    return ((u2 * u2) / 2 - (u1 * u1) / 2 + (u2 * v2 - u1 * v1 + c * Math.log((u2 + v2) / (u1 + v1))) / 2) / (2 * rise * power)
  },
)
/** Where constant power meets the charge voltage. */
export const constantPowerEnd = formula(
  {
    id: 'constant-power-end',
    label: 'End of charging at constant power',
    gives: { current: amps('I_s', 'current there'), reached: coulombs('q_s', 'charge there') },
    takes: { ...LINE, power: { symbol: 'P', unit: 'W', label: 'power to the pack' }, voltage: volts('U_c', 'charge voltage') },
    text: 'I_s = P / U_c\nq_s = (U_c − R · I_s − U_0) / k',
    source: DERIVED,
    proof: {
      examples: [
        {
          takes: { base: 330, rise: 0.66 / AH, resistance: 0.1, power: 3272.4, voltage: 403.2 },
          gives: { current: 8.1161 },
          within: 5e-5,
          source: worked('330 V + 0.66 V/Ah, 0.1 Ω, 3272.4 W to 403.2 V'),
        },
        {
          takes: { base: 330, rise: 0.66 / AH, resistance: 0.1, power: 3272.4, voltage: 403.2 },
          gives: { reached: 109.6794 * AH },
          within: 0.5,
          source: worked('330 V + 0.66 V/Ah, 0.1 Ω, 3272.4 W to 403.2 V'),
        },
      ],
    },
  },
  ({ base, rise, resistance, power, voltage }) => ({
    current: power / voltage,
    reached: (voltage - (resistance * power) / voltage - base) / rise,
  }),
)
/** Time from a table of power over charge. */
export const timeFromTable = formula(
  {
    id: 'time-from-table',
    label: 'Charging time from a table of power',
    gives: spell('t', 'time'),
    takes: {
      energy: { symbol: 'E', unit: 'J', label: 'energy of the battery', shows: 'energy' },
      steps: { symbol: 'Δz', unit: '1', label: 'steps of charge', many: true },
      powers: { symbol: 'P_k', unit: 'W', label: 'power on each', many: true },
    },
    text: 't = E · Σ (Δz / P_k)',
    source: { work: 'definition', place: 'power' },
    proof: {
      examples: [
        {
          takes: { energy: 64 * 3.6e6, steps: [0.47, 0.13], powers: [69e3, 57e3] },
          gives: 64 * 3600 * (0.47 / 69 + 0.13 / 57),
          within: 1e-6,
          source: worked('two steps'),
        },
        {
          takes: { energy: 64 * 3.6e6, steps: [0.47, 0.15, 0.06, 0.02], powers: [69e3, 57e3, 37e3, 25e3] },
          gives: 45.56 * 60,
          within: 0.5,
          source: { work: 'press-sessions', place: '64 kWh car, 10 to 80 %: 45.56 min' },
        },
        {
          takes: { energy: 64 * 3.6e6, steps: [0.57, 0.15, 0.06, 0.02], powers: [69e3, 57e3, 37e3, 25e3] },
          gives: 51.13 * 60,
          within: 0.5,
          source: { work: 'press-sessions', place: '64 kWh car, 0 to 80 %: 51.13 min; its maker says 54' },
        },
        {
          takes: { energy: 64 * 3.6e6, steps: [0.47, 0.15, 0.06, 0.02], powers: [50e3, 50e3, 37e3, 25e3] },
          gives: 56.92 * 60,
          within: 0.5,
          source: { work: 'press-sessions', place: 'the same behind a post of 50 kW' },
        },
        {
          takes: { energy: 64 * 3.6e6, steps: [0.57, 0.15, 0.06, 0.14, 0.06, 0.02], powers: [69e3, 57e3, 37e3, 25e3, 10e3, 5e3] },
          gives: 107.96 * 60,
          within: 0.5,
          source: { work: 'press-sessions', place: '64 kWh car, 0 to 100 %' },
        },
      ],
    },
  },
  ({ energy, steps, powers }) => energy * steps.reduce((sum, step, i) => sum + step / powers[i]!, 0),
)
