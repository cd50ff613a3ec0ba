import { wheelsInertia } from '../../vehicle/road-load.ts'
import { equivalentMass, massFactor } from '../../vehicle/rotating-inertia.ts'
import { type Figure, standard, type Value } from '../../working/value.ts'
import { type Envelope, envelopes } from '../drive/envelopes.ts'
import { from, type Gaps, study } from '../study.ts'
import { ledger } from './ledger.ts'
import { rolling } from './rolling.ts'

const ONE = standard('wheel-turn', 'A wheel turns with itself', 'i', 1, '1', { work: 'definition', place: 'turns of the wheels' })

/** What turns, as mass: wheels, and each motor through its ratio. */
export const turningParts = study({
  id: 'turning',
  stage: 'donor',
  asks: 'How much heavier do the turning parts make it?',
  reads: (m, ask) => ({
    wheel: m.donor.wheelInertia,
    radius: from(ask(rolling), r => r.radius),
    kerb: from(ask(ledger), l => ({ mass: l.kerb })),
    units: Object.keys(m.drive.units).map(name =>
      from(ask(envelopes), e => {
        const u = e.units[name] as Envelope | Gaps
        return 'gaps' in u ? u : { inertia: u.inertia, ratio: u.ratio }
      }),
    ),
  }),
  answer: (k, make): { mass: Figure; factor: Figure } => {
    const wheels = make.work('wheels', wheelsInertia, { one: k.wheel }),
      motors = k.units as readonly { inertia: Value; ratio: Value }[]
    const mass = make.work('mass', equivalentMass, {
      inertias: [wheels, ...motors.map(u => u.inertia)],
      ratios: [ONE, ...motors.map(u => u.ratio)],
      radius: k.radius,
    })
    return { mass, factor: make.work('factor', massFactor, { mass: k.kerb.mass, equivalent: mass }, { label: 'Mass factor at kerb' }) }
  },
})
