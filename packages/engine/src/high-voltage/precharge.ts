import type { Source } from '../sources.ts'
import { formula } from '../working/formula.ts'
import { amps, byCircuit, count, farads, joules, number, ohms, seconds, share, volts, watts } from './symbols.ts'

const CHARGE = { work: 'circuits', place: 'a capacitor charged through a resistor' } as const
const LOADED = { work: 'circuits', place: 'a capacitor charged through a resistor, with a load across it' } as const
const PACK = volts('U', 'pack voltage')
const CAPACITANCE = farads('C', 'all capacitors on the bus')
const RESISTOR = ohms('R', 'precharge resistor')
const TAU = seconds('τ', 'time constant')
const LOAD = ohms('R_L', 'load across the bus')
const SHARE = { ...share('p', 'share of the pack voltage to reach'), holds: [0, 0.9999] } as const
const FINAL = volts('U_e', 'bus voltage in the end')
/** The four pre-charges the cases are worked on. */
const at = (volts: number, microfarads: number, percent: number, time: number): Source =>
  byCircuit(`${volts} V, ${microfarads} µF, ${percent} % in ${time} s`)
const ONE = at(400, 1000, 95, 0.5),
  TWO = at(144, 2200, 95, 1),
  THREE = at(360, 680, 98, 0.4),
  FOUR = at(320, 470, 90, 0.3)
const WITH_LOAD = byCircuit('400 V, 100 Ω, 1 mF, load of 900 Ω')

/** Time constants a precharge needs for a share of the pack voltage. */
export const prechargeConstants = formula(
  {
    id: 'precharge-constants',
    label: 'Time constants of a precharge',
    gives: number('n_τ', 'time constants'),
    takes: { share: SHARE },
    text: 'n_τ = −ln(1 − p)',
    source: CHARGE,
    proof: {
      examples: [
        { takes: { share: 0.9 }, gives: Math.LN10, within: 5e-5, source: CHARGE },
        { takes: { share: 0.95 }, gives: 2.9957, within: 5e-5, source: CHARGE },
        { takes: { share: 0.98 }, gives: 3.912, within: 5e-5, source: CHARGE },
        { takes: { share: 0.99 }, gives: 4.6052, within: 5e-5, source: CHARGE },
        { takes: { share: 0.99326 }, gives: 5, within: 5e-4, source: CHARGE },
      ],
    },
  },
  ({ share }) => -Math.log(1 - share),
)

/** Largest resistor that brings the bus up to a share of the pack voltage in time. */
export const prechargeResistor = formula(
  {
    id: 'precharge-resistor',
    label: 'Largest precharge resistor',
    gives: ohms('R', 'precharge resistor at most'),
    takes: { time: seconds('t', 'time for the precharge'), capacitance: CAPACITANCE, share: { ...SHARE, holds: [0.5, 0.9999] } },
    text: 'R = t / (C · −ln(1 − p))',
    source: CHARGE,
    leavesOut: 'Loads on the bus, and the upper tolerance of the capacitors unless it is counted in.',
    proof: {
      examples: [
        { takes: { time: 0.5, capacitance: 1e-3, share: 0.95 }, gives: 166.9, within: 0.005, source: ONE },
        { takes: { time: 1, capacitance: 2.2e-3, share: 0.95 }, gives: 151.73, within: 0.005, source: TWO },
        { takes: { time: 0.4, capacitance: 680e-6, share: 0.98 }, gives: 150.37, within: 0.005, source: THREE },
        { takes: { time: 0.3, capacitance: 470e-6, share: 0.9 }, gives: 277.21, within: 0.005, source: FOUR },
      ],
    },
  },
  ({ time, capacitance, share }) => time / (capacitance * -Math.log(1 - share)),
)

