import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'

const DIFFERENCE = { work: 'definition', place: 'difference' } as const
const amps = (symbol: string, label: string) => ({ symbol, unit: 'A', label }) as const
const watts = (symbol: string, label: string) => ({ symbol, unit: 'W', label }) as const
const spell = (symbol: string, label: string) => ({ symbol, unit: 's', label, shows: 'duration' }) as const
const kelvins = (symbol: string, label: string) => ({ symbol, unit: 'K', label, shows: 'temperature' }) as const

/** How far a current stays below what carries it: the limits that do not bind are worth seeing too. */
export const currentRoom = formula(
  {
    id: 'current-room',
    label: 'Room of a current',
    gives: amps('ΔI', 'room'),
    takes: { carries: amps('I_max', 'what carries it'), current: amps('I', 'current') },
    text: 'ΔI = I_max − I',
    source: DIFFERENCE,
    proof: { none: 'definition' },
  },
  ({ carries, current }) => carries - current,
)
/** Power a current gives at a voltage, beyond what is asked. */
export const powerRoom = formula(
  {
    id: 'power-room',
    label: 'Power beyond what is asked',
    gives: watts('ΔP', 'room'),
    takes: { current: amps('I', 'current'), voltage: { symbol: 'U', unit: 'V', label: 'voltage' }, power: watts('P', 'asked') },
    text: 'ΔP = U · I − P',
    source: { work: 'circuits', place: 'power' },
    proof: { none: 'definition' },
  },
  ({ current, voltage, power }) => current * voltage - power,
)
/** Time left over. */
export const timeToSpare = formula(
  {
    id: 'time-to-spare',
    label: 'Time to spare',
    gives: spell('Δt', 'to spare'),
    takes: { within: spell('t_0', 'time there is'), time: spell('t', 'time it takes') },
    text: 'Δt = t_0 − t',
    source: DIFFERENCE,
    proof: { none: 'definition' },
  },
  ({ within, time }) => within - time,
)
/** How far cells stand above the temperature from which they are charged. */
export const aboveLowest = formula(
  {
    id: 'above-lowest-charging',
    label: 'Cells above the lowest charging temperature',
    gives: { symbol: 'ΔT', unit: 'K', label: 'above', shows: 'temperature difference' },
    takes: { cells: kelvins('T_0', 'cells at plug-in'), lowest: kelvins('T_min', 'no charging below') },
    text: 'ΔT = T_0 − T_min',
    source: DIFFERENCE,
    proof: { none: 'definition' },
  },
  ({ cells, lowest }) => cells - lowest,
)

/** How full a charge may stop short of full and still count as full. */
export const NEARLY = {
  ...standard('charge.nearly', 'counts as full', 'k_f', 0.98, '1', {
    work: 'practice',
    place: 'nobody misses a fiftieth of the charge',
    mark: 'common practice',
  }),
  shows: 'share',
} as const
/** From how full on a charge counts as full. */
export const countsAsFull = formula(
  {
    id: 'counts-as-full',
    label: 'Charge that counts as full',
    gives: { symbol: 'z_f', unit: '1', label: 'counts as full', shows: 'share' },
    takes: {
      share: { symbol: 'k_f', unit: '1', label: 'share that counts', shows: 'share' },
      full: { symbol: 'z', unit: '1', label: 'charge where the cells are to stop', shows: 'share' },
    },
    text: 'z_f = k_f · z',
    source: { work: 'definition', place: 'share' },
    proof: { none: 'definition' },
  },
  ({ share, full }) => share * full,
)
