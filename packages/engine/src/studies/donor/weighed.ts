import { twoTogether } from '../../vehicle/mass-and-axles.ts'
import type { Value } from '../../working/value.ts'
import { either, study } from '../study.ts'

/** Axle masses of the donor car from four scales or from an axle weighbridge. */
export const weighed = study({
  id: 'weighed',
  stage: 'donor',
  asks: 'What does the donor car weigh on each axle?',
  reads: ({ donor: { weighing: w } }) => ({
    front: either(w.front, { left: w.frontLeft, right: w.frontRight }),
    rear: either(w.rear, { left: w.rearLeft, right: w.rearRight }),
  }),
  answer: ({ front, rear }, make): { front: Value; rear: Value; total: Value } => {
    const axle = (name: 'front' | 'rear', x: typeof front): Value =>
      'left' in x ? make.work(name, twoTogether, { one: x.left, other: x.right }, { label: `Donor, ${name} axle` }) : x
    const f = axle('front', front),
      r = axle('rear', rear)
    return { front: f, rear: r, total: make.work('total', twoTogether, { one: f, other: r }, { label: 'Donor as weighed' }) }
  },
})
