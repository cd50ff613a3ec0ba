import { type PartClass, published } from '../part.ts'

const REPORT_2019 = 'hackaday.com, 27 October 2019'
const REPORT_2020 = 'jalopnik.com, 27 May 2020'

/** New, small unit sold for transverse fitting. */
export const driveUnitCrate: PartClass = {
  class: 'drive-unit-crate',
  label: 'crate drive unit, transverse',
  fills: 'drive-unit',
  ranges: {},
  parts: [
    {
      id: 'drive-unit-crate-80kw@1',
      class: 'drive-unit-crate',
      label: 'crate drive unit with inverter and reducer, 80 kW',
      fields: {
        'peak-power': published('80 kW', REPORT_2019),
        mass: published('70 kg', REPORT_2019),
        length: published('600 mm', REPORT_2019),
        width: published('440 mm', REPORT_2019),
        height: published('280 mm', REPORT_2019),
      },
      remark: 'Single published figures without tolerance. Reductions are an option: take the ratio ordered.',
    },
    {
      id: 'drive-unit-crate-136nm@1',
      class: 'drive-unit-crate',
      label: 'crate motor with reducer, without inverter, 136 Nm',
      fields: {
        'peak-torque': published('136 Nm', REPORT_2020),
        'top-speed': published('10500 rpm', REPORT_2020),
        mass: published('50 kg', REPORT_2020),
        length: published('439 mm', REPORT_2020),
        width: published('384 mm', REPORT_2020),
        height: published('226 mm', REPORT_2020),
      },
      remark:
        'Published as 100 lb·ft, here rounded to 136 Nm. Listed new at 6400 pounds sterling in 2020; no price in euro was published. Reductions are an option: take the ratio ordered.',
    },
  ],
}
