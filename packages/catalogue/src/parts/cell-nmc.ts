import { fromMemory, type PartClass, published, SINGLE_CELL } from '../part.ts'

const PRESENTATION_2018 = "maker's presentation of a 94 Ah prismatic cell, as published in April 2018"
const COMPARISON_TABLE = 'Fraunhofer, cell comparison table of an open battery-management project'
const TEARDOWN_2025 = 'J. Gorsch et al., Cell Reports Physical Science (2025), table as reprinted'

/** NMC cell of a battery car, used one by one. */
export const cellNmc: PartClass = {
  class: 'cell-nmc',
  label: 'single NMC cell',
  fills: 'module',
  defines: SINGLE_CELL,
  ranges: {},
  parts: [
    {
      id: 'cell-nmc-94ah@1',
      class: 'cell-nmc',
      label: 'NMC prismatic cell, 94 Ah',
      fields: {
        chemistry: published('NMC', PRESENTATION_2018),
        'cells-in-series': fromMemory('1'),
        'cells-in-parallel': fromMemory('1'),
        'cell-capacity': published('94 Ah', PRESENTATION_2018),
        mass: published('2 kg', PRESENTATION_2018),
        length: published('173 mm', PRESENTATION_2018),
        width: published('45 mm', PRESENTATION_2018),
        height: published('125 mm', PRESENTATION_2018),
      },
      remark: 'Mass computed from the stated energy density. 4.15 V at most (from memory). Currents: take them from the sheet.',
    },
    {
      id: 'cell-nmc-60ah@1',
      class: 'cell-nmc',
      label: 'NMC prismatic cell, 60 Ah',
      fields: {
        chemistry: published('NMC', COMPARISON_TABLE),
        'cells-in-series': fromMemory('1'),
        'cells-in-parallel': fromMemory('1'),
        'cell-capacity': published('60 Ah', COMPARISON_TABLE),
        'cell-resistance': published('0.8 mΩ', COMPARISON_TABLE),
        mass: published('1.86 kg', COMPARISON_TABLE),
      },
      remark: 'DC resistance of a new cell at 25 °C. Window 2.70 to 4.12 V. 0.973 litres; outer size not in the table.',
    },
    {
      id: 'cell-nmc-4680@1',
      class: 'cell-nmc',
      label: 'NMC cylindrical cell, 46 × 80 mm',
      fields: {
        chemistry: published('NMC', TEARDOWN_2025),
        'cells-in-series': fromMemory('1'),
        'cells-in-parallel': fromMemory('1'),
        'cell-capacity': published('23.1 Ah', TEARDOWN_2025),
        mass: published('0.355 kg', TEARDOWN_2025),
        length: published('46 mm', TEARDOWN_2025),
        width: published('46 mm', TEARDOWN_2025),
        height: published('80 mm', TEARDOWN_2025),
      },
      remark:
        'Window 2.5 to 4.3 V. About 70 °C at the surface when charged at 2C without cooling (M. Ank et al., J. Electrochem. Soc. 170, 2023).',
    },
  ],
}
