import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'
import { AMPERE, amps, byCircuit, count, OHM, ohms, share, VOLT, volts } from './symbols.ts'

const PILOT = { work: 'iec-61851-1-reprints', place: 'table of duty cycle and current' } as const
const STATES = { work: 'iec-61851-1-reprints', place: 'table of pilot states' } as const
const CABLE = { work: 'iec-61851-1-reprints', place: 'table of cable codes' } as const
const HUNDRED = { work: 'iec-61851-1', place: 'cable code of 100 Ω' } as const
const TYPE_1 = { work: 'sae-j1772', place: 'proximity circuit of inlet and plug' } as const
const SOURCE = standard('pilot.source', 'pilot source, positive half', 'U_s', 12, 'V', STATES)
const SERIES = standard('pilot.series', 'resistance of the pilot source', 'R_s', 1000, 'Ω', STATES)
const WINDOW = standard('pilot.window', 'window about each state', 'δ', 1, '1', {
  work: 'iec-61851-1',
  place: 'windows of the pilot voltage, ±1 V',
})
const CODE_SPREAD = standard('cable-code.spread', 'spread of a cable code', 'k_c', 0.03, '1', {
  work: 'iec-61851-1',
  place: 'tolerance of cable codes, ±3 %',
})
const SUPPLY = standard('proximity.supply', 'supply of the inlet', 'U_p', 5, 'V', TYPE_1)
const UP = standard('proximity.up', 'from the supply', 'R_u', 330, 'Ω', TYPE_1)
const DOWN = standard('proximity.down', 'to earth', 'R_d', 2700, 'Ω', TYPE_1)

const side = (...ohms: number[]): number => 1 / ohms.reduce((sum, r) => sum + 1 / r, 0)
/** What a car puts between pilot and earth, behind its diode. A conversion with a sealed battery shows C, never D: D asks the room for a fan. */
export const PILOT_LOADS = {
  'B, connected': standard('pilot.b', 'connected', 'R_v', 2740, 'Ω', STATES),
  'C, ready': standard('pilot.c', 'ready: 2.74 kΩ and 1.3 kΩ side by side', 'R_v', side(2740, 1300), 'Ω', STATES),
  'D, ready, asks for ventilation': standard('pilot.d', '2.74 kΩ and 270 Ω side by side', 'R_v', side(2740, 270), 'Ω', STATES),
} as const
export const PILOT_STATES = {
  0: 'unclear',
  1: 'A, no car',
  2: 'B, connected',
  3: 'C, ready',
  4: 'D, asks for ventilation',
  5: 'E, no pilot',
  6: 'F, fault',
} as const
/** Resistance of a type 1 plug between proximity and earth. */
export const TYPE_1_PLUG = {
  latched: standard('proximity.latched', 'plug latched', 'R_pp', 150, 'Ω', TYPE_1),
  pressed: standard('proximity.pressed', 'button pressed', 'R_pp', 480, 'Ω', TYPE_1),
} as const

/**
 * Current a charging point offers by the duty cycle of its pilot; 0 wherever it is not clear, at 5 % too, where only digital talk may ask for current. The law
 * jumps from 51 to 52.5 A at 85 %: within the error of a reading a charger takes the lower figure.
 */
export const pilotCurrent = formula(
  {
    id: 'pilot-current',
    label: 'Current a charging point offers',
    gives: { current: amps('I_cp', 'current offered'), digital: count('d', '1: digital talk is asked for') },
    takes: { duty: { ...share('D', 'duty cycle of the pilot'), holds: [0, 1] } },
    uses: [AMPERE],
    text: `I_cp = A_1 · { 0 if D < 0.08; 6 if D < 0.1; 60 · D if D ≤ 0.85; 250 · (D − 0.64) if D ≤ 0.96; 80 if D ≤ 0.97; 0 otherwise }
d = { 1 if D ≥ 0.03 and D ≤ 0.07; 0 otherwise }`,
    source: PILOT,
    proof: {
      examples: (
        [
          [0.08, 6],
          [0.1, 6],
          [0.16, 9.6],
          [0.25, 15],
          [0.3, 18],
          [0.5, 30],
          [0.85, 51],
          [0.86, 55],
          [0.9, 65],
          [0.96, 80],
          [0.98, 0],
        ] as const
      ).map(([duty, current]) => ({ takes: { duty }, gives: { current }, within: 1e-9, source: PILOT })),
    },
  },
  ({ duty: d }) => ({
    current: AMPERE.value * (d < 0.08 ? 0 : d < 0.1 ? 6 : d <= 0.85 ? 60 * d : d <= 0.96 ? 250 * (d - 0.64) : d <= 0.97 ? 80 : 0),
    digital: d >= 0.03 && d <= 0.07 ? 1 : 0,
  }),
)

