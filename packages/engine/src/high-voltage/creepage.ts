import { at } from '../numerics/curve.ts'
import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'
import { altitudeTable, clearanceTable, creepageTable } from './creepage-tables.ts'
import { count, metres, VOLT, volts } from './symbols.ts'

const F4 = { work: 'iec-60664-1', place: 'table F.4' } as const
const F2 = { work: 'iec-60664-1', place: 'tables F.2 and A.2', mark: 'from memory' } as const
const F1 = { work: 'iec-60664-1', place: 'table F.1', mark: 'from memory' } as const
const f4 = (place: string) => ({ work: 'iec-60664-1', place: `table F.4: ${place}; recomputed` }) as const
const f2 = (place: string) => ({ work: 'iec-60664-1', place: `tables F.2 and A.2: ${place}; recomputed`, mark: 'from memory' }) as const
const TOP = standard('creepage.top', 'highest row of the table', 'U_top', 1000, 'V', F4)
const TOP_IMPULSE = standard('clearance.top', 'highest impulse of the table', 'U_topi', 12e3, 'V', F2)
const WORKING = { ...volts('U_w', 'highest working voltage, rms or DC, pole to pole'), holds: [1, 1000] } as const
/** How many times the table: once for basic insulation, twice where one insulation stands for two (from memory). */
export const INSULATION_TIMES = {
  basic: standard('insulation.basic', 'basic insulation', 'k_i', 1, '1', F4),
  reinforced: standard('insulation.reinforced', 'reinforced insulation', 'k_i', 2, '1', {
    ...F4,
    place: 'reinforced is twice basic',
    mark: 'from memory',
  }),
} as const

/**
 * Row of the creepage table that covers a voltage: the next one up, without limit above the last. In a floating circuit each pole to the body counts with the
 * whole voltage, for one earth fault lifts the other pole.
 */
export const creepageRow = formula(
  {
    id: 'creepage-row',
    label: 'Row of the creepage table',
    gives: volts('U_row', 'row'),
    takes: { voltage: WORKING },
    uses: [VOLT],
    text: `u = U_w / V_1
U_row = V_1 · { 50 if u ≤ 50; 63 if u ≤ 63; 80 if u ≤ 80; 100 if u ≤ 100; 125 if u ≤ 125; 160 if u ≤ 160; 200 if u ≤ 200; 250 if u ≤ 250; 320 if u ≤ 320; 400 if u ≤ 400; 500 if u ≤ 500; 630 if u ≤ 630; 800 if u ≤ 800; 1000 if u ≤ 1000; ∞ otherwise }`,
    source: F4,
    proof: {
      examples: [
        { takes: { voltage: 400 }, gives: 400, within: 0, source: f4('400 V exactly') },
        { takes: { voltage: 403.2 }, gives: 500, within: 0, source: f4('96 cells of 4.20 V') },
        { takes: { voltage: 360 }, gives: 400, within: 0, source: f4('360 V') },
      ],
    },
  },
  ({ voltage }) => {
    const u = voltage / VOLT.value
    return (
      VOLT.value * ([50, 63, 80, 100, 125, 160, 200, 250, 320, 400, 500, 630, 800, 1000].find(row => u <= row) ?? Number.POSITIVE_INFINITY)
    )
  },
)

/** Least way over a surface. Basic and reinforced insulation take the row; only functional insulation may take the voltage itself, between two rows. */
export const creepageDistance = formula(
  {
    id: 'creepage-distance',
    label: 'Least creepage distance',
    gives: metres('d_c', 'least way over the surface'),
    takes: {
      table: { symbol: 'd', unit: ['V', 'm'], label: 'table by pollution and material', curve: true },
      row: { ...volts('U_row', 'row, or the voltage itself for functional insulation'), holds: [50, 1000] },
      times: { symbol: 'k_i', unit: '1', label: '1 basic, 2 reinforced', shows: 'number', holds: [1, 2] },
    },
    uses: [TOP],
    text: 'd_c = { k_i · d(U_row) if U_row ≤ U_top; ∞ otherwise }',
    source: F4,
    leavesOut: 'Grooves narrower than the table’s least width, which count as closed; dirt beyond pollution degree 3.',
    proof: {
      examples: [
        {
          takes: { table: creepageTable(2, 'III'), row: 400, times: 1 },
          gives: 4e-3,
          within: 1e-9,
          source: f4('400 V, degree 2, group III'),
        },
        { takes: { table: creepageTable(2, 'III'), row: 400, times: 2 }, gives: 8e-3, within: 1e-9, source: f4('the same, reinforced') },
        { takes: { table: creepageTable(2, 'III'), row: 500, times: 1 }, gives: 5e-3, within: 1e-9, source: f4('403.2 V, next row') },
        {
          takes: { table: creepageTable(2, 'III'), row: 500, times: 2 },
          gives: 10e-3,
          within: 1e-9,
          source: f4('403.2 V, next row, reinforced'),
        },
        {
          takes: { table: creepageTable(2, 'III'), row: 403.2, times: 1 },
          gives: 4.03e-3,
          within: 5e-6,
          source: f4('403.2 V, functional'),
        },
        {
          takes: { table: creepageTable(3, 'III'), row: 400, times: 1 },
          gives: 6.3e-3,
          within: 1e-9,
          source: f4('360 V, degree 3, group III'),
        },
        { takes: { table: creepageTable(2, 'III'), row: 500, times: 1 }, gives: 5e-3, within: 1e-9, source: f4('450 V, next row') },
        { takes: { table: creepageTable(2, 'III'), row: 450, times: 1 }, gives: 4.5e-3, within: 1e-9, source: f4('450 V, functional') },
      ],
    },
  },
  ({ table, row, times }) => (row <= TOP.value ? times * at(table, row) : Number.POSITIVE_INFINITY),
)

