import type { Source } from '../sources.ts'
import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'

const CIRCUITS = { work: 'circuits', place: 'power of one and of three phases' } as const
const amps = (symbol: string, label: string) => ({ symbol, unit: 'A', label }) as const
const practice = (place: string): Source => ({ work: 'practice', place, mark: 'common practice' })

export type OutletKind = 'household socket' | 'dedicated point' | 'industrial socket' | 'three-phase point' | 'DC post'
/**
 * What an outlet stands for hours, whatever its circuit is fused for. A household socket is made for minutes at its rating, not for a night: 8 to 10 A
 * where it is not known to be better. Others carry their rating.
 */
const CONTINUOUS: Readonly<Record<OutletKind, readonly [amps: number, place: string]>> = {
  'household socket': [10, 'household sockets in Europe: often 8 to 10 A for hours'],
  'dedicated point': [80, 'charging points: their rating, at most 80 A'],
  'industrial socket': [63, 'industrial sockets: their rating, at most 63 A on a car’s lead'],
  'three-phase point': [63, 'three-phase couplers: their rating, at most 63 A'],
  'DC post': [Number.POSITIVE_INFINITY, 'a post says itself what it gives'],
}
export const outletLimit = (kind: OutletKind) =>
  standard(
    `outlet.${kind.replace(/ /g, '-')}`,
    `what a ${kind} stands for hours`,
    'I_out',
    CONTINUOUS[kind][0],
    'A',
    practice(CONTINUOUS[kind][1]),
  )

/** Share of a circuit that may be drawn for hours: where the code of the country asks for it. */
export const CIRCUIT_SHARE = {
  whole: standard('circuit.whole', 'a circuit carries its rating', 'k_c', 1, '1', practice('circuits of European installations')),
  eighty: standard('circuit.eighty', 'four fifths of a circuit for hours', 'k_c', 0.8, '1', {
    work: 'nec',
    place: '210.20(A), 625.41: load of three hours and more',
    mark: 'from memory',
  }),
} as const

