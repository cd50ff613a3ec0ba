import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'

const ETRTO = { work: 'etrto', place: 'load at lower pressure', mark: 'from memory' } as const
const DERATE = { work: 'etrto', place: 'load at high speed, as printed in a handbook of vehicle engineering (fig. 10.1-14)' } as const
const EXPONENT = standard('tyre-pressure-exponent', 'Exponent of load over pressure', 'n_p', 0.8, '1', ETRTO)
const mass = (symbol: string, label: string) => ({ symbol, unit: 'kg', label }) as const
const pressure = (symbol: string, label: string) => ({ symbol, unit: 'Pa', label, shows: 'pressure', holds: [150e3, 350e3] }) as const
const speed = (symbol: string, label: string) => ({ symbol, unit: 'm/s', label, shows: 'speed' }) as const
const ABOVE_H = standard('tyre-symbol-h', 'Between symbols H and V', 'v_HV', 225 / 3.6, 'm/s', DERATE)
const ABOVE_V = standard('tyre-symbol-v', 'Between symbols V and W', 'v_VW', 255 / 3.6, 'm/s', DERATE)
const SPAN = standard('tyre-span', 'Span of speed over which load is lost', 'Δv', 30 / 3.6, 'm/s', DERATE)
const REIMPELL = { work: 'reimpell', place: 'tyre pressure at high speed', mark: 'from memory' } as const
const FMVSS = { work: 'fmvss-110', place: 'load reserve', mark: 'from memory' } as const
const FROM_SPEED = standard('tyre-pressure-from', 'Speed from which pressure is added', 'v_1', 160 / 3.6, 'm/s', REIMPELL)
const TO_SPEED = standard('tyre-pressure-to', 'Speed to which pressure is added', 'v_2', 210 / 3.6, 'm/s', REIMPELL)
const SPEED_STEP = standard('tyre-speed-step', 'Speed one step of pressure is for', 'v_3', 17 / 3.6, 'm/s', REIMPELL)
const PRESSURE_STEP = standard('tyre-pressure-step', 'One step of pressure', 'Δp_1', 10e3, 'Pa', REIMPELL)
const RESERVE_US = standard('tyre-reserve-us', 'Share of the load kept for normal use, US', 'k_r', 0.94, '1', FMVSS)

/** Load each of the two tyres of an axle has to carry. */
export const loadPerTyre = formula(
  {
    id: 'load-per-tyre',
    label: 'Load on one tyre',
    gives: mass('m_tyre', 'load on one tyre'),
    takes: { axle: mass('m_ax', 'axle mass') },
    text: 'm_tyre = m_ax / 2',
    source: { work: 'statics', place: 'two tyres share an axle' },
    leavesOut: 'Left and right loaded unequally.',
    proof: { none: 'definition' },
  },
  ({ axle }) => axle / 2,
)

/** Load two tyres of an axle may carry at the speed the car reaches: the load of the index, less above the speed their symbol starts to lose it at. */
export const axleLoadOfTyres = formula(
  {
    id: 'axle-load-of-tyres',
    label: 'Load the tyres of an axle may carry',
    gives: mass('m_ty', 'load of two tyres'),
    takes: { each: mass('m_LI', 'load of the index'), keeps: { symbol: 'k_v', unit: '1', label: 'share kept at speed', shows: 'share' } },
    text: 'm_ty = 2 · m_LI · k_v',
    source: { work: 'un-r30', place: 'Annex 4, load index' },
    proof: {
      examples: [
        { takes: { each: 560, keeps: 0.91 }, gives: 2 * 509.6, within: 0.05, source: DERATE, because: '88V at 240 km/h: 509.6 kg each' },
      ],
    },
  },
  ({ each, keeps }) => 2 * each * keeps,
)

/**
 * Share of its rated load a tyre keeps at a speed: all of it to 210 km/h (V), 240 km/h (W) or 270 km/h (Y); from there down in a straight line to 91 % at
 * 240 km/h (V), 85 % at 270 km/h (W), 85 % at 300 km/h (Y). Slower symbols keep all of it to their speed.
 */
