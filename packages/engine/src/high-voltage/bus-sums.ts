import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'
import { amps, many, ohms, practice, share, volts } from './conductor-symbols.ts'

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
/** A share of the pack’s voltage. */
export const shareOfFull = formula(
  {
    id: 'share-of-full-voltage',
    label: 'Share of the full voltage',
    gives: volts('U_th', 'threshold'),
    takes: { full: volts('U_full', 'full'), share: share('p', 'share') },
    text: 'U_th = p · U_full',
    source: { work: 'definition', place: 'a share' },
    proof: { none: 'definition' },
  },
  ({ full, share }) => share * full,
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

const FOR_EVER = {
  ...standard('fuse.for-ever', 'of its rating a fuse carries for ever', 'k_e', 0.8, '1', practice('0.75 to 0.80 of the rating at 25 °C')),
  shows: 'share',
} as const
/** What a fuse carries for ever. */
export const fuseForEver = formula(
  {
    id: 'fuse-for-ever',
    label: 'Current a fuse carries for ever',
    gives: amps('I_e', 'for ever'),
    takes: { rating: amps('I_n', 'rated current') },
    uses: [FOR_EVER],
    text: 'I_e = k_e · I_n',
    source: practice('derating of fuses'),
    leavesOut: 'Air above 25 °C around the fuse, which takes more off: see the temperature factor of fuses.',
    proof: { none: 'a share' },
  },
  ({ rating }) => FOR_EVER.value * rating,
)
