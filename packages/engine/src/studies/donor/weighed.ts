import { study } from '../study.ts'
import { type Axles, axlesOf, axlesTogether } from './on-scales.ts'

/** Axle masses of the donor car from four scales or from an axle weighbridge. */
export const weighed = study({
  id: 'weighed',
  stage: 'donor',
  asks: 'What does the donor car weigh on each axle?',
  reads: ({ donor: { weighing } }) => axlesOf(weighing),
  answer: (axles, make): Axles => axlesTogether(make, axles, 'Donor'),
})

/** The same of the car with all out that comes out and nothing in yet; none where it was not on the scales then. */
export const stripped = study({
  id: 'stripped',
  stage: 'fit',
  asks: 'What does the stripped car weigh on each axle?',
  reads: m => ({ scales: m.fit.stripped.given ? axlesOf(m.fit.stripped) : null }),
  answer: ({ scales }, make): { readonly axles: Axles | null } => ({
    axles: scales && axlesTogether(make, scales, 'Stripped car'),
  }),
})