export const loadKeptAtSpeed = formula(
  {
    id: 'load-kept-at-speed',
    label: 'Share of the rated load kept at speed',
    gives: { symbol: 'k_v', unit: '1', shows: 'share' },
    takes: {
      speed: { ...speed('v', 'speed'), holds: [0, 300 / 3.6] },
      rated: { ...speed('v_sym', 'speed of the symbol'), holds: [100 / 3.6, 300 / 3.6] },
    },
    uses: [ABOVE_H, ABOVE_V, SPAN],
    text: 'd = { 0.15 if v_sym > v_VW; 0.09 if v_sym > v_HV; 0 otherwise }\nk_v = 1 − d · max(0, v − v_sym + Δv) / Δv',
    source: DERATE,
    leavesOut: 'Above the speed of the symbol the tyre must not be used at all.',
    proof: {
      examples: [
        { takes: { speed: 240 / 3.6, rated: 240 / 3.6 }, gives: 0.91, within: 1e-9, source: DERATE },
        { takes: { speed: 270 / 3.6, rated: 270 / 3.6 }, gives: 0.85, within: 1e-9, source: DERATE },
        { takes: { speed: 300 / 3.6, rated: 300 / 3.6 }, gives: 0.85, within: 1e-9, source: DERATE },
        { takes: { speed: 225 / 3.6, rated: 240 / 3.6 }, gives: 0.955, within: 1e-9, source: DERATE, because: 'half way' },
        { takes: { speed: 190 / 3.6, rated: 190 / 3.6 }, gives: 1, within: 0, source: DERATE },
      ],
    },
  },
  ({ speed, rated }) => {
    const lost = rated > ABOVE_V.value ? 0.15 : rated > ABOVE_H.value ? 0.09 : 0
    return 1 - (lost * Math.max(0, speed - rated + SPAN.value)) / SPAN.value
  },
)

/** Load a tyre carries below its reference pressure. */
export const loadAtPressure = formula(
  {
    id: 'load-at-pressure',
    label: 'Tyre load at a lower pressure',
    gives: mass('m_p', 'load at this pressure'),
    takes: {
      each: mass('m_LI', 'load of the index'),
      pressure: pressure('p', 'pressure'),
      reference: pressure('p_LI', 'reference pressure: 250 kPa, reinforced 290 kPa'),
    },
    uses: [EXPONENT],
    text: 'm_p = m_LI · exp(n_p · ln(p / p_LI))',
    source: ETRTO,
    proof: {
      examples: [
        {
          takes: { each: 560, pressure: 200e3, reference: 250e3 },
          gives: 468,
          within: 0.6,
          source: ETRTO,
          because: 'index 88, worked by hand, whole kilograms',
        },
        {
          takes: { each: 690, pressure: 230e3, reference: 290e3 },
          gives: 573,
          within: 0.6,
          source: ETRTO,
          because: 'index 95 reinforced, worked by hand, whole kilograms',
        },
      ],
    },
  },
  ({ each, pressure, reference }) => each * (pressure / reference) ** EXPONENT.value,
)
/** Pressure a tyre needs for a load. */
export const pressureForLoad = formula(
  {
    id: 'pressure-for-load',
    label: 'Tyre pressure for a load',
    gives: { symbol: 'p', unit: 'Pa', shows: 'pressure' },
    takes: {
      load: mass('m_tyre', 'load on the tyre'),
      each: mass('m_LI', 'load of the index'),
      reference: pressure('p_LI', 'reference pressure: 250 kPa, reinforced 290 kPa'),
    },
    uses: [EXPONENT],
    text: 'p = p_LI · exp(ln(m_tyre / m_LI) / n_p)',
    source: ETRTO,
    proof: {
      examples: [
        {
          takes: { load: 500, each: 560, reference: 250e3 },
          gives: 217e3,
          within: 600,
          source: ETRTO,
          because: 'index 88 at 500 kg, worked by hand, whole kilopascals',
        },
      ],
    },
  },
  ({ load, each, reference }) => reference * (load / each) ** (1 / EXPONENT.value),
)
/** The same by the United States rule for P-metric tyres. */
export const loadAtPressureUs = formula(
  {
    id: 'load-at-pressure-us',
    label: 'Tyre load at a lower pressure, P-metric',
    gives: mass('m_p', 'load at this pressure'),
    takes: {
      each: mass('m_LI', 'load of the index'),
      pressure: pressure('p', 'pressure'),
      reference: pressure('p_LI', 'reference pressure: 240 kPa'),
    },
    text: 'm_p = m_LI · √(p / p_LI)',
    source: { work: 'practice', place: 'US P-metric load tables', mark: 'from memory' },
    proof: {
      examples: [
        {
          takes: { each: 560, pressure: 200e3, reference: 240e3 },
          gives: 511,
          within: 0.6,
          source: { work: 'practice', place: 'US P-metric load tables: index 88 at 200 kPa', mark: 'from memory' },
          because: 'whole kilograms',
        },
      ],
    },
  },
  ({ each, pressure, reference }) => each * Math.sqrt(pressure / reference),
)