/** Duty cycle that offers a current; 1, a steady pilot and no charge, below 6 A. Above 80 A it stays at that of 80 A. */
export const pilotDuty = formula(
  {
    id: 'pilot-duty',
    label: 'Duty cycle for a current',
    gives: share('D', 'duty cycle of the pilot'),
    takes: { current: { ...amps('I_cp', 'current to offer'), holds: [0, 80] } },
    uses: [AMPERE],
    text: `i = min(80, I_cp / A_1)
D = { 1 if i < 6; i / 60 if i ≤ 51; i / 250 + 0.64 otherwise }`,
    source: PILOT,
    proof: {
      examples: (
        [
          [13, 0.21667],
          [16, 0.26667],
          [20, 0.33333],
          [32, 0.53333],
          [48, 0.8],
          [80, 0.96],
        ] as const
      ).map(([current, duty]) => ({
        takes: { current },
        gives: duty,
        within: 5e-6,
        source: { ...PILOT, place: `table of duty cycle and current: ${current} A; recomputed` },
      })),
    },
  },
  ({ current }) => {
    const i = Math.min(80, current / AMPERE.value)
    return i < 6 ? 1 : i <= 51 ? i / 60 : i / 250 + 0.64
  },
)

/** Voltage of the pilot, positive half, with a car’s resistance behind its diode. The drop of the diode is why 9, 6 and 3 V come out. */
export const pilotVoltage = formula(
  {
    id: 'pilot-voltage',
    label: 'Voltage of the pilot',
    gives: volts('U_cp', 'pilot, positive half'),
    takes: { load: ohms('R_v', 'resistance in the car'), diode: { ...volts('U_d', 'drop of the diode'), holds: [0, 1] } },
    uses: [SOURCE, SERIES],
    text: 'U_cp = (U_s − U_d) · R_v / (R_s + R_v) + U_d',
    source: { work: 'circuits', place: 'voltage divider' },
    leavesOut: 'Tolerance of source and resistors.',
    proof: {
      examples: (
        [
          ['B, connected', 0.7, 8.979],
          ['C, ready', 0.7, 5.995],
          ['D, ready, asks for ventilation', 0.7, 2.929],
          ['B, connected', 0, 8.791],
          ['C, ready', 0, 5.623],
          ['D, ready, asks for ventilation', 0, 2.367],
        ] as const
      ).map(([state, diode, gives]) => ({
        takes: { load: PILOT_LOADS[state].value, diode },
        gives,
        within: 5e-4,
        source: byCircuit(`state ${state}, diode drop of ${diode} V`),
      })),
    },
  },
  ({ load, diode }) => ((SOURCE.value - diode) * load) / (SERIES.value + load) + diode,
)

