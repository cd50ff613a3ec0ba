import { fromMemory, type PartClass } from '../part.ts'

const REMARK =
  'Continuous current in air of about 30 to 40 °C, less in a hot bay; terminals and stud may limit first. The price range is one for all sizes.'

/** Screened single-core cable, orange. */
export const hvCable: PartClass = {
  class: 'hv-cable',
  label: 'screened high-voltage cable',
  ranges: {},
  parts: [
    {
      id: 'hv-cable-16mm2@1',
      class: 'hv-cable',
      label: 'screened high-voltage cable, 16 mm²',
      fields: {
        'conductor-size': fromMemory('16 mm²'),
        current: fromMemory('100 A'),
        'mass-of-one-metre': fromMemory('0.3 kg'),
      },
      price: { low: 8, high: 40, currency: 'EUR', when: 'new, 2020s', per: 'm' },
      remark: REMARK,
    },
    {
      id: 'hv-cable-35mm2@1',
      class: 'hv-cable',
      label: 'screened high-voltage cable, 35 mm²',
      fields: {
        'conductor-size': fromMemory('35 mm²'),
        current: fromMemory('170 A'),
        'mass-of-one-metre': fromMemory('0.6 kg'),
      },
      price: { low: 8, high: 40, currency: 'EUR', when: 'new, 2020s', per: 'm' },
      remark: REMARK,
    },
    {
      id: 'hv-cable-50mm2@1',
      class: 'hv-cable',
      label: 'screened high-voltage cable, 50 mm²',
      fields: {
        'conductor-size': fromMemory('50 mm²'),
        current: fromMemory('220 A'),
        'mass-of-one-metre': fromMemory('0.8 kg'),
      },
      price: { low: 8, high: 40, currency: 'EUR', when: 'new, 2020s', per: 'm' },
      remark: REMARK,
    },
    {
      id: 'hv-cable-70mm2@1',
      class: 'hv-cable',
      label: 'screened high-voltage cable, 70 mm²',
      fields: {
        'conductor-size': fromMemory('70 mm²'),
        current: fromMemory('270 A'),
        'mass-of-one-metre': fromMemory('1.1 kg'),
      },
      price: { low: 8, high: 40, currency: 'EUR', when: 'new, 2020s', per: 'm' },
      remark: REMARK,
    },
  ],
}
