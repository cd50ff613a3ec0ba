import type { Source } from '../sources.ts'
import { formula } from '../working/formula.ts'
import { amps, byCircuit, farads, henrys, number, ohms, seconds, volts } from './symbols.ts'

const SERIES = { work: 'circuits', place: 'step onto resistance, inductance and capacitance in series' } as const
const APART = volts('ΔU', 'voltage across the contact before it closes')
const RESISTANCE = ohms('R', 'resistance of the loop: pack, cables, contacts, capacitors')
const INDUCTANCE = henrys('L', 'inductance of the loop')
const CAPACITANCE = farads('C', 'capacitors of the bus')
const LOOP = { apart: APART, resistance: RESISTANCE, inductance: INDUCTANCE, capacitance: CAPACITANCE } as const
const simulated = (place: string): Source => byCircuit(`${place}; a circuit simulator agrees`)
const PRECHARGED = simulated('19.915 V onto 1 mF through 25 mΩ and 4 µH')
const EMPTY = simulated('400 V onto an empty 1 mF through 20 mΩ and 5 µH')
const afterPrecharge = { apart: 400 * Math.exp(-3), resistance: 0.025, inductance: 4e-6, capacitance: 1e-3 } as const
const empty = { apart: 400, resistance: 0.02, inductance: 5e-6, capacitance: 1e-3 } as const
/** This near to the border between swinging and creeping both closed forms lose digits to 0/0; their common limit serves, within a millionth. */
const EDGE = 1e-6

/** Time of the peak over √(LC), for a damping. */
const peakPlace = (damping: number): number =>
  damping < 1 - EDGE
    ? Math.atan(Math.sqrt(1 - damping ** 2) / damping) / Math.sqrt(1 - damping ** 2)
    : damping < 1 + EDGE
      ? 1
      : Math.log(damping + Math.sqrt(damping ** 2 - 1)) / Math.sqrt(damping ** 2 - 1)

/**
 * What a contactor sees that closes onto capacitors at another voltage: peak current, when, and how far the capacitors swing past it. Damping below 1 swings,
 * above 1 creeps. Hold it against what the contacts may make, and the peak against the rating of the capacitors.
 */
export const closingPeak = formula(
  {
    id: 'closing-peak',
    label: 'Peak after closing a contactor',
    gives: {
      damping: number('ζ', 'damping'),
      current: amps('I_pk', 'peak current'),
      time: seconds('t_pk', 'after'),
      voltage: volts('U_pk', 'highest voltage of the capacitors'),
    },
    takes: { ...LOOP, before: volts('U_C', 'capacitors before') },
    text: `ζ = R / 2 · √(C / L)
θ = { atan(√(1 − ζ²) / ζ) / √(1 − ζ²) if ζ < 0.999999; 1 if ζ < 1.000001; ln(ζ + √(ζ² − 1)) / √(ζ² − 1) otherwise }
I_pk = ΔU · √(C / L) · exp(−ζ · θ)
t_pk = θ · √(L · C)
U_pk = U_C + { ΔU · (1 + exp(−π · ζ / √(1 − ζ²))) if ζ < 0.999999; ΔU otherwise }`,
    source: SERIES,
    leavesOut: 'The precharge resistor beside it, sag of the pack, loads on the bus, bounce of the contacts.',
    proof: {
      examples: [
        {
          takes: { ...afterPrecharge, before: 380.085 },
          gives: { current: 238.79 },
          within: 0.005,
          source: PRECHARGED,
          because: 'the simulator, with the precharge resistor left in, gives 238.7 A',
        },
        { takes: { ...afterPrecharge, before: 380.085 }, gives: { time: 88.51e-6 }, within: 5e-9, source: PRECHARGED },
        {
          takes: { ...afterPrecharge, before: 380.085 },
          gives: { voltage: 410.56 },
          within: 0.02,
          source: PRECHARGED,
          because: 'the simulator’s step is 1 µs',
        },
        { takes: { ...empty, before: 0 }, gives: { current: 4612.4 }, within: 0.5, source: EMPTY },
        { takes: { ...empty, before: 0 }, gives: { time: 102.06e-6 }, within: 2e-8, source: EMPTY },
        { takes: { ...empty, before: 0 }, gives: { voltage: 655.36 }, within: 0.05, source: EMPTY },
        {
          takes: { apart: 20, resistance: 1, inductance: 4e-6, capacitance: 1e-3, before: 380 },
          gives: { voltage: 400 },
          within: 1e-9,
          source: byCircuit('20 V through 1 Ω: it creeps up and never passes the pack'),
        },
      ],
    },
  },
  ({ apart, resistance, inductance, capacitance, before }) => {
    const damping = (resistance / 2) * Math.sqrt(capacitance / inductance),
      place = peakPlace(damping),
      overshoot = Math.exp((-Math.PI * damping) / Math.sqrt(1 - damping ** 2))
    return {
      damping,
      current: apart * Math.sqrt(capacitance / inductance) * Math.exp(-damping * place),
      time: place * Math.sqrt(inductance * capacitance),
      voltage: before + (damping < 1 - EDGE ? apart * (1 + overshoot) : apart),
    }
  },
)

