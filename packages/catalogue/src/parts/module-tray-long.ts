import { commonPractice, fromMemory, type PartClass } from '../part.ts'
import { SALVAGED_MODULE } from './salvaged-module.ts'

const REMARK =
  'Mass follows the number of groups within the class range (common practice). The parallel cells of a group are taken as one cell. Chemistry by cell format: read the label.'

/** Long tray of cylindrical cells; dangerous voltage as a single module. */
export const moduleTrayLong: PartClass = {
  class: 'module-tray-long',
  label: 'long cylindrical-cell tray, 23 to 25 in series',
  fills: 'module',
  ranges: {
    'cell-capacity': [190, 230, 'Ah'],
    mass: [88, 100, 'kg'],
  },
  parts: [
    {
      id: 'module-tray-long-23s@1',
      class: 'module-tray-long',
      label: 'long cylindrical-cell tray 23s',
      fields: {
        chemistry: commonPractice('NCA'),
        'cells-in-series': fromMemory('23'),
        'cells-in-parallel': commonPractice('1'),
        'cell-capacity': fromMemory('210 ± 20 Ah'),
        'cell-resistance': fromMemory('1.15 ± 0.85 mΩ'),
        mass: fromMemory('91 ± 3 kg'),
        length: fromMemory('1850 mm'),
        width: fromMemory('310 mm'),
        height: fromMemory('90 mm'),
        health: commonPractice('77.5 ± 7.5 %'),
      },
      price: { low: 1360, high: 4750, currency: 'EUR', when: 'used, 2020s' },
      remark: `${REMARK} ${SALVAGED_MODULE}`,
    },
    {
      id: 'module-tray-long-24s@1',
      class: 'module-tray-long',
      label: 'long cylindrical-cell tray 24s',
      fields: {
        chemistry: commonPractice('NCA'),
        'cells-in-series': fromMemory('24'),
        'cells-in-parallel': commonPractice('1'),
        'cell-capacity': fromMemory('210 ± 20 Ah'),
        'cell-resistance': fromMemory('1.15 ± 0.85 mΩ'),
        mass: fromMemory('94 ± 6 kg'),
        length: fromMemory('1850 mm'),
        width: fromMemory('310 mm'),
        height: fromMemory('90 mm'),
        health: commonPractice('77.5 ± 7.5 %'),
      },
      price: { low: 1360, high: 4750, currency: 'EUR', when: 'used, 2020s' },
      remark: `${REMARK} ${SALVAGED_MODULE}`,
    },
    {
      id: 'module-tray-long-25s@1',
      class: 'module-tray-long',
      label: 'long cylindrical-cell tray 25s',
      fields: {
        chemistry: commonPractice('NCA'),
        'cells-in-series': fromMemory('25'),
        'cells-in-parallel': commonPractice('1'),
        'cell-capacity': fromMemory('210 ± 20 Ah'),
        'cell-resistance': fromMemory('1.15 ± 0.85 mΩ'),
        mass: fromMemory('97 ± 3 kg'),
        length: fromMemory('1850 mm'),
        width: fromMemory('310 mm'),
        height: fromMemory('90 mm'),
        health: commonPractice('77.5 ± 7.5 %'),
      },
      price: { low: 1360, high: 4750, currency: 'EUR', when: 'used, 2020s' },
      remark: `${REMARK} ${SALVAGED_MODULE}`,
    },
  ],
}
