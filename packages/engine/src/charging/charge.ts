import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'
import { type ChargePlan, chargeRun } from './charge-run.ts'

const DEFINITION = { work: 'definition', place: 'end of a charge' } as const
/** A charge to full ends at this current. */
export const FULL_CURRENT = standard('charge.full-current', 'current that ends a full charge, over capacity per hour', 'c_end', 0.05, '1', {
  work: 'practice',
  place: 'a twentieth of the one-hour current',
  mark: 'common practice',
})
/** No charge is followed longer. */
export const LONGEST = standard('charge.longest', 'longest charge followed', 't_most', 72 * 3600, 's', DEFINITION)
export const NO_HEATER = {
  power: standard('charge.no-heater', 'no pack heater', 'P_h', 0, 'W', DEFINITION),
  to: standard('charge.no-heating', 'no heating', 'T_h', 0, 'K', DEFINITION),
} as const
export const FULL_CHARGE = standard('charge.to-full', 'full', 'z_2', 1, '1', DEFINITION)

const volts = (symbol: string, label: string) => ({ symbol, unit: 'V', label }) as const
const amps = (symbol: string, label: string) => ({ symbol, unit: 'A', label }) as const
const watts = (symbol: string, label: string) => ({ symbol, unit: 'W', label }) as const
const kelvins = (symbol: string, label: string) => ({ symbol, unit: 'K', label, shows: 'temperature' }) as const
const joules = (symbol: string, label: string) => ({ symbol, unit: 'J', label, shows: 'energy' }) as const
const spell = (symbol: string, label: string) => ({ symbol, unit: 's', label, shows: 'duration' }) as const
const share = (symbol: string, label: string) => ({ symbol, unit: '1', label, shows: 'share' }) as const

/** A charge from one charge to another with the limits of outlet, charger, cable and cells, warming first when cold. Its run also holds the series. */
export const charge = formula(
  {
    id: 'charge',
    label: 'Charging',
    gives: {
      time: spell('t', 'Time'),
      charge: share('z', 'Charge at the end'),
      taken: joules('E_in', 'Energy to the pack'),
      stored: joules('E_st', 'Energy into the charge'),
      heater: joules('E_h', 'Energy of the pack heater'),
      warming: spell('t_0', 'Time without current, cells too cold'),
      'highest-current': amps('I_hi', 'Highest current'),
      'end-temperature': kelvins('T_1', 'Cells at the end'),
      'held-back': spell('t_hb', 'Time held back by the cells'),
    },
    takes: {
      openCircuit: { symbol: 'U_oc', unit: ['1', 'V'], label: 'open-circuit voltage over charge', curve: true },
      resistance: { symbol: 'R_0', unit: ['1', 'Ω'], label: 'ohmic resistance over charge, 25 °C', curve: true },
      resistanceFactor: { symbol: 'f_R', unit: '1', label: 'factor on the resistance curve' },
      branchResistance: { symbol: 'R_1', unit: 'Ω', label: 'branch resistance, 25 °C' },
      branchTime: spell('τ_1', 'time constant of the branch'),
      coldFactor: { symbol: 'c_T', unit: ['K', '1'], label: 'resistance over cell temperature', curve: true },
      capacity: { symbol: 'Q', unit: 'C', label: 'capacity' },
      cellCurrent: amps('I_ch', 'charging current of the cells, warm'),
      temperatureShare: { symbol: 's_T', unit: ['K', '1'], label: 'share of it over cell temperature', curve: true },
      chargeTaper: { symbol: 's_z', unit: ['1', '1'], label: 'share of it over charge', curve: true },
      lowestTemperature: kelvins('T_min', 'no charging below'),
      power: watts('P_dc', 'power to the pack'),
      current: amps('I_dc', 'most current'),
      voltage: volts('U_set', 'voltage it is set to'),
      heaterPower: watts('P_h', 'pack heater'),
      heaterTo: kelvins('T_h', 'heats to'),
      heatCapacity: { symbol: 'C_b', unit: 'J/K', label: 'heat capacity of the pack', shows: 'heat capacity' },
      conductance: { symbol: 'G_b', unit: 'W/K', label: 'pack to outside air', shows: 'thermal conductance' },
      outside: kelvins('T_a', 'outside air'),
      startTemperature: kelvins('T_0', 'cells at the start'),
      from: share('z_1', 'from'),
      to: share('z_2', 'to'),
      fullCurrent: { symbol: 'c_end', unit: '1', label: 'end current over capacity per hour' },
      most: spell('t_most', 'at most'),
    },
    text: 'In steps of 10 s: I = min(I_dc, current at P_dc, I_ch · s_T(T) · s_z(z), (U_set − U_oc − u) / R); heater while the cells hold it back; charge, branch voltage and temperature on.',
    words: 'a simulation in steps',
    source: {
      work: 'plett',
      place: 'vol. II, charging limits; constant current, constant power and constant voltage by the least of their currents',
    },
    leavesOut: 'Diffusion: down to a twentieth of capacity the tail is some 20 % longer. Reversible heat. A charger that steps its power.',
    proof: { none: 'a simulation: closed forms for constant current, power and voltage stand in its tests' },
  },
  x => results(x),
)
function results(x: ChargePlan, step?: number) {
  const {
    totals: { highestCurrent, endTemperature, heldBack, ...rest },
    traces,
    stopped,
  } = chargeRun(x, step)
  return { ...rest, stopped, 'highest-current': highestCurrent, 'end-temperature': endTemperature, 'held-back': heldBack, traces }
}
/** The same in steps of a minute, for spread. */
export const chargeCoarse = (x: ChargePlan): Record<string, unknown> => results(x, 60)
