import { type Cycle, lazily, measuredEverySecond } from './cycle.ts'
import { EXTRA_HIGH_3, HIGH_3B, LOW_3, MEDIUM_3B } from './wltc-class-3-tables.ts'

/** Worldwide cycle for cars of class 3 that reach 120 km/h. */
export const wltc3b: () => Cycle = lazily(() => ({
  id: 'wltc-3b',
  label: 'WLTC class 3b',
  source: {
    work: 'UN GTR No. 15',
    place: 'Annex 1, tables Low3, Medium3b, High3b, Extra High3; the same in UN Regulation No. 154 Annex B1',
  },
  confidence: {
    level: 'very high',
    because: 'the speed sums of all four phases and of the whole are those of the regulation; two copies compared',
  },
  phases: [
    { name: 'low', from: 0, to: 589 },
    { name: 'medium', from: 590, to: 1022 },
    { name: 'high', from: 1023, to: 1477 },
    { name: 'extra-high', from: 1478, to: 1800 },
  ],
  published: { duration: 1800, distance: 23266, max: 131.3 / 3.6 },
  ...measuredEverySecond([LOW_3, MEDIUM_3B, HIGH_3B, EXTRA_HIGH_3], '0.1 km/h'),
}))
