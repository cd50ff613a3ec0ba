import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'
import { byCircuit, ohms, practice, seconds, VOLT, volts } from './symbols.ts'

const TABLE = { work: 'iec-60364-6', place: 'table of test voltages and least readings' } as const
const SETTING = { work: 'iso-6469-3', place: '8.2.2: at least the highest working voltage' } as const
const AIS = { work: 'ais-038', place: 'Annex Ab' } as const
const EXTRA_LOW = standard('extra-low-voltage', 'extra-low voltage up to', 'U_50', 50, 'V', TABLE)
const LOW_PASS = standard('insulation-pass-low', 'least reading at extra-low voltage', 'R_50', 0.5e6, 'Ω', TABLE)
const PASS = standard('insulation-pass', 'least reading above', 'R_t', 1e6, 'Ω', TABLE)
const ADDED = standard('withstand-added', 'added to the mains voltage', 'U_add', 1200, 'V', AIS)
const TIMES = standard('discharge-after-test', 'discharge over test', 'k_d', 4, '1', practice('discharge after an insulation test'))
const WORKING = { ...volts('U_w', 'highest working voltage'), holds: [0, 1500] } as const

/**
 * Setting of an insulation tester: the next of 250, 500 and 1000 V that reaches the working voltage; infinite where none does.
 *
 * The circuit is dead, the pack and all electronics are off it. What cannot stand the setting is taken off; the setting is never lowered below the working
 * voltage. The car’s own 12 V system is never tested this way.
 */
export const testerSetting = formula(
  {
    id: 'insulation-tester-setting',
    label: 'Setting of the insulation tester',
    gives: volts('U_set', 'setting'),
    takes: { voltage: WORKING },
    uses: [VOLT],
    text: `u = U_w / V_1
U_set = V_1 · { 250 if u ≤ 50; 500 if u ≤ 500; 1000 if u ≤ 1000; ∞ otherwise }`,
    source: SETTING,
    proof: {
      examples: [
        { takes: { voltage: 48 }, gives: 250, within: 0, source: TABLE },
        { takes: { voltage: 403.2 }, gives: 500, within: 0, source: TABLE, because: 'packs of 60 to 500 V' },
        { takes: { voltage: 500 }, gives: 500, within: 0, source: TABLE },
        { takes: { voltage: 756 }, gives: 1000, within: 0, source: TABLE },
      ],
    },
  },
  ({ voltage }) => {
    const u = voltage / VOLT.value
    return VOLT.value * (u <= 50 ? 250 : u <= 500 ? 500 : u <= 1000 ? 1000 : Number.POSITIVE_INFINITY)
  },
)

/** Least reading to build for. The legal limit stays that of ohms for each volt. */
export const testerPass = formula(
  {
    id: 'insulation-tester-pass',
    label: 'Least reading of the insulation tester',
    gives: ohms('R_pass', 'least reading'),
    takes: { voltage: WORKING },
    uses: [EXTRA_LOW, LOW_PASS, PASS],
    text: 'R_pass = { R_50 if U_w ≤ U_50; R_t otherwise }',
    source: TABLE,
    leavesOut: 'A table for wiring in buildings, borrowed as a target.',
    proof: {
      examples: [
        { takes: { voltage: 48 }, gives: 0.5e6, within: 0, source: TABLE },
        { takes: { voltage: 403.2 }, gives: 1e6, within: 0, source: TABLE },
      ],
    },
  },
  ({ voltage }) => (voltage <= EXTRA_LOW.value ? LOW_PASS.value : PASS.value),
)

/** Voltage that stands between the other pole and the body when a tester is put on one pole of a charged pack: why that is never done. */
export const liveTesterVoltage = formula(
  {
    id: 'live-tester-voltage',
    label: 'Other pole to body with a tester on a live pack',
    gives: volts('U_x', 'other pole to body'),
    takes: { pack: volts('U_p', 'pack'), setting: volts('U_set', 'setting of the tester') },
    text: 'U_x = U_p + U_set',
    source: { work: 'circuits', place: 'voltages in series add' },
    proof: {
      examples: [{ takes: { pack: 400, setting: 500 }, gives: 900, within: 1e-12, source: byCircuit('500 V on one pole of 400 V') }],
    },
  },
  ({ pack, setting }) => pack + setting,
)

/** How long to discharge after a test, unless less than 5 V is measured before. */
export const dischargeAfterTest = formula(
  {
    id: 'discharge-after-test',
    label: 'Discharge after an insulation test',
    gives: seconds('t_d', 'discharge for'),
    takes: { time: seconds('t_t', 'test voltage held for') },
    uses: [TIMES],
    text: 't_d = k_d · t_t',
    source: practice('four times the test, or until under 5 V is measured'),
    proof: { none: 'a habit of the trade' },
  },
  ({ time }) => TIMES.value * time,
)

/** Type test of a charger's design between inlet and body. No check for a finished car: it harms what passes. */
export const withstandTest = formula(
  {
    id: 'withstand-test',
    label: 'Withstand voltage of a charger, type test',
    gives: { rms: volts('U_wst', 'AC, rms, for a minute'), peak: volts('U_pk', 'its peak, as DC') },
    takes: { mains: volts('U_n', 'mains voltage') },
    uses: [ADDED],
    text: `U_wst = 2 · (U_n + U_add)
U_pk = √2 · U_wst`,
    source: AIS,
    proof: {
      examples: [
        { takes: { mains: 230 }, gives: { rms: 2860 }, within: 1e-9, source: { ...AIS, place: 'Annex Ab: 230 V; recomputed' } },
        { takes: { mains: 230 }, gives: { peak: 4044.7 }, within: 0.05, source: { ...AIS, place: 'Annex Ab: 230 V; recomputed' } },
      ],
    },
  },
  ({ mains }) => {
    const rms = 2 * (mains + ADDED.value)
    return { rms, peak: Math.SQRT2 * rms }
  },
)
