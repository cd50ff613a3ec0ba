import { commonPractice, fromMemory, type PartClass, published } from '../part.ts'
import { SALVAGED_MODULE } from './salvaged-module.ts'

const SOURCE = "parts trader's page on a cylindrical-cell tray"

/** Tray of small cylindrical cells with a liquid ribbon between them. */
export const moduleTray6s: PartClass = {
  class: 'module-tray-6s',
  label: 'cylindrical-cell tray, 6 in series',
  fills: 'module',
  ranges: {},
  parts: [
    {
      id: 'module-tray-6s-233ah@1',
      class: 'module-tray-6s',
      label: 'cylindrical-cell tray 6s, 233 Ah',
      fields: {
        chemistry: commonPractice('NCA'),
        'cells-in-series': published('6', SOURCE),
        'cells-in-parallel': commonPractice('1'),
        'cell-capacity': published('233 Ah', SOURCE),
        'cell-resistance': fromMemory('1.15 ± 0.85 mΩ'),
        mass: published('25.6 kg', SOURCE),
        length: published('685 mm', SOURCE),
        width: published('300 mm', SOURCE),
        height: published('75 mm', SOURCE),
        health: commonPractice('77.5 ± 7.5 %'),
      },
      price: { low: 400, high: 1260, currency: 'EUR', when: 'used, 2020s' },
      remark: `5.03 kWh at 21.6 V. The parallel cells of a group are taken as one cell of 233 Ah. The seller states 4.2 and 2.8 V per cell as limits and a 450 A fuse in the car it came from. ${SALVAGED_MODULE}`,
    },
  ],
}
