import { fromMemory, type PartClass, published, SINGLE_CELL } from '../part.ts'

const REPORT_2022 = "maker's figures of a 20 Ah LTO power cell, as reported on 12 January 2022"
const SHEET_40_AH = 'data sheet of a 40 Ah cylindrical LTO cell'
const PRESENTATION_2008 = 'conference presentation of LTO cells for hybrids, May 2008'

/** Lithium-titanate cell; may be charged below freezing where its sheet says so. */
export const cellLto: PartClass = {
  class: 'cell-lto',
  label: 'single LTO cell',
  fills: 'module',
  defines: SINGLE_CELL,
  ranges: {},
  parts: [
    {
      id: 'cell-lto-20ah@1',
      class: 'cell-lto',
      label: 'LTO prismatic power cell, 20 Ah',
      fields: {
        chemistry: published('LTO', REPORT_2022),
        'cells-in-series': fromMemory('1'),
        'cells-in-parallel': fromMemory('1'),
        'cell-capacity': published('20 Ah', REPORT_2022),
        mass: published('0.545 kg', REPORT_2022),
        length: published('116 mm', REPORT_2022),
        width: published('22 mm', REPORT_2022),
        height: published('106 mm', REPORT_2022),
      },
      remark: '1.9 kW in or out for 10 s at half charge or more. Window 1.5 to 2.7 V.',
    },
    {
      id: 'cell-lto-42ah@1',
      class: 'cell-lto',
      label: 'LTO cylindrical cell, 42 Ah',
      fields: {
        chemistry: published('LTO', SHEET_40_AH),
        'cells-in-series': fromMemory('1'),
        'cells-in-parallel': fromMemory('1'),
        'cell-capacity': published('42 Ah', SHEET_40_AH),
        'cell-resistance': published('0.71 mΩ', SHEET_40_AH),
        'peak-current': published('800 A', SHEET_40_AH),
        'peak-time': published('10 s', SHEET_40_AH),
        'continuous-current': published('240 A', SHEET_40_AH),
        mass: published('1.22 kg', SHEET_40_AH),
      },
      remark: 'Resistance: DC, 10 s, discharging at half charge; 0.52 mΩ charging. Mass computed from the energy density.',
    },
    {
      id: 'cell-lto-3ah-hybrid@1',
      class: 'cell-lto',
      label: 'LTO hybrid cell, 3.0 Ah',
      fields: {
        chemistry: published('LTO', PRESENTATION_2008),
        'cells-in-series': fromMemory('1'),
        'cells-in-parallel': fromMemory('1'),
        'cell-capacity': published('3 Ah', PRESENTATION_2008),
        'cell-resistance': published('2.5 mΩ', PRESENTATION_2008),
        mass: published('0.14 kg', PRESENTATION_2008),
        length: published('62 mm', PRESENTATION_2008),
        width: published('90 mm', PRESENTATION_2008),
        height: published('13 mm', PRESENTATION_2008),
      },
      remark: 'Resistance: DC, 10 s; 1.7 mΩ at 1 kHz. Window 1.7 to 2.8 V.',
    },
    {
      id: 'cell-lto-4200mah-hybrid@1',
      class: 'cell-lto',
      label: 'LTO hybrid cell, 4.2 Ah',
      fields: {
        chemistry: published('LTO', PRESENTATION_2008),
        'cells-in-series': fromMemory('1'),
        'cells-in-parallel': fromMemory('1'),
        'cell-capacity': published('4.2 Ah', PRESENTATION_2008),
        'cell-resistance': published('6.5 mΩ', PRESENTATION_2008),
        mass: published('0.155 kg', PRESENTATION_2008),
        length: published('62 mm', PRESENTATION_2008),
        width: published('95 mm', PRESENTATION_2008),
        height: published('13 mm', PRESENTATION_2008),
      },
      remark: 'Resistance: DC, 10 s; 2.6 mΩ at 1 kHz. Window 1.7 to 2.8 V.',
    },
  ],
}
