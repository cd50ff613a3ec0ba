import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'
import { DERATE_BAND } from './tables.ts'

const practice = (place: string) => ({ work: 'practice', place, mark: 'common practice' }) as const
/** Class values of traction inverters; nobody's datasheet. They move only the temperature shown for the inverter. */
export const INVERTER_SHARE = standard(
  'class.inverter.share',
  'Share of the losses that arises in the inverter',
  's_inv',
  0.3,
  '1',
  practice('inverter 0.98, motor 0.96 at their best'),
)
export const INVERTER_CAPACITY = standard(
  'class.inverter.heat-capacity',
  'Heat capacity of an inverter',
  'C_inv',
  5000,
  'J/K',
  practice('10 kg, half of it aluminium that takes part'),
)
const INVERTER_RISE = standard(
  'class.inverter.rise',
  'Inverter above its coolant at the continuous rating',
  'ΔT_inv',
  20,
  'K',
  practice('15 to 30 K'),
)

const BAND = standard(
  'trip.derate-band',
  'below the limit of its winding a motor is throttled from here',
  'ΔT_d',
  DERATE_BAND,
  'K',
  practice('some 15 K'),
)
/** Where a motor begins to be throttled by heat: the first of its windings. */
export const throttledFrom = formula(
  {
    id: 'throttled-from',
    label: 'Winding temperature a motor is throttled from',
    gives: { symbol: 'T_d', unit: 'K', label: 'throttled from', shows: 'temperature' },
    takes: { limits: { symbol: 'T_w', unit: 'K', label: 'limits of the windings', shows: 'temperature', many: true } },
    uses: [BAND],
    text: 'T_d = min(T_w) − ΔT_d',
    source: practice('inverters lower torque before the limit'),
    proof: { none: 'habit of inverters' },
  },
  ({ limits }) => Math.min(...limits) - DERATE_BAND,
)

/** Heat from inverter to coolant, so that at the continuous rating it stands as far above the coolant as its class does. */
export const inverterConductance = formula(
  {
    id: 'inverter-conductance',
    label: 'Heat from inverter to coolant',
    gives: { symbol: 'G_inv', unit: 'W/K', label: 'conductance', shows: 'thermal conductance' },
    takes: {
      share: { symbol: 's_inv', unit: '1', label: 'share of the losses', shows: 'share' },
      loss: { symbol: 'V_c', unit: 'W', label: 'loss at the continuous rating' },
    },
    uses: [INVERTER_RISE],
    text: 'G_inv = s_inv · V_c / ΔT_inv',
    source: { work: 'incropera', place: 'lumped capacitance method', mark: 'from memory' },
    leavesOut: 'The junctions, hotter than the case by tens of kelvins.',
    proof: { none: 'definition of a conductance' },
  },
  ({ share, loss }) => (share * loss) / INVERTER_RISE.value,
)