/** First instant of a precharge: the current its relay must also be able to break at full voltage, and the power of the pulse. */
export const prechargeStart = formula(
  {
    id: 'precharge-start',
    label: 'First instant of a precharge',
    gives: { current: amps('I_0', 'first current'), power: watts('P_0', 'first power in the resistor') },
    takes: { pack: PACK, resistor: RESISTOR },
    text: 'I_0 = U / R\nP_0 = U · I_0',
    source: CHARGE,
    proof: {
      examples: [
        { takes: { pack: 400, resistor: 166.9041 }, gives: { current: 2.3966 }, within: 5e-5, source: ONE },
        { takes: { pack: 400, resistor: 166.9041 }, gives: { power: 958.6 }, within: 0.05, source: ONE },
        { takes: { pack: 144, resistor: 151.731 }, gives: { current: 0.949 }, within: 1e-4, source: TWO },
        { takes: { pack: 144, resistor: 151.731 }, gives: { power: 136.7 }, within: 0.05, source: TWO },
        { takes: { pack: 360, resistor: 150.3663 }, gives: { current: 2.3942 }, within: 5e-5, source: THREE },
        { takes: { pack: 360, resistor: 150.3663 }, gives: { power: 861.9 }, within: 0.05, source: THREE },
        { takes: { pack: 320, resistor: 277.2058 }, gives: { current: 1.1544 }, within: 5e-5, source: FOUR },
        { takes: { pack: 320, resistor: 277.2058 }, gives: { power: 369.4 }, within: 0.05, source: FOUR },
      ],
    },
  },
  ({ pack, resistor }) => {
    const current = pack / resistor
    return { current, power: pack * current }
  },
)

/** Energy the resistor takes up in one precharge: in the end as much as the capacitors, whatever its size. */
export const prechargeEnergy = formula(
  {
    id: 'precharge-energy',
    label: 'Energy in the resistor of one precharge',
    gives: joules('E_R', 'energy in the resistor'),
    takes: { pack: PACK, capacitance: CAPACITANCE, resistor: RESISTOR, time: seconds('t', 'time of the precharge') },
    text: 'E_R = ½ · C · U² · (1 − exp(−2 · t / (R · C)))',
    source: CHARGE,
    leavesOut: 'Loads on the bus; a short, for which see the stalled precharge.',
    proof: {
      examples: [
        { takes: { pack: 400, capacitance: 1e-3, resistor: 166.9041, time: 0.5 }, gives: 79.8, within: 0.005, source: ONE },
        { takes: { pack: 144, capacitance: 2.2e-3, resistor: 151.731, time: 1 }, gives: 22.753, within: 0.0005, source: TWO },
        { takes: { pack: 360, capacitance: 680e-6, resistor: 150.3663, time: 0.4 }, gives: 44.046, within: 0.0005, source: THREE },
        { takes: { pack: 320, capacitance: 470e-6, resistor: 277.2058, time: 0.3 }, gives: 23.823, within: 0.0005, source: FOUR },
      ],
    },
  },
  ({ pack, capacitance, resistor, time }) => 0.5 * capacitance * pack ** 2 * (1 - Math.exp((-2 * time) / (resistor * capacitance))),
)

/** Where a precharge ends and how fast, with a load left on the bus. A load without limit of resistance is none. */
export const loadedPrecharge = formula(
  {
    id: 'loaded-precharge',
    label: 'Precharge with a load on the bus',
    gives: { final: FINAL, constant: TAU },
    takes: { pack: PACK, resistor: RESISTOR, load: { ...LOAD, holds: [1, 1e9] }, capacitance: CAPACITANCE },
    text: `k = 1 / (1 + R / R_L)
U_e = k · U
τ = k · R · C`,
    source: LOADED,
    leavesOut: 'Loads that take constant power: they draw more at low voltage and hold a bus down altogether.',
    proof: {
      examples: [
        {
          takes: { pack: 400, resistor: 100, load: 900, capacitance: 1e-3 },
          gives: { final: 360, constant: 0.09 },
          within: 1e-9,
          source: WITH_LOAD,
        },
        {
          takes: { pack: 400, resistor: 166.9041, load: 1e9, capacitance: 1e-3 },
          gives: { final: 400, constant: 0.1669041 },
          within: 1e-3,
          source: ONE,
        },
      ],
    },
  },
  ({ pack, resistor, load, capacitance }) => {
    const k = 1 / (1 + resistor / load)
    return { final: k * pack, constant: k * resistor * capacitance }
  },
)