/**
 * Impulse voltage a circuit must stand, by its voltage and overvoltage category; reinforced insulation takes the next step up. Chargers on the mains: category
 * II. Without limit beyond the table.
 */
export const ratedImpulse = formula(
  {
    id: 'rated-impulse',
    label: 'Rated impulse voltage',
    gives: volts('U_imp', 'impulse voltage'),
    takes: {
      voltage: { ...volts('U_ln', 'line to neutral'), holds: [1, 1000] },
      category: { ...count('n_ov', 'overvoltage category'), holds: [1, 4] },
      steps: { ...count('n_r', '0 basic, 1 reinforced'), holds: [0, 1] },
    },
    uses: [VOLT],
    text: `u = U_ln / V_1
n = { 0 if u ≤ 50; 1 if u ≤ 100; 2 if u ≤ 150; 3 if u ≤ 300; 4 if u ≤ 600; 5 if u ≤ 1000; ∞ otherwise } + n_ov + n_r
U_imp = V_1 · { 330 if n ≤ 1; 500 if n ≤ 2; 800 if n ≤ 3; 1500 if n ≤ 4; 2500 if n ≤ 5; 4000 if n ≤ 6; 6000 if n ≤ 7; 8000 if n ≤ 8; 12000 if n ≤ 9; ∞ otherwise }`,
    source: F1,
    leavesOut: 'A traction bus apart from the mains, whose impulse is that of its own switching.',
    proof: {
      examples: [
        {
          takes: { voltage: 230, category: 2, steps: 0 },
          gives: 2500,
          within: 0,
          source: { ...F1, place: 'table F.1: 230 V, category II' },
        },
        {
          takes: { voltage: 230, category: 2, steps: 1 },
          gives: 4000,
          within: 0,
          source: { ...F1, place: 'table F.1: 230 V, category II, reinforced' },
        },
        { takes: { voltage: 50, category: 1, steps: 0 }, gives: 330, within: 0, source: F1 },
        { takes: { voltage: 1000, category: 4, steps: 0 }, gives: 12e3, within: 0, source: F1 },
      ],
    },
  },
  ({ voltage, category, steps }) => {
    const u = voltage / VOLT.value,
      rows = [50, 100, 150, 300, 600, 1000].findIndex(row => u <= row),
      n = (rows < 0 ? Number.POSITIVE_INFINITY : rows) + category + steps
    return VOLT.value * ([330, 500, 800, 1500, 2500, 4000, 6000, 8000, 12000].find((_, k) => n <= k + 1) ?? Number.POSITIVE_INFINITY)
  },
)

/** Least way through air. Thin air strikes over sooner: above 2000 m it grows. */
export const clearanceInAir = formula(
  {
    id: 'clearance-in-air',
    label: 'Least clearance in air',
    gives: metres('d_a', 'least way through air'),
    takes: {
      table: { symbol: 'a', unit: ['V', 'm'], label: 'table by pollution', curve: true },
      impulse: { ...volts('U_imp', 'impulse voltage, a step of the table'), holds: [330, 12e3] },
      factor: { symbol: 'k_h', unit: ['m', '1'], label: 'factor by height', curve: true },
      altitude: { symbol: 'h', unit: 'm', label: 'height above the sea', shows: 'altitude', holds: [0, 6000] },
    },
    uses: [TOP_IMPULSE],
    text: 'd_a = { k_h(h) · a(U_imp) if U_imp ≤ U_topi; ∞ otherwise }',
    source: F2,
    leavesOut: 'Shape of the parts: the worst, point against plane, is taken.',
    proof: {
      examples: (
        [
          [2500, 0, 1.5e-3, '230 V, category II'],
          [4000, 0, 3e-3, '230 V, category II, reinforced'],
          [2500, 3000, 1.71e-3, '230 V, category II, 3000 m'],
          [4000, 3000, 3.42e-3, '230 V, category II, reinforced, 3000 m'],
        ] as const
      ).map(([impulse, altitude, gives, place]) => ({
        takes: { table: clearanceTable(2), impulse, factor: altitudeTable(), altitude },
        gives,
        within: 1e-9,
        source: f2(place),
      })),
    },
  },
  ({ table, impulse, factor, altitude }) =>
    impulse <= TOP_IMPULSE.value ? at(factor, altitude) * at(table, impulse) : Number.POSITIVE_INFINITY,
)