/** State a pilot voltage stands for, as `PILOT_STATES` numbers them; 0 between the windows, where nothing may charge. */
export const pilotState = formula(
  {
    id: 'pilot-state',
    label: 'State of the pilot',
    gives: count('s', 'state: 1 A, 2 B, 3 C, 4 D, 5 E, 6 F, 0 unclear'),
    takes: { voltage: { ...volts('U_cp', 'pilot, positive half'), holds: [-15, 15] } },
    uses: [VOLT, WINDOW],
    text: `u = U_cp / V_1
s = { 1 if |u − 12| ≤ δ; 2 if |u − 9| ≤ δ; 3 if |u − 6| ≤ δ; 4 if |u − 3| ≤ δ; 5 if |u| ≤ δ; 6 if |u + 12| ≤ δ; 0 otherwise }`,
    source: STATES,
    proof: {
      examples: (
        [
          [12, 1],
          [8.979, 2],
          [5.995, 3],
          [2.929, 4],
          [0, 5],
          [-12, 6],
          [7.5, 0],
        ] as const
      ).map(([voltage, gives]) => ({ takes: { voltage }, gives, within: 0, source: STATES })),
    },
  },
  ({ voltage }) => {
    const u = voltage / VOLT.value,
      levels = [12, 9, 6, 3, 0, -12]
    return levels.findIndex(level => Math.abs(u - level) <= WINDOW.value) + 1
  },
)

/** Most current of a type 2 cable by the resistor in its plug; 0 outside the windows of all codes, and then nothing charges. */
export const cableCurrent = formula(
  {
    id: 'cable-current',
    label: 'Current a charging cable is coded for',
    gives: amps('I_cab', 'current of the cable'),
    takes: {
      code: { ...ohms('R_pp', 'resistance between proximity and earth'), holds: [50, 2000] },
      phases: { ...count('n', 'phases used'), holds: [1, 3] },
    },
    uses: [AMPERE, OHM, CODE_SPREAD],
    text: `r = R_pp / Ω_1
I_cab = A_1 · { 13 if |r − 1500| ≤ k_c · 1500; 20 if |r − 680| ≤ k_c · 680; 32 if |r − 220| ≤ k_c · 220; 70 if |r − 100| ≤ k_c · 100 and n < 2; 63 if |r − 100| ≤ k_c · 100; 0 otherwise }`,
    source: CABLE,
    proof: {
      examples: [
        { takes: { code: 1500, phases: 1 }, gives: 13, within: 0, source: CABLE },
        { takes: { code: 680, phases: 1 }, gives: 20, within: 0, source: CABLE },
        { takes: { code: 220, phases: 3 }, gives: 32, within: 0, source: CABLE },
        { takes: { code: 100, phases: 3 }, gives: 63, within: 0, source: HUNDRED },
        { takes: { code: 100, phases: 1 }, gives: 70, within: 0, source: HUNDRED },
        { takes: { code: 400, phases: 1 }, gives: 0, within: 0, source: CABLE, because: 'no code: do not charge' },
      ],
    },
  },
  ({ code, phases }) => {
    const r = code / OHM.value,
      within = (nominal: number): boolean => Math.abs(r - nominal) <= CODE_SPREAD.value * nominal
    return AMPERE.value * (within(1500) ? 13 : within(680) ? 20 : within(220) ? 32 : within(100) ? (phases < 2 ? 70 : 63) : 0)
  },
)

/** Voltage of the proximity pin of a type 1 inlet: open, plug latched, button pressed. */
export const proximityVoltage = formula(
  {
    id: 'proximity-voltage',
    label: 'Voltage of the proximity pin, type 1',
    gives: volts('U_pp', 'proximity pin'),
    takes: { plug: { ...ohms('R_pp', 'plug, proximity to earth'), holds: [50, 1e12] } },
    uses: [SUPPLY, UP, DOWN],
    text: 'U_pp = U_p / (1 + R_u · (1 / R_d + 1 / R_pp))',
    source: { work: 'circuits', place: 'voltage divider' },
    proof: {
      examples: [
        { takes: { plug: 1e12 }, gives: 4.455, within: 5e-4, source: { ...TYPE_1, place: 'inlet open; recomputed' } },
        { takes: { plug: 150 }, gives: 1.505, within: 5e-4, source: { ...TYPE_1, place: 'plug latched; recomputed' } },
        { takes: { plug: 480 }, gives: 2.763, within: 5e-4, source: { ...TYPE_1, place: 'button pressed; recomputed' } },
      ],
    },
  },
  ({ plug }) => SUPPLY.value / (1 + UP.value * (1 / DOWN.value + 1 / plug)),
)
