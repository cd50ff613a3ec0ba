import { formula } from '../working/formula.ts'

const consumption = (symbol: string, label: string) => ({ symbol, unit: 'J/m', label, shows: 'consumption' }) as const
const watts = (symbol: string, label: string) => ({ symbol, unit: 'W', label }) as const

/** What the wall meter counts for a distance driven: charger losses, and what the car draws while it stands there charging. */
export const wallConsumption = formula(
  {
    id: 'wall-consumption',
    label: 'Consumption at the wall',
    gives: consumption('c_w', 'at the wall'),
    takes: {
      battery: consumption('c_b', 'at the battery'),
      power: watts('P_ch', 'power the charger gives'),
      efficiency: { symbol: 'η_ch', unit: '1', label: 'charger, wall to pack', shows: 'share' },
      standing: watts('P_st', 'what the car draws while charging'),
    },
    text: 'c_w = c_b · P_ch / (η_ch · (P_ch − P_st))',
    source: { work: 'definition', place: 'energy in over energy stored' },
    leavesOut: 'Losses in the battery while charging, within the spread of the efficiency; warming the pack first.',
    proof: {
      examples: [
        {
          takes: { battery: 540, power: 0.93 * 3680, efficiency: 0.93, standing: 150 },
          gives: (540 * 3680) / 3272.4,
          within: 1e-9,
          source: { work: 'definition', place: '16 A at 230 V with 150 W standing: of 3680 W 3272.4 W reach the pack, worked by hand' },
        },
      ],
    },
  },
  ({ battery, power, efficiency, standing }) => (battery * power) / (efficiency * (power - standing)),
)
/** One part of the energy that left the charge. */
export const energyShare = formula(
  {
    id: 'energy-share',
    label: 'Share of the energy',
    gives: { symbol: 's_E', unit: '1', label: 'share', shows: 'share' },
    takes: {
      part: { symbol: 'E_k', unit: 'J', label: 'part', shows: 'energy' },
      whole: { symbol: 'E_ch', unit: 'J', label: 'energy out of the charge', shows: 'energy' },
    },
    text: 's_E = E_k / E_ch',
    source: { work: 'definition', place: 'share' },
    proof: { none: 'definition' },
  },
  ({ part, whole }) => part / whole,
)
/** Power of a current at a voltage. */
export const powerOfCurrent = formula(
  {
    id: 'power-of-current',
    label: 'Power of a current',
    gives: { symbol: 'P', unit: 'W', label: 'power' },
    takes: { current: { symbol: 'I', unit: 'A', label: 'current' }, voltage: { symbol: 'U', unit: 'V', label: 'voltage' } },
    text: 'P = U · I',
    source: { work: 'circuits', place: 'power' },
    proof: { none: 'definition' },
  },
  ({ current, voltage }) => voltage * current,
)
/** The hungriest of several trips: what a forecast over years counts with, as nobody says how often each is driven. */
export const greatestConsumption = formula(
  {
    id: 'greatest-consumption',
    label: 'Greatest consumption of the trips',
    gives: consumption('e', 'greatest consumption'),
    takes: { each: { ...consumption('e_k', 'consumption of one trip'), many: true } },
    text: 'e = max(e_k)',
    source: { work: 'definition', place: 'the least favourable of the planned trips' },
    proof: { none: 'definition' },
  },
  ({ each }) => Math.max(...each),
)
/** Part of a distance. */
export const distanceShare = formula(
  {
    id: 'distance-share',
    label: 'Share of a distance',
    gives: { symbol: 's_s', unit: '1', label: 'share', shows: 'share' },
    takes: {
      part: { symbol: 's_k', unit: 'm', label: 'part', shows: 'distance' },
      whole: { symbol: 's', unit: 'm', label: 'distance', shows: 'distance' },
    },
    text: 's_s = { 1 if s ≤ 0; s_k / s otherwise }',
    source: { work: 'definition', place: 'share' },
    proof: { none: 'definition' },
  },
  ({ part, whole }) => (whole <= 0 ? 1 : part / whole),
)
/** Distance beyond what is wanted. */
export const distanceBeyond = formula(
  {
    id: 'distance-beyond',
    label: 'Distance beyond what is wanted',
    gives: { symbol: 'Δs', unit: 'm', label: 'beyond', shows: 'distance' },
    takes: {
      found: { symbol: 's', unit: 'm', label: 'distance', shows: 'distance' },
      wanted: { symbol: 's_0', unit: 'm', label: 'wanted', shows: 'distance' },
    },
    text: 'Δs = s − s_0',
    source: { work: 'definition', place: 'difference' },
    proof: { none: 'definition' },
  },
  ({ found, wanted }) => found - wanted,
)
/** Power cells take beyond what recovery is set to. */
export const recoveryRoom = formula(
  {
    id: 'recovery-room',
    label: 'Power cells take beyond what recovery is set to',
    gives: { symbol: 'ΔP', unit: 'W', label: 'room' },
    takes: {
      cells: { symbol: 'P_ch', unit: 'W', label: 'warm cells take' },
      set: { symbol: 'P_reg', unit: 'W', label: 'recovery is set to' },
    },
    text: 'ΔP = P_ch − P_reg',
    source: { work: 'definition', place: 'difference' },
    proof: { none: 'definition' },
  },
  ({ cells, set }) => cells - set,
)
