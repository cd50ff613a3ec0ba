import { type Cycle, lazily, measuredEverySecond } from './cycle.ts'
import { EXTRA_HIGH_3, HIGH_3A, LOW_3, MEDIUM_3A } from './wltc-class-3-tables.ts'

/** Worldwide cycle for cars of class 3 that do not reach 120 km/h. */
export const wltc3a: () => Cycle = lazily(() => ({
  id: 'wltc-3a',
  label: 'WLTC class 3a',
  source: {
    work: 'UN GTR No. 15',
    place: 'Annex 1, tables Low3, Medium3a, High3a, Extra High3; the same in UN Regulation No. 154 Annex B1',
  },
  confidence: {
    level: 'very high',
    because: 'the speed sum of the whole is that of the regulation; its medium and high phases come from one copy',
  },
  phases: [
    { name: 'low', from: 0, to: 589 },
    { name: 'medium', from: 590, to: 1022 },
    { name: 'high', from: 1023, to: 1477 },
    { name: 'extra-high', from: 1478, to: 1800 },
  ],
  published: { duration: 1800, distance: 23194, max: 131.3 / 3.6 },
  ...measuredEverySecond([LOW_3, MEDIUM_3A, HIGH_3A, EXTRA_HIGH_3], '0.1 km/h'),
}))