/** Pressure a tyre gets on top for speeds above 160 km/h. */
export const pressureForSpeed = formula(
  {
    id: 'pressure-for-speed',
    label: 'More tyre pressure for speed',
    gives: { symbol: 'Δp', unit: 'Pa', label: 'more pressure', shows: 'pressure' },
    takes: { speed: { ...speed('v', 'highest speed'), holds: [100 / 3.6, 210 / 3.6] } },
    uses: [FROM_SPEED, TO_SPEED, PRESSURE_STEP, SPEED_STEP],
    text: 'Δp = Δp_1 · max(0, min(v, v_2) − v_1) / v_3',
    source: REIMPELL,
    leavesOut: 'Above 210 km/h the maker of the tyre decides. In the handbook only: no study sets tyre pressures yet.',
    proof: {
      examples: [
        { takes: { speed: 177 / 3.6 }, gives: 10e3, within: 1e-6, source: REIMPELL },
        { takes: { speed: 210 / 3.6 }, gives: 30e3, within: 600, source: REIMPELL, because: 'printed as 0.3 bar, whole tenths' },
        { takes: { speed: 150 / 3.6 }, gives: 0, within: 0, source: REIMPELL },
      ],
    },
  },
  ({ speed }) => (PRESSURE_STEP.value * Math.max(0, Math.min(speed, TO_SPEED.value) - FROM_SPEED.value)) / SPEED_STEP.value,
)

/** Load a tyre may carry in the car's normal use by the United States rule, of what it carries at the pressure on the placard. */
export const normalLoadUs = formula(
  {
    id: 'normal-load-us',
    label: 'Normal tyre load, United States',
    gives: mass('m_n', 'normal load, at most'),
    takes: { carried: mass('m_p', 'load at the pressure on the placard') },
    uses: [RESERVE_US],
    text: 'm_n = k_r · m_p',
    source: FMVSS,
    leavesOut: 'In the handbook only: no study sets tyre pressures yet.',
    proof: { none: 'the share itself is the rule, not re-read' },
  },
  ({ carried }) => RESERVE_US.value * carried,
)

/** Radius of the standing, loaded wheel: for clearances, heights and the lift test, never for gearing. */
export const loadedRadius = formula(
  {
    id: 'loaded-radius',
    label: 'Loaded radius',
    gives: { symbol: 'r_L', unit: 'm', shows: 'length' },
    takes: {
      diameter: { symbol: 'D', unit: 'm', label: 'unloaded diameter', shows: 'length' },
      share: { symbol: 'k_L', unit: '1', label: 'loaded over unloaded radius', shows: 'share' },
    },
    text: 'r_L = k_L · D / 2',
    source: { work: 'practice', place: 'static loaded radius, 0.93 to 0.95 of the unloaded one', mark: 'common practice' },
    proof: { none: 'the share itself is the habit of the trade' },
  },
  ({ diameter, share }) => (share * diameter) / 2,
)
