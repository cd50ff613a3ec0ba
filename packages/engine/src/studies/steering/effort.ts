import { bothWheels, effortAfter, rollingEffort, tyreLoadHalf } from '../../steering/effort.ts'
import { parkingEffortChange } from '../../steering/heavier-front.ts'
import { parkingMoment } from '../../steering/parking-moment.ts'
import { handwheelTorque, rackForce } from '../../steering/rack-force.ts'
import { GRAVITY } from '../../vehicle/gravity.ts'
import { type Figure, isGap, type Value } from '../../working/value.ts'
import { ledger } from '../donor/ledger.ts'
import { type Laden, loadCases } from '../donor/load-cases.ts'
import { weighed } from '../donor/weighed.ts'
import { from, type Gaps, isGaps, type Maker, maybe, study } from '../study.ts'

export type Effort = {
  /** Force on the rack and torque at the handwheel while parking, by the usual estimate. */
  readonly rack: Figure | Gaps
  readonly torque: Figure | Gaps
  /** Pull at the rim without assist: measured after, else measured before and scaled, else estimated. */
  readonly standing: Value | Gaps
  readonly rolling: Value | Gaps
  readonly change: Figure | Gaps
}

/** How hard the steering is to turn under the new front axle load once no assist helps. */
export const steeringEffort = study({
  id: 'steering-effort',
  stage: 'brakes & steering',
  asks: 'How hard is the steering to turn without assist, under the new front axle load?',
  reads: (m, ask) => {
    const s = m.steering,
      loads = ask(loadCases),
      given = (f: typeof s.arm) => (isGap(f) ? null : f)
    return {
      loads: maybe({
        kerb: ask(ledger),
        cases: Object.keys(m.brief.loads).map(name => from(loads, l => ({ laden: l.cases[name] as Laden | Gaps }))),
      }),
      before: maybe(ask(weighed)),
      tyre: maybe({ grip: m.donor.grip.dry, pressure: s.tyrePressure }),
      gear: maybe({ arm: s.arm, linkage: s.linkageEfficiency, travel: s.rackTravel, gear: s.gearEfficiency, radius: s.wheelRadius }),
      measured: {
        standingBefore: given(s.effort.standingBefore),
        standingAfter: given(s.effort.standingAfter),
        rollingAfter: given(s.effort.rollingAfter),
      },
      share: maybe(s.rollingShare),
      pressure: maybe(s.tyrePressure),
    }
  },
  answer: (k, make): Effort => {
    const load = isGaps(k.loads) ? k.loads : frontLoad(make, k.loads as unknown as Loaded),
      gear = k.gear as Gear | Gaps
    const estimate = isGaps(load)
      ? load
      : isGaps(k.tyre)
        ? k.tyre
        : isGaps(gear)
          ? gear
          : turned(make, load, k.tyre as { grip: Value; pressure: Value }, gear)
    const change = isGaps(load)
      ? load
      : isGaps(k.before)
        ? k.before
        : isGaps(k.pressure)
          ? k.pressure
          : changed(make, (k.before as { front: Value }).front, load, k.pressure as Value)
    const { standingBefore, standingAfter, rollingAfter } = k.measured as Record<string, Value | null>
    const standing: Value | Gaps =
      standingAfter ??
      (standingBefore && !isGaps(change)
        ? make.work('standing', effortAfter, { before: standingBefore, change }, { label: 'Pull at the rim at a standstill, no assist' })
        : isGaps(estimate)
          ? estimate
          : estimate.rim)
    const rolling: Value | Gaps =
      rollingAfter ??
      (isGaps(standing)
        ? standing
        : isGaps(k.share)
          ? k.share
          : make.work(
              'rolling',
              rollingEffort,
              { standing, share: k.share as Value },
              { label: 'Pull at the rim rolling at 10 km/h, no assist' },
            ))
    return {
      rack: isGaps(estimate) ? estimate : estimate.rack,
      torque: isGaps(estimate) ? estimate : estimate.torque,
      standing,
      rolling,
      change,
    }
  },
})
type Loaded = { readonly kerb: { readonly front: Value }; readonly cases: readonly { readonly laden: Laden }[] }
type Gear = { readonly arm: Value; readonly linkage: Value; readonly travel: Value; readonly gear: Value; readonly radius: Value }

/** The heaviest front axle of all loads. */
function frontLoad(make: Maker, { kerb, cases }: Loaded): Figure {
  const axle = [kerb.front, ...cases.map(c => c.laden.front)].reduce((a, b) => (b.value > a.value ? b : a))
  return make.work('tyre-load', tyreLoadHalf, { axle, gravity: GRAVITY }, { label: 'Load on a front tyre, heaviest load' })
}
function changed(make: Maker, axle: Value, load: Figure, pressure: Value): Figure {
  const before = make.work('tyre-load-before', tyreLoadHalf, { axle, gravity: GRAVITY }, { label: 'Load on a front tyre of the donor' })
  return make.work(
    'change',
    parkingEffortChange,
    { loadBefore: before, load, pressureBefore: pressure, pressure },
    { label: 'Parking effort now over that before' },
  )
}
function turned(make: Maker, load: Figure, tyre: { grip: Value; pressure: Value }, g: Gear): { rack: Figure; torque: Figure; rim: Figure } {
  const one = make.work('moment', parkingMoment, { ...tyre, load }, { label: 'Parking moment of a front tyre' }),
    moments = make.work('moments', bothWheels, { one }, { label: 'Parking moment of both' })
  const rack = make.work('rack', rackForce, { moments, arm: g.arm, efficiency: g.linkage }, { label: 'Force on the rack while parking' })
  const { figures } = make.all(
    'handwheel',
    handwheelTorque,
    { force: rack, travel: g.travel, efficiency: g.gear, radius: g.radius },
    {
      labels: { torque: 'Torque at the handwheel while parking, no assist', rim: 'Pull at the rim while parking, estimated' },
    },
  )
  return { rack, torque: figures.torque, rim: figures.rim }
}
