import { formula } from '../working/formula.ts'
import { amps, coulombs, many, ohms, seconds, volts, watts } from './symbols.ts'

const PLETT = { work: 'plett', place: 'vol. I, ch. 2, equivalent circuit' } as const
const NCA = { work: 'kollmeyer-2018', place: 'one-branch fit at half charge, recomputed' } as const

/** Share of a branch's voltage that is left after a time: e^(−t/τ). In loops of one step length taken once. */
export const rcDecay = (step: number, time: number): number => Math.exp(-step / time)

/**
 * Voltage over an RC branch after a time of constant current: exact, whatever the step.
 *
 * Never replace it by a forward step u + t/τ·(R·I − u): beyond a fifth of τ that is wrong, beyond 2 τ it runs away.
 */
export const branchVoltage = formula(
  {
    id: 'branch-voltage',
    label: 'Voltage over an RC branch',
    gives: volts('u', 'voltage over the branch'),
    takes: {
      before: volts('u_0', 'voltage over the branch before'),
      resistance: ohms('R_1', 'resistance of the branch'),
      current: amps('I', 'current, discharging positive'),
      time: seconds('τ_1', 'time constant of the branch'),
      step: seconds('t', 'time of constant current'),
    },
    text: `a = exp(−t / τ_1)
u = a · u_0 + (1 − a) · R_1 · I`,
    source: PLETT,
    proof: {
      examples: [
        { takes: { before: 0, resistance: 0.0167, current: 5.8, time: 25.5, step: 10 }, gives: 0.0314216, within: 5e-8, source: NCA },
        { takes: { before: 0.0314216, resistance: 0.0167, current: 0, time: 25.5, step: 20 }, gives: 0.0143418, within: 5e-8, source: NCA },
        {
          takes: { before: 0, resistance: 0.0167, current: 5.8, time: 25.5, step: 60 },
          gives: 0.08765,
          within: 5e-6,
          source: NCA,
          because: 'a forward step would give 0.2279 V, above the 0.09686 V it can ever reach',
        },
      ],
    },
  },
  ({ before, resistance, current, time, step }) => {
    const a = Math.exp(-step / time)
    return a * before + (1 - a) * resistance * current
  },
)

/** Voltage at the terminals. */
export const terminalVoltage = formula(
  {
    id: 'terminal-voltage',
    label: 'Voltage at the terminals',
    gives: volts('U', 'voltage at the terminals'),
    takes: {
      openCircuit: volts('U_oc', 'open-circuit voltage'),
      resistance: ohms('R_0', 'ohmic resistance'),
      current: amps('I', 'current, discharging positive'),
      branches: many(volts('u_j', 'voltage over each branch')),
    },
    text: 'U = U_oc − R_0 · I − Σ u_j',
    source: PLETT,
    proof: {
      examples: [
        {
          takes: { openCircuit: 3.6609 - 0.2086 * ((5.8 * 10) / 3600), resistance: 0.0305, current: 5.8, branches: [0.0314216] },
          gives: 3.4492,
          within: 5e-5,
          source: NCA,
          because: 'the same pulse as measured ended at 3.4465 V',
        },
        {
          takes: { openCircuit: 3.803363, resistance: 0.0744608, current: 0.85, branches: [0, 0] },
          gives: 3.74007,
          within: 5e-6,
          source: { work: 'chen-rincon-mora-2006', place: '0.85 A at half charge, first instant; recomputed' },
        },
      ],
    },
  },
  ({ openCircuit, resistance, current, branches }) => {
    let u = openCircuit - resistance * current
    for (const b of branches) u -= b
    return u
  },
)

/** Resistance that counts for a load of given length: what the branch has built up by then, and how far the open-circuit voltage has sunk. */
export const resistanceAfter = formula(
  {
    id: 'resistance-after',
    label: 'Resistance after a time',
    gives: ohms('R_t', 'resistance after the time'),
    takes: {
      ohmic: ohms('R_0', 'ohmic resistance'),
      branch: ohms('R_1', 'resistance of the branch'),
      time: seconds('τ_1', 'time constant of the branch'),
      after: seconds('t', 'load for'),
      slope: { symbol: 'k', unit: 'V/C', label: 'slope of the open-circuit voltage over charge taken' },
    },
    text: 'R_t = R_0 + R_1 · (1 − exp(−t / τ_1)) + k · t',
    source: PLETT,
    proof: {
      examples: [
        {
          takes: { ohmic: 0.0305, branch: 0.0167, time: 25.5, after: 10, slope: 0.2086 / 3600 },
          gives: (3.6609 - 3.4492) / 5.8,
          within: 1e-5,
          source: NCA,
        },
        {
          takes: { ohmic: 0, branch: 0, time: 25.5, after: 10, slope: 0.2086 / 3600 },
          gives: 0.58e-3,
          within: 5e-6,
          source: NCA,
          because: 'the part of the slope alone',
        },
      ],
    },
  },
  ({ ohmic, branch, time, after, slope }) => ohmic + branch * (1 - Math.exp(-after / time)) + slope * after,
)

