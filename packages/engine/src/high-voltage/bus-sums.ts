import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'
import { amps, many, ohms, practice, volts } from './conductor-symbols.ts'
import { APART, REACHED } from './contactor-steps.ts'
import { CONTINUOUS_SHARE } from './fuse-rating.ts'

const farads = (symbol: string, label: string) => ({ symbol, unit: 'F', label, shows: 'capacitance' }) as const
const SIDE_BY_SIDE = { work: 'circuits', place: 'elements side by side' } as const

/** Capacitance of everything on the bus together. */
export const capacitanceTogether = formula(
  {
    id: 'bus-capacitance',
    label: 'Capacitance of the bus',
    gives: farads('C', 'bus'),
    takes: { each: many(farads('C_k', 'each part')) },
    text: 'C = Σ C_k',
    source: SIDE_BY_SIDE,
    proof: { none: 'definition' },
  },
  ({ each }) => each.reduce((a, b) => a + b, 0),
)
/** Resistors side by side that empty the bus. */
export const bleedersTogether = formula(
  {
    id: 'bus-bleeders',
    label: 'Bleeders of the bus together',
    gives: ohms('R_b', 'together'),
    takes: { each: many({ ...ohms('R_k', 'each'), holds: [1, 1e9] }) },
    text: 'R_b = 1 / Σ (1 / R_k)',
    source: SIDE_BY_SIDE,
    proof: {
      examples: [
        {
          takes: { each: [100e3, 100e3, 50e3] },
          gives: 25e3,
          within: 1e-9,
          source: { work: 'circuits', place: '100, 100 and 50 kΩ side by side; recomputed' },
        },
      ],
    },
  },
  ({ each }) => 1 / each.reduce((a, r) => a + 1 / r, 0),
)
/** Voltage of the bus from which on the main contactor may close: enough of the pack’s, and little enough across the contact. */
export const closingVoltage = formula(
  {
    id: 'closing-voltage',
    label: 'Voltage at which the main contactor may close',
    gives: volts('U_th', 'threshold'),
    takes: { full: volts('U_full', 'full') },
    uses: [REACHED, APART],
    text: 'U_th = max(p_min · U_full, U_full − ΔU_max)',
    source: practice('sequence of contactors'),
    proof: {
      examples: [
        { takes: { full: 360 }, gives: 342, within: 1e-9, source: { work: 'circuits', place: '95 % of 360 V; recomputed' } },
        { takes: { full: 700 }, gives: 680, within: 1e-9, source: { work: 'circuits', place: '20 V below 700 V; recomputed' } },
      ],
    },
  },
  ({ full }) => Math.max(REACHED.value * full, full - APART.value),
)

/** Tries before the precharge is locked out and its resistor left to cool. */
const TRIES = standard(
  'precharge.tries',
  'tries in a row before it is locked out',
  'n_t',
  3,
  '1',
  practice('three tries, then a lock-out with time to cool'),
)
/** Energy the resistor takes up in all tries that are allowed in a row. */
export const triesEnergy = formula(
  {
    id: 'precharge-tries-energy',
    label: 'Energy of all precharges in a row',
    gives: { symbol: 'E_n', unit: 'J', label: 'energy in a row', shows: 'energy' },
    takes: { energy: { symbol: 'E_R', unit: 'J', label: 'energy of one precharge', shows: 'energy' } },
    uses: [TRIES],
    text: 'E_n = n_t · E_R',
    source: practice('nothing cools between tries of a second'),
    leavesOut:
      'A shorted or loaded bus, on which the resistor carries the pack’s voltage for the whole time-out: the control must stop early on a voltage that does not rise.',
    proof: { none: 'a multiple' },
  },
  ({ energy }) => TRIES.value * energy,
)

/** What a fuse carries for ever. */
export const fuseForEver = formula(
  {
    id: 'fuse-for-ever',
    label: 'Current a fuse carries for ever',
    gives: amps('I_e', 'for ever'),
    takes: { rating: amps('I_n', 'rated current') },
    uses: [CONTINUOUS_SHARE],
    text: 'I_e = C · I_n',
    source: practice('derating of fuses'),
    leavesOut: 'Air above 25 °C around the fuse, which takes more off: see the temperature factor of fuses.',
    proof: { none: 'a share' },
  },
  ({ rating }) => CONTINUOUS_SHARE.value * rating,
)