/** Current and capacitor voltage at a moment after closing. */
export const closingAfter = formula(
  {
    id: 'closing-after',
    label: 'A moment after closing a contactor',
    gives: { current: amps('i', 'current'), gained: volts('u', 'voltage the capacitors have gained') },
    takes: { ...LOOP, time: seconds('t', 'after closing') },
    text: `ζ = R / 2 · √(C / L)
θ = t / √(L · C)
w = √(|1 − ζ²|)
f = { exp(−ζ · θ) · sin(w · θ) / w if ζ < 0.999999; exp(−ζ · θ) · θ if ζ < 1.000001; (exp((w − ζ) · θ) − exp((−w − ζ) · θ)) / (2 · w) otherwise }
g = { exp(−ζ · θ) · cos(w · θ) if ζ < 0.999999; exp(−ζ · θ) if ζ < 1.000001; (exp((w − ζ) · θ) + exp((−w − ζ) · θ)) / 2 otherwise }
i = ΔU · √(C / L) · f
u = ΔU · (1 − g − ζ · f)`,
    source: SERIES,
    leavesOut: 'As for the peak.',
    proof: {
      examples: [
        { takes: { ...empty, time: 100e-6 }, gives: { gained: 298.23 }, within: 0.05, source: EMPTY },
        { takes: { ...empty, time: 500e-6 }, gives: { current: 1381.1 }, within: 0.5, source: EMPTY },
        { takes: { ...empty, time: 1e-3 }, gives: { gained: 384.94 }, within: 0.05, source: EMPTY },
        { takes: { ...empty, time: 224.4e-6 }, gives: { gained: 655.36 }, within: 0.05, source: EMPTY },
      ],
    },
  },
  ({ apart, resistance, inductance, capacitance, time }) => {
    const z = (resistance / 2) * Math.sqrt(capacitance / inductance),
      s = time / Math.sqrt(inductance * capacitance),
      w = Math.sqrt(Math.abs(1 - z ** 2)),
      fade = Math.exp(-z * s)
    const [slow, fast] = [Math.exp((w - z) * s), Math.exp((-w - z) * s)]
    const [f, g] =
      z < 1 - EDGE
        ? [(fade * Math.sin(w * s)) / w, fade * Math.cos(w * s)]
        : z < 1 + EDGE
          ? [fade * s, fade]
          : [(slow - fast) / (2 * w), (slow + fast) / 2]
    return { current: apart * Math.sqrt(capacitance / inductance) * f, gained: apart * (1 - g - z * f) }
  },
)

/** When a rising fault reaches a current, such as the most a contactor may break; never, where the resistance holds it below. */
export const faultReaches = formula(
  {
    id: 'fault-reaches',
    label: 'Time until a fault reaches a current',
    gives: seconds('t', 'time, without limit when it stays below'),
    takes: { current: amps('I', 'current'), prospective: amps('I_k', 'prospective current'), constant: seconds('τ', 'time constant') },
    text: 't = { −τ · ln(1 − I / I_k) if I < I_k; ∞ otherwise }',
    source: { work: 'circuits', place: 'step onto resistance and inductance in series' },
    proof: {
      examples: [
        {
          takes: { current: 5000, prospective: 12e3, constant: 0.5e-3 },
          gives: 269.5e-6,
          within: 5e-9,
          source: simulated('360 V shorted through 30 mΩ and 15 µH'),
        },
      ],
    },
  },
  ({ current, prospective, constant }) =>
    current < prospective ? -constant * Math.log(1 - current / prospective) : Number.POSITIVE_INFINITY,
)