/** Current an outlet gives for hours: circuit, outlet and cable, whichever is least. */
export const continuousOutletCurrent = formula(
  {
    id: 'continuous-outlet-current',
    label: 'Current an outlet gives for hours',
    gives: amps('I_h', 'current for hours'),
    takes: {
      circuit: amps('I_m', 'circuit'),
      share: { symbol: 'k_c', unit: '1', label: 'share for hours', shows: 'share' },
      outlet: amps('I_out', 'outlet'),
      cable: amps('I_cab', 'cable'),
    },
    text: 'I_h = min(k_c · I_m, I_out, I_cab)',
    source: practice('the least of circuit, outlet and cable'),
    leavesOut: 'Old, loose or shared wiring: feel plug and socket after an hour at full current.',
    proof: {
      examples: [
        {
          takes: { circuit: 40, share: 0.8, outlet: 80, cable: 63 },
          gives: 32,
          within: 1e-12,
          source: { work: 'nec', place: '40 A circuit: 32 A for hours', mark: 'from memory' },
        },
        {
          takes: { circuit: 20, share: 0.8, outlet: 80, cable: 63 },
          gives: 16,
          within: 1e-12,
          source: { work: 'nec', place: '20 A circuit: 16 A for hours', mark: 'from memory' },
        },
      ],
    },
  },
  ({ circuit, share, outlet, cable }) => Math.min(share * circuit, outlet, cable),
)
/** Current a charger draws at the wall when it gives its full power. */
export const chargerDraw = formula(
  {
    id: 'charger-draw',
    label: 'Current of a charger at full power',
    gives: amps('I_draw', 'current'),
    takes: {
      power: { symbol: 'P_ch', unit: 'W', label: 'power the charger gives' },
      efficiency: { symbol: 'η_ch', unit: '1', label: 'charger, wall to pack', shows: 'share' },
      phases: { symbol: 'n', unit: '1', label: 'phases', shows: 'count' },
      voltage: { symbol: 'U_ph', unit: 'V', label: 'voltage of one phase' },
    },
    text: 'I_draw = P_ch / (η_ch · n · U_ph)',
    source: CIRCUITS,
    proof: { none: 'definition of an efficiency' },
  },
  ({ power, efficiency, phases, voltage }) => power / (efficiency * phases * voltage),
)
/** A charger that loses nothing draws least: so much it draws for certain. */
export const NO_LOSS = {
  ...standard('charger.no-loss', 'a charger without any loss', 'η_ch', 1, '1', { work: 'definition', place: 'no efficiency is above one' }),
  shows: 'share',
} as const
/** Voltage of one phase from that between two. */
export const phaseVoltage = formula(
  {
    id: 'phase-voltage',
    label: 'Voltage of one phase',
    gives: { symbol: 'U_ph', unit: 'V', label: 'phase voltage' },
    takes: {
      voltage: { symbol: 'U_m', unit: 'V', label: 'mains voltage as named' },
      phases: { symbol: 'n_m', unit: '1', label: 'phases of the outlet', shows: 'count' },
    },
    text: 'U_ph = { U_m if n_m < 3; U_m / √3 otherwise }',
    source: CIRCUITS,
    leavesOut: 'Two of three phases, used in few places.',
    proof: {
      examples: [
        { takes: { voltage: 400, phases: 3 }, gives: 230.94, within: 0.005, source: { work: 'circuits', place: '400 V between phases' } },
      ],
    },
  },
  ({ voltage, phases }) => (phases < 3 ? voltage : voltage / Math.sqrt(3)),
)
/** Phases that are used: those the outlet has and the charger takes. */
export const phasesUsed = formula(
  {
    id: 'phases-used',
    label: 'Phases used',
    gives: { symbol: 'n', unit: '1', label: 'phases used', shows: 'count' },
    takes: {
      outlet: { symbol: 'n_m', unit: '1', label: 'of the outlet', shows: 'count' },
      charger: { symbol: 'n_ch', unit: '1', label: 'of the charger', shows: 'count' },
    },
    text: 'n = min(n_m, n_ch)',
    source: { work: 'definition', place: 'the lesser governs' },
    proof: { none: 'definition' },
  },
  ({ outlet, charger }) => Math.min(outlet, charger),
)
/** Power of an alternating-current outlet. */
export const outletPower = formula(
  {
    id: 'outlet-power',
    label: 'Power of an outlet',
    gives: { symbol: 'P_ac', unit: 'W', label: 'power at the wall' },
    takes: {
      phases: { symbol: 'n', unit: '1', label: 'phases used', shows: 'count' },
      voltage: { symbol: 'U_ph', unit: 'V', label: 'voltage of one phase' },
      current: amps('I', 'current'),
    },
    text: 'P_ac = n · U_ph · I',
    source: CIRCUITS,
    leavesOut: 'Power factor, above 0.98 in chargers of today.',
    proof: {
      examples: [
        {
          takes: { phases: 1, voltage: 230, current: 32 },
          gives: 7360,
          within: 1e-9,
          source: { work: 'circuits', place: '230 V, 32 A: 7.36 kW' },
        },
        {
          takes: { phases: 1, voltage: 120, current: 12 },
          gives: 1440,
          within: 1e-9,
          source: { work: 'circuits', place: '120 V, 12 A: 1.44 kW' },
        },
        {
          takes: { phases: 3, voltage: 400 / Math.sqrt(3), current: 16 },
          gives: 11085,
          within: 1,
          source: { work: 'circuits', place: '400 V between phases, 16 A: 11.09 kW' },
        },
        {
          takes: { phases: 3, voltage: 400 / Math.sqrt(3), current: 32 },
          gives: 22170,
          within: 1,
          source: { work: 'circuits', place: '400 V between phases, 32 A: 22.17 kW' },
        },
      ],
    },
  },
  ({ phases, voltage, current }) => phases * voltage * current,
)
/** The least of two currents, of a post and an inlet say. */
export const lesserCurrent = formula(
  {
    id: 'lesser-charging-current',
    label: 'Lesser of two currents',
    gives: amps('I', 'current'),
    takes: { one: amps('I_1', 'one'), other: amps('I_2', 'the other') },
    text: 'I = min(I_1, I_2)',
    source: { work: 'definition', place: 'the lesser governs' },
    proof: { none: 'definition' },
  },
  ({ one, other }) => Math.min(one, other),
)