/**
 * Current at which a given power leaves (positive) or enters (negative) the terminals: the smaller root, written so that a small resistance costs no digits.
 *
 * Gives NaN when the source cannot deliver the power: ask `mostPower` first. Cheap enough for inner loops.
 */
export const constantPowerCurrent = formula(
  {
    id: 'constant-power-current',
    label: 'Current at a power',
    gives: amps('I', 'current, discharging positive'),
    takes: {
      voltage: volts('U_e', 'open-circuit voltage less branches'),
      resistance: ohms('R', 'resistance'),
      power: watts('P', 'power at the terminals, discharging positive'),
    },
    text: 'I = 2 · P / (U_e + √(U_e² − 4 · R · P))',
    source: { work: 'circuits', place: 'P = I·(U − R·I), smaller root' },
    leavesOut: 'No current gives more than U²/(4R); then there is no answer.',
    proof: {
      examples: [
        {
          takes: { voltage: 3.6635, resistance: 0.0373, power: 20 },
          gives: 5.802,
          within: 5e-5,
          source: { work: 'kollmeyer-2018', place: 'cell at half charge, 10 s resistance; recomputed' },
          because: 'the other root, 92.415 A, is rejected',
        },
      ],
    },
  },
  ({ voltage, resistance, power }) => (2 * power) / (voltage + Math.sqrt(voltage * voltage - 4 * resistance * power)),
)

/** Most power a source can deliver with no floor on its voltage; then half of it is lost inside. */
export const mostPower = formula(
  {
    id: 'most-power',
    label: 'Most power of a source',
    gives: watts('P_max', 'most power'),
    takes: { voltage: volts('U_e', 'open-circuit voltage less branches'), resistance: ohms('R', 'resistance') },
    text: 'P_max = U_e² / (4 · R)',
    source: { work: 'circuits', place: 'matched load' },
    proof: {
      examples: [
        {
          takes: { voltage: 3.6635, resistance: 0.0373 },
          gives: 89.955,
          within: 5e-4,
          source: { work: 'kollmeyer-2018', place: 'cell at half charge, 10 s resistance; recomputed' },
        },
      ],
    },
  },
  ({ voltage, resistance }) => (voltage * voltage) / (4 * resistance),
)

/** Slope of an open-circuit voltage as lost per charge taken: what `resistanceAfter` wants. */
export const slopeOfCharge = formula(
  {
    id: 'slope-of-charge',
    label: 'Fall of the open-circuit voltage with charge',
    gives: { symbol: 'k', unit: 'V/C', label: 'slope of the open-circuit voltage over charge taken' },
    takes: {
      above: volts('U_a', 'open-circuit voltage a little above'),
      below: volts('U_b', 'open-circuit voltage a little below'),
      apart: { symbol: 'Δz', unit: '1', label: 'apart', shows: 'share' },
      capacity: coulombs('Q', 'capacity of the pack'),
    },
    text: 'k = (U_a − U_b) / (Δz · Q)',
    source: { work: 'definition', place: 'slope' },
    proof: { none: 'definition' },
  },
  ({ above, below, apart, capacity }) => (above - below) / (apart * capacity),
)

/** Carries a reading of one pulse length over to another: beyond a second diffusion lets the resistance grow with the root of time. */
export const resistanceByRootOfTime = formula(
  {
    id: 'resistance-by-root-of-time',
    label: 'Resistance of another pulse length',
    gives: ohms('R_t', 'resistance after the time'),
    takes: {
      first: ohms('R_1', 'resistance read early'),
      last: ohms('R_2', 'resistance read late'),
      early: { ...seconds('t_1', 'early, after'), holds: [0.5, 10] },
      late: { ...seconds('t_2', 'late, after'), holds: [1, 10] },
      after: { ...seconds('t', 'wanted after'), holds: [1, 10] },
    },
    text: 'R_t = R_1 + (R_2 − R_1) · (√t − √t_1) / (√t_2 − √t_1)',
    source: { work: 'tao-2026', place: 'pulses of 30 ms to 5 s; the root law fitted from 1 s on' },
    leavesOut: 'Pulses under a second, where the ohmic part and the surface of the electrodes rule; beyond ten seconds.',
    proof: {
      examples: [
        {
          takes: { first: 0.967e-3, last: 1.312e-3, early: 1, late: 5, after: 3 },
          gives: 1.171e-3,
          within: 1.2e-6,
          source: { work: 'tao-2026', place: '68 Ah cells at half charge: measured after 3 s' },
        },
        {
          takes: { first: 2.595e-3, last: 3.032e-3, early: 1, late: 5, after: 3 },
          gives: 2.855e-3,
          within: 3e-6,
          source: { work: 'tao-2026', place: '35 Ah cells at half charge: measured after 3 s' },
        },
        {
          takes: { first: 0.967e-3, last: 1.312e-3, early: 1, late: 5, after: 10 },
          gives: 1.57e-3,
          within: 6e-7,
          source: { work: 'tao-2026', place: '68 Ah cells, carried on to 10 s; recomputed' },
        },
      ],
    },
  },
  ({ first, last, early, late, after }) =>
    first + ((last - first) * (Math.sqrt(after) - Math.sqrt(early))) / (Math.sqrt(late) - Math.sqrt(early)),
)
