import { at, type Curve } from '../numerics/curve.ts'
import { formula } from '../working/formula.ts'

const watts = (symbol: string, label: string) => ({ symbol, unit: 'W', label }) as const
const volts = (symbol: string, label: string) => ({ symbol, unit: 'V', label }) as const
const amps = (symbol: string, label: string) => ({ symbol, unit: 'A', label }) as const
const CIRCUIT = { work: 'circuits', place: 'source with inner resistance' } as const

/** Battery current a unit draws at its peak power and stated voltage. */
export const peakDraw = formula(
  {
    id: 'peak-draw',
    label: 'Battery current at peak power',
    gives: amps('I_0', 'current'),
    takes: {
      power: watts('P', 'peak power'),
      loss: watts('P_V', 'loss of motor and inverter at the peak'),
      stated: volts('U_0', 'stated voltage'),
    },
    text: 'I_0 = (P + P_V) / U_0',
    source: { work: 'circuits', place: 'power is voltage times current' },
    proof: { none: 'definition' },
  },
  ({ power, loss, stated }) => (power + loss) / stated,
)
export const drawTogether = formula(
  {
    id: 'draw-together',
    label: 'Current of all units',
    gives: amps('I_0', 'current'),
    takes: { currents: { ...amps('I_k', 'current of one unit'), many: true } },
    text: 'I_0 = Σ I_k',
    source: { work: 'circuits', place: 'sum at a node' },
    proof: { none: 'definition' },
  },
  ({ currents }) => currents.reduce((a, b) => a + b, 0),
)

/**
 * Battery voltage and current while the motors pull their hardest: the voltage sags by the resistance at this charge and temperature; current is held to what the cells allow and to
 * what keeps the lowest voltage.
 */
export const batteryUnderPull = formula(
  {
    id: 'battery-under-pull',
    label: 'Battery under full pull',
    gives: { voltage: volts('U', 'battery voltage under full pull'), current: amps('I', 'battery current at full pull') },
    takes: {
      draw: amps('I_0', 'current the motors would draw'),
      openCircuit: { symbol: 'E', unit: ['1', 'V'], label: 'open-circuit voltage over charge', curve: true },
      resistance: { symbol: 'R_z', unit: ['1', 'Ω'], label: 'ohmic resistance over charge', curve: true },
      factor: { symbol: 'f_R', unit: '1', label: 'resistance factor' },
      branch: { symbol: 'R_b', unit: 'Ω', label: 'branch resistance' },
      cold: { symbol: 'k_T', unit: ['K', '1'], label: 'factor on resistance over temperature', curve: true },
      charge: { symbol: 'z', unit: '1', label: 'charge', shows: 'share' },
      temperature: { symbol: 'T', unit: 'K', label: 'temperature of the cells', shows: 'temperature' },
      lowest: volts('U_min', 'lowest voltage allowed'),
      most: amps('I_max', 'peak current allowed'),
    },
    text: ['R = (R_z(z) · f_R + R_b) · k_T(T)', 'I = max(0, min(min(I_0, I_max), (E(z) − U_min) / R))', 'U = E(z) − R · I'].join('\n'),
    source: CIRCUIT,
    leavesOut:
      'That a motor draws less current at a voltage above the stated one. The branch is counted as settled, which is right after some ten seconds.',
    proof: { none: 'Kirchhoff' },
  },
  ({ draw, openCircuit, resistance, factor, branch, cold, charge, temperature, lowest, most }) => {
    const r = (at(resistance as Curve, charge) * factor + branch) * at(cold as Curve, temperature),
      e = at(openCircuit as Curve, charge)
    const current = Math.max(0, Math.min(draw, most, (e - lowest) / r))
    return { current, voltage: e - r * current }
  },
)
/** Peak power of a unit from this battery: less where voltage or current fall short of what its rating asks; never more than rated. */
export const powerFromBattery = formula(
  {
    id: 'power-from-battery',
    label: 'Peak power from the battery',
    gives: watts('P_U', 'power'),
    takes: {
      power: watts('P', 'peak power'),
      voltage: volts('U', 'battery voltage under full pull'),
      stated: volts('U_0', 'stated voltage'),
      current: amps('I', 'battery current at full pull'),
      draw: amps('I_0', 'current the motors would draw'),
    },
    text: 'P_U = P · min(1, U · I / (U_0 · I_0))',
    source: { work: 'ehsani', place: 'field weakening above base speed', mark: 'from memory' },
    leavesOut: 'What an inverter may give above the stated voltage: its maker says so or it is not counted.',
    proof: { none: 'proportion, cut off at what is stated' },
  },
  ({ power, voltage, stated, current, draw }) => power * Math.min(1, (voltage * current) / (stated * draw)),
)
/** What a unit makes of a power the pack gives for long: all units share it as their ratings do, losses and all. */
export const powerFromPack = formula(
  {
    id: 'power-from-pack',
    label: 'Power of a unit from what the pack gives',
    gives: watts('P_b', 'power'),
    takes: {
      limit: watts('P_z', 'power the pack gives'),
      rated: watts('P_c', 'continuous power of this unit'),
      all: { ...watts('P_k', 'continuous power of each unit'), many: true },
      losses: { ...watts('V_k', 'loss of each unit there'), many: true },
    },
    text: 'P_b = P_z · P_c / (Σ P_k + Σ V_k)',
    source: { work: 'definition', place: 'proportion' },
    leavesOut: 'What cabin heater and lights take beside the motors.',
    proof: {
      examples: [
        {
          takes: { limit: 44e3, rated: 40e3, all: [40e3], losses: [4e3] },
          gives: 40e3,
          within: 1e-6,
          source: { work: 'definition', place: 'worked by hand: 44 kW are 40 kW and 4 kW of loss' },
        },
      ],
    },
  },
  ({ limit, rated, all, losses }) => (limit * rated) / (all.reduce((a, b) => a + b, 0) + losses.reduce((a, b) => a + b, 0)),
)
/** Power for as long as one likes: what motor and battery both hold. */
export const powerHeld = formula(
  {
    id: 'power-held',
    label: 'Power that motor and battery hold',
    gives: watts('P', 'power'),
    takes: {
      motor: watts('P_m', 'power of the motor'),
      pack: watts('P_b', 'power from what the pack gives'),
      peak: watts('P_U', 'peak power from the battery'),
    },
    text: 'P = min(P_m, P_b, P_U)',
    source: { work: 'definition', place: 'the least governs' },
    proof: { none: 'definition' },
  },
  ({ motor, pack, peak }) => Math.min(motor, pack, peak),
)
