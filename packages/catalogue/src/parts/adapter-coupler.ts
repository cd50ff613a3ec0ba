import { fromMemory, type PartClass } from '../part.ts'

/** Plate between motor and kept gearbox with the coupler between their shafts, made to measure. */
export const adapterCoupler: PartClass = {
  class: 'adapter-coupler',
  label: 'adapter plate and coupler',
  ranges: {
    mass: [8, 20, 'kg'],
  },
  prices: [400, 2000],
  parts: [
    {
      id: 'adapter-coupler-custom@1',
      class: 'adapter-coupler',
      label: 'adapter plate and coupler, made to measure',
      fields: {
        mass: fromMemory('14 ± 6 kg'),
      },
      price: { low: 400, high: 2000, currency: 'EUR', when: 'new, 2020s' },
      remark: 'Torque rating is for whoever makes it to state.',
    },
  ],
}
