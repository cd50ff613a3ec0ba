import { fromMemory, type PartClass } from '../part.ts'

const REMARK = 'Mass and price follow current within the class range (common practice).'

/** Plug or switch that splits the pack for work, with interlock contact. */
export const serviceDisconnect: PartClass = {
  class: 'service-disconnect',
  label: 'service disconnect',
  ranges: {
    current: [200, 630, 'A'],
    mass: [0.5, 1, 'kg'],
  },
  prices: [30, 200],
  parts: [
    {
      id: 'service-disconnect-200a@1',
      class: 'service-disconnect',
      label: 'service disconnect, 200 A',
      fields: {
        current: fromMemory('200 A'),
        interlock: fromMemory('yes'),
        mass: fromMemory('0.625 ± 0.125 kg'),
      },
      price: { low: 30, high: 120, currency: 'EUR', when: 'new, 2020s' },
      remark: REMARK,
    },
    {
      id: 'service-disconnect-315a@1',
      class: 'service-disconnect',
      label: 'service disconnect, 315 A',
      fields: {
        current: fromMemory('315 A'),
        interlock: fromMemory('yes'),
        mass: fromMemory('0.7 ± 0.2 kg'),
      },
      price: { low: 30, high: 160, currency: 'EUR', when: 'new, 2020s' },
      remark: REMARK,
    },
    {
      id: 'service-disconnect-400a@1',
      class: 'service-disconnect',
      label: 'service disconnect, 400 A',
      fields: {
        current: fromMemory('400 A'),
        interlock: fromMemory('yes'),
        mass: fromMemory('0.75 ± 0.25 kg'),
      },
      price: { low: 30, high: 190, currency: 'EUR', when: 'new, 2020s' },
      remark: REMARK,
    },
    {
      id: 'service-disconnect-630a@1',
      class: 'service-disconnect',
      label: 'service disconnect, 630 A',
      fields: {
        current: fromMemory('630 A'),
        interlock: fromMemory('yes'),
        mass: fromMemory('0.875 ± 0.125 kg'),
      },
      price: { low: 120, high: 200, currency: 'EUR', when: 'new, 2020s' },
      remark: REMARK,
    },
  ],
}
