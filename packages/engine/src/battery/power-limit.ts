import { formula } from '../working/formula.ts'
import { amps, ohms, volts, watts } from './symbols.ts'

const PLETT = { work: 'plett', place: 'vol. II, power limits by pulse resistance' } as const
const NCA = { work: 'kollmeyer-2018', place: 'NCA cell at half charge, 10 s resistance; recomputed' } as const
const source = { voltage: volts('U_e', 'open-circuit voltage less branches'), resistance: ohms('R', 'resistance that counts for the time') }

/**
 * Power a source can give for a time without sinking below a floor or above a current: at the terminals.
 *
 * The half-voltage bound matters only for a floor below half the open-circuit voltage; a source below its floor gives nothing.
 */
export const dischargeLimit = formula(
  {
    id: 'discharge-limit',
    label: 'Power limit, discharging',
    gives: { current: amps('I', 'current at the limit'), power: watts('P', 'power limit') },
    takes: { ...source, floor: volts('U_min', 'lowest voltage'), most: amps('I_lim', 'current limit') },
    text: `I = max(0, min(I_lim, (U_e − U_min) / R, U_e / (2 · R)))
P = I · (U_e − R · I)`,
    source: PLETT,
    proof: {
      examples: [
        {
          takes: { voltage: 3.6635, resistance: 0.0373, floor: 0, most: 1000 },
          gives: { current: 49.109, power: 89.955 },
          within: 5e-4,
          source: NCA,
        },
        {
          takes: { voltage: 3.6635, resistance: 0.0373, floor: 2.5, most: 1000 },
          gives: { current: 31.193, power: 77.983 },
          within: 5e-4,
          source: NCA,
        },
        { takes: { voltage: 3.6635, resistance: 0.0373, floor: 2.5, most: 10 }, gives: { power: 32.905 }, within: 5e-4, source: NCA },
        {
          takes: { voltage: 375.26, resistance: 0.107584, floor: 288, most: 1e5 },
          gives: { current: 811.1 },
          within: 0.05,
          source: { work: 'wiggins-2019', place: '96 in series, 2 in parallel, half charge; recomputed' },
          because: 'here the cells’ own current limit binds, not the voltage',
        },
        {
          takes: { voltage: 375.26, resistance: 0.107584, floor: 288, most: 1e5 },
          gives: { power: 233.6e3 },
          within: 50,
          source: { work: 'wiggins-2019', place: '96 in series, 2 in parallel, half charge; recomputed' },
        },
      ],
    },
  },
  ({ voltage, resistance, floor, most }) => {
    const current = Math.max(0, Math.min(most, (voltage - floor) / resistance, voltage / (2 * resistance)))
    return { current, power: current * (voltage - resistance * current) }
  },
)

/** Power a source can take for a time without rising above a ceiling or a current. Both come out negative: charging. */
export const chargeLimit = formula(
  {
    id: 'charge-limit',
    label: 'Power limit, charging',
    gives: { current: amps('I', 'current at the limit'), power: watts('P', 'power limit') },
    takes: { ...source, ceiling: volts('U_max', 'highest voltage'), most: amps('I_lim', 'charging current limit') },
    text: `I = min(0, max(−I_lim, (U_e − U_max) / R))
P = I · (U_e − R · I)`,
    source: PLETT,
    proof: {
      examples: [
        {
          takes: { voltage: 3.6635, resistance: 0.0373, ceiling: 4.2, most: 1000 },
          gives: { current: -14.383, power: -60.41 },
          within: 5e-3,
          source: NCA,
        },
      ],
    },
  },
  ({ voltage, resistance, ceiling, most }) => {
    const current = Math.min(0, Math.max(-most, (voltage - ceiling) / resistance))
    return { current, power: current * (voltage - resistance * current) }
  },
)