/** Bus voltage a time after the precharge began. */
export const prechargeVoltage = formula(
  {
    id: 'precharge-voltage',
    label: 'Bus voltage during a precharge',
    gives: volts('u', 'bus voltage'),
    takes: { final: FINAL, constant: TAU, time: seconds('t', 'since the precharge began') },
    text: 'u = U_e · (1 − exp(−t / τ))',
    source: CHARGE,
    proof: {
      examples: [
        {
          takes: { final: 400, constant: 0.1, time: 0.1 },
          gives: 252.848,
          within: 5e-4,
          source: byCircuit('400 V, 100 Ω, 1 mF; a circuit simulator agrees'),
        },
        {
          takes: { final: 400, constant: 0.1, time: 0.2 },
          gives: 345.866,
          within: 5e-4,
          source: byCircuit('400 V, 100 Ω, 1 mF; a circuit simulator agrees'),
        },
        {
          takes: { final: 400, constant: 0.1, time: 0.3 },
          gives: 380.085,
          within: 5e-4,
          source: byCircuit('400 V, 100 Ω, 1 mF; a circuit simulator agrees'),
        },
        { takes: { final: 360, constant: 0.09, time: 0.3 }, gives: 347.157, within: 5e-4, source: WITH_LOAD },
      ],
    },
  },
  ({ final, constant, time }) => final * (1 - Math.exp(-time / constant)),
)

/** When the bus reaches a threshold; without limit when it stalls below, which is a load left on. */
export const prechargeReaches = formula(
  {
    id: 'precharge-reaches',
    label: 'Time until a precharge reaches its threshold',
    gives: seconds('t', 'time, without limit when it stalls'),
    takes: { threshold: volts('U_th', 'threshold'), final: FINAL, constant: TAU },
    text: 't = { −τ · ln(1 − U_th / U_e) if U_th < U_e; ∞ otherwise }',
    source: CHARGE,
    proof: {
      examples: [
        { takes: { threshold: 324, final: 360, constant: 0.09 }, gives: 0.20723, within: 5e-6, source: WITH_LOAD },
        { takes: { threshold: 380, final: 400, constant: 0.1669041 }, gives: 0.5, within: 1e-6, source: ONE },
      ],
    },
  },
  ({ threshold, final, constant }) => (threshold < final ? -constant * Math.log(1 - threshold / final) : Number.POSITIVE_INFINITY),
)

/** Energy in the resistor when the bus is shorted and every try lasts until it times out: many times that of a precharge. */
export const stalledPrechargeEnergy = formula(
  {
    id: 'stalled-precharge-energy',
    label: 'Energy in the resistor on a shorted bus',
    gives: joules('E_s', 'energy in the resistor'),
    takes: { pack: PACK, resistor: RESISTOR, timeout: seconds('t_out', 'timeout'), tries: count('N', 'tries in a row') },
    text: 'E_s = N · U² / R · t_out',
    source: { work: 'circuits', place: 'power in a resistor' },
    leavesOut: 'A thermal cut-out, and an early end where the bus voltage does not rise.',
    proof: {
      examples: [
        {
          takes: { pack: 400, resistor: 166.9041, timeout: 1, tries: 1 },
          gives: 959,
          within: 0.5,
          source: byCircuit('400 V on 166.9 Ω for 1 s'),
        },
        {
          takes: { pack: 400, resistor: 166.9041, timeout: 1, tries: 3 },
          gives: 2876,
          within: 0.5,
          source: byCircuit('400 V on 166.9 Ω, three tries of 1 s'),
        },
      ],
    },
  },
  ({ pack, resistor, timeout, tries }) => ((tries * pack ** 2) / resistor) * timeout,
)

/** Power the resistor must stand in the long run when precharges are repeated. */
export const repeatedPrechargePower = formula(
  {
    id: 'repeated-precharge-power',
    label: 'Average power of repeated precharges',
    gives: watts('P_m', 'average power'),
    takes: { energy: joules('E_R', 'energy of one precharge'), tries: count('N', 'precharges'), window: seconds('T_w', 'within') },
    text: 'P_m = E_R · N / T_w',
    source: { work: 'definition', place: 'power is energy over time' },
    leavesOut: 'The pulse itself, for which the resistor’s curve of energy over duration decides.',
    proof: {
      examples: [
        { takes: { energy: 79.8, tries: 3, window: 60 }, gives: 3.99, within: 1e-9, source: byCircuit('three of 79.8 J in a minute') },
      ],
    },
  },
  ({ energy, tries, window }) => (energy * tries) / window,
)
