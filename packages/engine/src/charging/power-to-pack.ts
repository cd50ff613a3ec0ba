import { formula } from '../working/formula.ts'

const watts = (symbol: string, label: string) => ({ symbol, unit: 'W', label }) as const
const joules = (symbol: string, label: string) => ({ symbol, unit: 'J', label, shows: 'energy' }) as const
const share = (symbol: string, label: string) => ({ symbol, unit: '1', label, shows: 'share' }) as const
const WORKED = { work: 'definition', place: '16 A at 230 V, 0.93, 150 W standing: 3272.4 W, worked by hand' } as const

/** What reaches the pack from an alternating-current outlet. */
export const powerToPack = formula(
  {
    id: 'power-to-pack',
    label: 'Power to the pack',
    gives: watts('P_dc', 'to the pack'),
    takes: {
      outlet: watts('P_ac', 'power of the outlet'),
      efficiency: share('η_ch', 'charger, wall to pack'),
      charger: watts('P_ch', 'power the charger gives'),
      standing: watts('P_st', 'what the car draws meanwhile'),
    },
    text: 'P_dc = max(0, min(η_ch · P_ac, P_ch) − P_st)',
    source: { work: 'definition', place: 'power out is power in times efficiency' },
    leavesOut: 'The power factor. The efficiency is that at the power the outlet gives.',
    proof: {
      examples: [{ takes: { outlet: 3680, efficiency: 0.93, charger: 6600, standing: 150 }, gives: 3272.4, within: 1e-9, source: WORKED }],
    },
  },
  ({ outlet, efficiency, charger, standing }) => Math.max(0, Math.min(efficiency * outlet, charger) - standing),
)
/** Share of the wall energy that is stored, where a fixed load and a share of the power are lost. */
export const efficiencyAtPower = formula(
  {
    id: 'efficiency-at-power',
    label: 'Charging efficiency at a power',
    gives: share('η', 'stored share'),
    takes: { power: watts('P', 'power at the wall'), fixed: watts('P_0', 'lost at any power'), part: share('s', 'lost of each watt') },
    text: 'η = 1 − P_0 / P − s',
    source: { work: 'adac-2022', place: 'four cars on a socket of 2.3 kW and on a wall box of 11 kW: both figures follow exactly' },
    leavesOut: 'Everything but two measured points of each car.',
    proof: {
      examples: [
        {
          takes: { power: 1400, fixed: 133.83, part: 0.07784 },
          gives: 0.8266,
          within: 5e-5,
          source: { work: 'adac-2022', place: 'third car; recomputed' },
        },
        {
          takes: { power: 3680, fixed: 133.83, part: 0.07784 },
          gives: 0.8858,
          within: 5e-5,
          source: { work: 'adac-2022', place: 'third car; recomputed' },
        },
        {
          takes: { power: 7400, fixed: 133.83, part: 0.07784 },
          gives: 0.9041,
          within: 6e-5,
          source: { work: 'adac-2022', place: 'third car; recomputed' },
        },
        {
          takes: { power: 2300, fixed: 421.7, part: 0.0587 },
          gives: 1 - 0.242,
          within: 5e-4,
          source: { work: 'adac-2022', place: 'first car at 2.3 kW: 24.2 % lost' },
        },
        {
          takes: { power: 11000, fixed: 421.7, part: 0.0587 },
          gives: 1 - 0.097,
          within: 5e-4,
          source: { work: 'adac-2022', place: 'first car at 11 kW: 9.7 % lost' },
        },
      ],
    },
  },
  ({ power, fixed, part }) => 1 - fixed / power - part,
)
/** Time to charge at one power, without limits of the battery. */
export const timeAtPower = formula(
  {
    id: 'time-at-power',
    label: 'Time at one power',
    gives: { symbol: 't', unit: 's', label: 'time', shows: 'duration' },
    takes: { energy: joules('E', 'energy to the pack'), power: watts('P', 'power at the wall'), efficiency: share('η', 'wall to pack') },
    text: 't = E / (η · P)',
    source: { work: 'definition', place: 'power' },
    leavesOut: 'The tail: the last tenth takes longer.',
    proof: {
      examples: [
        {
          takes: { energy: 24 * 3.6e6, power: 7360, efficiency: 0.88 },
          gives: 3.706 * 3600,
          within: 2,
          source: { work: 'practice', place: '80 % of 30 kWh at 7.36 kW: 3.706 h', mark: 'common practice' },
        },
      ],
    },
  },
  ({ energy, power, efficiency }) => energy / (efficiency * power),
)
/** Distance that energy put into the charge brings back. */
export const distanceBack = formula(
  {
    id: 'distance-back',
    label: 'Distance put back',
    gives: { symbol: 's', unit: 'm', label: 'distance', shows: 'distance' },
    takes: {
      stored: joules('E_st', 'energy put into the charge'),
      range: { symbol: 's_R', unit: 'm', label: 'range of the trip', shows: 'distance' },
      used: joules('E_ch', 'energy out of the charge on it'),
    },
    text: 's = { 0 if s_R ≤ 0; ∞ if s_R ≥ ∞; E_st · s_R / E_ch otherwise }',
    source: { work: 'definition', place: 'proportion' },
    proof: { none: 'proportion' },
  },
  ({ stored, range, used }) => (range <= 0 ? 0 : range === Number.POSITIVE_INFINITY ? range : (stored * range) / used),
)
/** What the wall meter counts for one charge. */
export const wallEnergy = formula(
  {
    id: 'wall-energy',
    label: 'Energy at the wall',
    gives: joules('E_w', 'at the wall'),
    takes: {
      taken: joules('E_in', 'to the pack'),
      heater: joules('E_h', 'pack heater'),
      standing: watts('P_st', 'what the car draws meanwhile'),
      time: { symbol: 't', unit: 's', label: 'time', shows: 'duration' },
      fixed: watts('p_0', 'lost at any power'),
      linear: { symbol: 'p_1', unit: '1', label: 'lost of each watt' },
      square: { symbol: 'p_2', unit: '1/W', label: 'lost with the square' },
    },
    text: 'E_o = E_in + E_h + (P_st + p_0) · t\nb = 1 − p_1\nE_w = { 0 if t ≤ 0; 2 · E_o / (b + √(max(0, b² − 4 · p_2 · E_o / t))) otherwise }',
    source: { work: 'definition', place: 'what goes in less what is lost, p_0 + p_1·P + p_2·P², is what comes out' },
    leavesOut: 'That the power falls towards full: the part lost with its square is that at the mean power.',
    proof: {
      examples: [
        {
          takes: { taken: 3046.385 * 3600, heater: 0, standing: 0, time: 3600, fixed: 100, linear: 0.035, square: 3.5e-6 },
          gives: 3300 * 3600,
          within: 1e-3,
          source: { work: 'definition', place: 'an hour at 3.3 kW, of which 0.2536 kW are lost, worked by hand' },
        },
        {
          takes: { taken: 5966.54 * 3600, heater: 100 * 3600, standing: 50, time: 3600, fixed: 100, linear: 0.035, square: 3.5e-6 },
          gives: 6600 * 3600,
          within: 1e-3,
          source: { work: 'definition', place: 'an hour at 6.6 kW, of which 0.4835 kW are lost, worked by hand' },
        },
      ],
    },
  },
  ({ taken, heater, standing, time, fixed, linear, square }) => {
    const out = taken + heater + (standing + fixed) * time,
      kept = 1 - linear
    return time <= 0 ? 0 : (2 * out) / (kept + Math.sqrt(Math.max(0, kept * kept - (4 * square * out) / time)))
  },
)
/** What it costs. */
export const energyCost = formula(
  {
    id: 'energy-cost',
    label: 'Price of the energy',
    gives: { symbol: 'K', unit: '€', label: 'price', shows: 'money' },
    takes: { energy: joules('E', 'energy'), price: { symbol: 'k_E', unit: '€/J', label: 'price of energy', shows: 'money per energy' } },
    text: 'K = k_E · E',
    source: { work: 'definition', place: 'price' },
    proof: { none: 'definition' },
  },
  ({ energy, price }) => energy * price,
)
