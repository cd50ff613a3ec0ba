import { fromMemory, type PartClass, SINGLE_CELL } from '../part.ts'

const REMARK = 'Mass and size follow capacity within the class range (common practice). Continuous current is 3C, the class.'

/** LFP cell in a plastic case for high current. */
export const cellLfpPower: PartClass = {
  class: 'cell-lfp-power',
  label: 'high-power LFP cell',
  fills: 'module',
  defines: SINGLE_CELL,
  ranges: {
    'cell-capacity': [60, 180, 'Ah'],
    mass: [2, 6, 'kg'],
    width: [36, 71, 'mm'],
    height: [220, 280, 'mm'],
  },
  parts: [
    {
      id: 'cell-lfp-power-70ah@1',
      class: 'cell-lfp-power',
      label: 'high-power LFP cell, 70 Ah class',
      fields: {
        chemistry: fromMemory('LFP'),
        'cells-in-series': fromMemory('1'),
        'cells-in-parallel': fromMemory('1'),
        'cell-capacity': fromMemory('70 ± 10 Ah'),
        'continuous-current': fromMemory('210 ± 30 A'),
        mass: fromMemory('3.2 ± 1.2 kg'),
        length: fromMemory('145 mm'),
        width: fromMemory('46 ± 10 mm'),
        height: fromMemory('237.5 ± 17.5 mm'),
      },
      remark: REMARK,
    },
    {
      id: 'cell-lfp-power-95ah@1',
      class: 'cell-lfp-power',
      label: 'high-power LFP cell, 95 Ah class',
      fields: {
        chemistry: fromMemory('LFP'),
        'cells-in-series': fromMemory('1'),
        'cells-in-parallel': fromMemory('1'),
        'cell-capacity': fromMemory('95 ± 15 Ah'),
        'continuous-current': fromMemory('285 ± 45 A'),
        mass: fromMemory('3.6 ± 1.6 kg'),
        length: fromMemory('145 mm'),
        width: fromMemory('50 ± 14 mm'),
        height: fromMemory('245 ± 25 mm'),
      },
      remark: REMARK,
    },
    {
      id: 'cell-lfp-power-130ah@1',
      class: 'cell-lfp-power',
      label: 'high-power LFP cell, 130 Ah class',
      fields: {
        chemistry: fromMemory('LFP'),
        'cells-in-series': fromMemory('1'),
        'cells-in-parallel': fromMemory('1'),
        'cell-capacity': fromMemory('130 ± 20 Ah'),
        'continuous-current': fromMemory('390 ± 60 A'),
        mass: fromMemory('4.2 ± 1.8 kg'),
        length: fromMemory('145 mm'),
        width: fromMemory('54.5 ± 16.5 mm'),
        height: fromMemory('252.5 ± 27.5 mm'),
      },
      remark: REMARK,
    },
    {
      id: 'cell-lfp-power-165ah@1',
      class: 'cell-lfp-power',
      label: 'high-power LFP cell, 165 Ah class',
      fields: {
        chemistry: fromMemory('LFP'),
        'cells-in-series': fromMemory('1'),
        'cells-in-parallel': fromMemory('1'),
        'cell-capacity': fromMemory('165 ± 15 Ah'),
        'continuous-current': fromMemory('495 ± 45 A'),
        mass: fromMemory('4.8 ± 1.2 kg'),
        length: fromMemory('145 mm'),
        width: fromMemory('60.5 ± 10.5 mm'),
        height: fromMemory('260 ± 20 mm'),
      },
      remark: REMARK,
    },
  ],
}
