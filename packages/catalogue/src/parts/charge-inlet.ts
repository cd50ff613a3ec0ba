import { fromMemory, type PartClass } from '../part.ts'

const REMARK = 'Mass and price keep the class range.'

/** AC inlet in the car with its cable. */
export const chargeInlet: PartClass = {
  class: 'charge-inlet',
  label: 'charge inlet and cable set',
  ranges: {
    mass: [1, 2, 'kg'],
  },
  prices: [60, 300],
  parts: [
    {
      id: 'charge-inlet-type1-16a-1ph@1',
      class: 'charge-inlet',
      label: 'charge inlet type 1, 16 A, single phase',
      fields: {
        connector: fromMemory('type 1'),
        current: fromMemory('16 A'),
        phases: fromMemory('1'),
        mass: fromMemory('1.5 ± 0.5 kg'),
      },
      price: { low: 60, high: 300, currency: 'EUR', when: 'new, 2020s' },
      remark: REMARK,
    },
    {
      id: 'charge-inlet-type1-32a-1ph@1',
      class: 'charge-inlet',
      label: 'charge inlet type 1, 32 A, single phase',
      fields: {
        connector: fromMemory('type 1'),
        current: fromMemory('32 A'),
        phases: fromMemory('1'),
        mass: fromMemory('1.5 ± 0.5 kg'),
      },
      price: { low: 60, high: 300, currency: 'EUR', when: 'new, 2020s' },
      remark: REMARK,
    },
    {
      id: 'charge-inlet-type2-16a-1ph@1',
      class: 'charge-inlet',
      label: 'charge inlet type 2, 16 A, single phase',
      fields: {
        connector: fromMemory('type 2'),
        current: fromMemory('16 A'),
        phases: fromMemory('1'),
        mass: fromMemory('1.5 ± 0.5 kg'),
      },
      price: { low: 60, high: 300, currency: 'EUR', when: 'new, 2020s' },
      remark: REMARK,
    },
    {
      id: 'charge-inlet-type2-32a-1ph@1',
      class: 'charge-inlet',
      label: 'charge inlet type 2, 32 A, single phase',
      fields: {
        connector: fromMemory('type 2'),
        current: fromMemory('32 A'),
        phases: fromMemory('1'),
        mass: fromMemory('1.5 ± 0.5 kg'),
      },
      price: { low: 60, high: 300, currency: 'EUR', when: 'new, 2020s' },
      remark: REMARK,
    },
    {
      id: 'charge-inlet-type2-16a-3ph@1',
      class: 'charge-inlet',
      label: 'charge inlet type 2, 16 A, three phases',
      fields: {
        connector: fromMemory('type 2'),
        current: fromMemory('16 A'),
        phases: fromMemory('3'),
        mass: fromMemory('1.5 ± 0.5 kg'),
      },
      price: { low: 60, high: 300, currency: 'EUR', when: 'new, 2020s' },
      remark: REMARK,
    },
    {
      id: 'charge-inlet-type2-32a-3ph@1',
      class: 'charge-inlet',
      label: 'charge inlet type 2, 32 A, three phases',
      fields: {
        connector: fromMemory('type 2'),
        current: fromMemory('32 A'),
        phases: fromMemory('3'),
        mass: fromMemory('1.5 ± 0.5 kg'),
      },
      price: { low: 60, high: 300, currency: 'EUR', when: 'new, 2020s' },
      remark: REMARK,
    },
  ],
}
