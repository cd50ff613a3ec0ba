import { at } from '../numerics/curve.ts'
import { formula } from '../working/formula.ts'
import { ROOM, TEN_SECONDS, WARM_FLOOR } from './cold-resistance.ts'
import { count } from './symbols.ts'

/**
 * Resistance of one cell from a lamp-load test of modules in series: brought to 10 s, 25 °C and half charge by the class laws.
 *
 * Good to some 15 %: the meter's last digit on a small drop weighs most. Use a load that draws 20 A or more.
 */
export const lampTestResistance = formula(
  {
    id: 'lamp-test-resistance',
    label: 'Cell resistance from a lamp-load test',
    gives: { symbol: 'R_cell', unit: 'Ω', label: 'cell, 10 s, 25 °C, half charge' },
    takes: {
      before: { symbol: 'U_0', unit: 'V', label: 'voltage before' },
      after: { symbol: 'U_1', unit: 'V', label: 'voltage under load' },
      current: { symbol: 'I', unit: 'A', label: 'current drawn' },
      time: { symbol: 't', unit: 's', label: 'after', holds: [1, 60] },
      temperature: { symbol: 'T', unit: 'K', label: 'cell temperature', shows: 'temperature', holds: [263.15, 318.15] },
      charge: { symbol: 'z', unit: '1', label: 'state of charge', shows: 'share', holds: [0.2, 0.9] },
      modules: count('n', 'modules tested in series'),
      series: count('n_s', 'cells in series in one module'),
      parallel: count('n_p', 'cells in parallel'),
      coefficient: { symbol: 'B', unit: 'K', label: 'cold coefficient' },
      share: { symbol: 's_1', unit: '1', label: 'branch over 10 s resistance', shows: 'share' },
      branch: { symbol: 'τ_1', unit: 's', label: 'time constant of the branch' },
      shape: { symbol: 'r', unit: ['1', '1'], label: 'resistance over charge', curve: true },
    },
    uses: [ROOM, WARM_FLOOR, TEN_SECONDS],
    text: `f = max(f_warm, exp(B · (1 / T − 1 / T_25)))
g = 1 + s_1 · (exp(−t_10 / τ_1) − exp(−t / τ_1))
R_cell = (U_0 − U_1) / I · n_p / (n · n_s) / (f · r(z) · g)`,
    source: { work: 'circuits', place: 'voltage drop over current; class laws for time, temperature and charge' },
    leavesOut: 'Change of the open-circuit voltage during the test; leads, unless sensed at the terminals.',
    proof: {
      examples: [
        {
          takes: {
            before: 22.5,
            after: 22.413,
            current: 30,
            time: 10,
            temperature: 298.15,
            charge: 0.5,
            modules: 1,
            series: 6,
            parallel: 2,
            coefficient: 2600,
            share: 0.31,
            branch: 15,
            shape: { x: Float64Array.of(0, 1), y: Float64Array.of(1, 1) },
          },
          gives: 0.087 / 30 / 3,
          within: 1e-9,
          source: { work: 'circuits', place: 'at 10 s, 25 °C and half charge nothing is left to correct; worked by hand' },
        },
      ],
    },
  },
  ({ before, after, current, time, temperature, charge, modules, series, parallel, coefficient, share, branch, shape }) => {
    const cold = Math.max(WARM_FLOOR.value, Math.exp(coefficient * (1 / temperature - 1 / ROOM.value)))
    const grown = 1 + share * (Math.exp(-10 / branch) - Math.exp(-time / branch))
    return (((before - after) / current) * parallel) / (modules * series) / (cold * at(shape, charge) * grown)
  },
)
