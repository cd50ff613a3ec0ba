import { commonPractice, fromMemory, type PartClass, published, SINGLE_CELL } from '../part.ts'

const SHEET_105_AH = 'cell specification of a 105 Ah LFP prismatic cell, version E, May 2023 (public copy, extract)'
const SHEET_202_AH = 'cell specification of a 202 Ah LFP prismatic cell, revision 0, 9 March 2020, table 1 (public copy)'
const TEARDOWN_161_AH = 'teardown of a 161 Ah LFP car cell, S. Stock et al. (2023), as summarised'
const TEARDOWN_2025 = 'J. Gorsch et al., Cell Reports Physical Science (2025), table as reprinted'
const REMARK = 'Continuous current is 1C, the class. Window 2.5 to 3.65 V.'

/** Prismatic LFP cell, used one by one. */
export const cellLfp: PartClass = {
  class: 'cell-lfp',
  label: 'single LFP cell',
  fills: 'module',
  defines: SINGLE_CELL,
  ranges: {},
  parts: [
    {
      id: 'cell-lfp-100ah@1',
      class: 'cell-lfp',
      label: 'LFP prismatic cell, 100 Ah',
      fields: {
        chemistry: fromMemory('LFP'),
        'cells-in-series': fromMemory('1'),
        'cells-in-parallel': fromMemory('1'),
        'cell-capacity': fromMemory('100 Ah'),
        'continuous-current': fromMemory('100 A'),
        mass: fromMemory('2.15 ± 0.15 kg'),
        length: fromMemory('160 mm'),
        width: fromMemory('50 mm'),
        height: fromMemory('118 mm'),
      },
      remark: REMARK,
    },
    {
      id: 'cell-lfp-280ah@1',
      class: 'cell-lfp',
      label: 'LFP prismatic cell, 280 Ah',
      fields: {
        chemistry: fromMemory('LFP'),
        'cells-in-series': fromMemory('1'),
        'cells-in-parallel': fromMemory('1'),
        'cell-capacity': fromMemory('280 Ah'),
        'cell-resistance': commonPractice('0.56 ± 0.06 mΩ'),
        'continuous-current': fromMemory('280 A'),
        mass: fromMemory('5.55 ± 0.25 kg'),
        length: fromMemory('174 mm'),
        width: fromMemory('72 mm'),
        height: fromMemory('207 mm'),
      },
      remark:
        'Continuous current is 1C, the class. Window 2.5 to 3.65 V. Resistance is 2 to 2.5 times 0.25 mΩ at 1 kHz (our planning value).',
    },
    {
      id: 'cell-lfp-314ah@1',
      class: 'cell-lfp',
      label: 'LFP prismatic cell, 314 Ah',
      fields: {
        chemistry: fromMemory('LFP'),
        'cells-in-series': fromMemory('1'),
        'cells-in-parallel': fromMemory('1'),
        'cell-capacity': fromMemory('314 Ah'),
        'continuous-current': fromMemory('314 A'),
        mass: fromMemory('5.55 ± 0.25 kg'),
        length: fromMemory('174 mm'),
        width: fromMemory('72 mm'),
        height: fromMemory('207 mm'),
      },
      remark: REMARK,
    },
    {
      id: 'cell-lfp-105ah@1',
      class: 'cell-lfp',
      label: 'LFP prismatic cell, 105 Ah',
      fields: {
        chemistry: published('LFP', SHEET_105_AH),
        'cells-in-series': fromMemory('1'),
        'cells-in-parallel': fromMemory('1'),
        'cell-capacity': published('105 Ah', SHEET_105_AH),
        'cell-resistance': commonPractice('0.46 ± 0.16 mΩ'),
        mass: fromMemory('1.98 kg'),
        length: fromMemory('130 mm'),
        width: fromMemory('36 mm'),
        height: fromMemory('200 mm'),
      },
      remark:
        'Resistance is 2 to 2.5 times the specified 0.20 ± 0.05 mΩ at 1 kHz, new (our planning value). Window 2.5 to 3.65 V. Currents: take them from the sheet.',
    },
    {
      id: 'cell-lfp-202ah@1',
      class: 'cell-lfp',
      label: 'LFP prismatic cell, 202 Ah',
      fields: {
        chemistry: published('LFP', SHEET_202_AH),
        'cells-in-series': fromMemory('1'),
        'cells-in-parallel': fromMemory('1'),
        'cell-capacity': published('202 Ah', SHEET_202_AH),
        'cell-resistance': commonPractice('0.45 ± 0.05 mΩ'),
        'peak-current': published('404 A', SHEET_202_AH),
        'peak-time': published('30 s', SHEET_202_AH),
        'continuous-current': published('202 A', SHEET_202_AH),
        'charge-current': published('202 A', SHEET_202_AH),
        mass: published('3.95 ± 0.1 kg', SHEET_202_AH),
        length: published('54 mm', SHEET_202_AH),
        width: published('173 mm', SHEET_202_AH),
        height: published('207 mm', SHEET_202_AH),
      },
      remark:
        'Resistance is 2 to 2.5 times the highest 1 kHz value of the sheet, 0.2 mΩ (our planning value). Peak is 2C for 30 s above 30 % charge; charging 0 to 60 °C, discharging −35 to 60 °C, cell temperatures.',
    },
    {
      id: 'cell-lfp-162ah@1',
      class: 'cell-lfp',
      label: 'LFP prismatic car cell, 161.5 Ah',
      fields: {
        chemistry: published('LFP', TEARDOWN_161_AH),
        'cells-in-series': fromMemory('1'),
        'cells-in-parallel': fromMemory('1'),
        'cell-capacity': published('161.5 Ah', TEARDOWN_161_AH),
        'cell-resistance': commonPractice('0.9 ± 0.1 mΩ'),
        mass: published('3.1 kg', TEARDOWN_161_AH),
        length: published('280 mm', TEARDOWN_161_AH),
        width: published('63 mm', TEARDOWN_161_AH),
        height: published('82 mm', TEARDOWN_161_AH),
      },
      remark: 'Capacity at C/20. Resistance is 2 to 2.5 times about 0.4 mΩ at 1 kHz (our planning value). Window 2.5 to 3.65 V.',
    },
    {
      id: 'cell-lfp-135ah-flat@1',
      class: 'cell-lfp',
      label: 'LFP long flat cell, 135 Ah',
      fields: {
        chemistry: published('LFP', TEARDOWN_2025),
        'cells-in-series': fromMemory('1'),
        'cells-in-parallel': fromMemory('1'),
        'cell-capacity': published('135 Ah', TEARDOWN_2025),
        mass: published('2.7 ± 0.3 kg', TEARDOWN_2025),
        length: published('965 mm', TEARDOWN_2025),
        width: published('90 mm', TEARDOWN_2025),
        height: published('14 mm', TEARDOWN_2025),
      },
      remark: 'Window 2.6 to 3.65 V. Resistance and currents are not published: measure.',
    },
  ],
}
