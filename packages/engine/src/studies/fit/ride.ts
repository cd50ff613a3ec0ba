import { massGained, sprungOnWheel } from '../../vehicle/corner-masses.ts'
import { standsLower } from '../../vehicle/stands-lower.ts'
import { axleSinks, bodySinks, rideFrequency, springForMass } from '../../vehicle/ride.ts'
import { type Field, type Figure, isGap, standard, type Value } from '../../working/value.ts'
import { ledger } from '../donor/ledger.ts'
import { weighed } from '../donor/weighed.ts'
import { type Gaps, isGaps, type Maker, maybe, study } from '../study.ts'

export type AxleRide = { readonly sinks: Figure; readonly before: Figure; readonly now: Figure; readonly spring: Figure }
export type Ride = { readonly front: AxleRide | Gaps; readonly rear: AxleRide | Gaps; readonly lamps: Figure | Gaps }
type Axle = 'front' | 'rear'
const NOT_RAISED = standard('springs-not-raised', 'springs that go in do not raise the car', 'Δh', 0, 'm', {
  work: 'definition',
  place: 'same free length',
})
const fitted = (rate: Field, raised: Field) => (isGap(rate) ? null : { rate, raised: isGap(raised) ? NOT_RAISED : raised })

/** How far the car sinks on the springs it has, how its lamps tip, how it rides, and which springs put that right. */
export const ride = study({
  id: 'ride',
  stage: 'fit',
  asks: 'How does the finished car stand and ride on its springs?',
  reads: (m, ask) => {
    const { springs: s, given } = { springs: m.fit.springs, given: m.fit.springs.given }
    return {
      finished: ask(ledger),
      donor: ask(weighed),
      front: given ? maybe({ rate: s.front, fitted: fitted(s.frontNew, s.frontRaised), tyre: s.tyre, unsprung: s.frontUnsprung }) : null,
      rear: given ? maybe({ rate: s.rear, fitted: fitted(s.rearNew, s.rearRaised), tyre: s.tyre, unsprung: s.rearUnsprung }) : null,
      wheelbase: m.donor.wheelbase,
    }
  },
  answer: ({ finished, donor, front, rear, wheelbase }, make): Ride => {
    const axle = (name: Axle, s: typeof front): AxleRide | Gaps =>
      s === null ? { gaps: [] } : isGaps(s) ? s : rides(make, name, { now: finished[name], before: donor[name], ...s })
    const f = axle('front', front),
      r = axle('rear', rear)
    if (isGaps(f) || isGaps(r)) return { front: f, rear: r, lamps: isGaps(f) ? f : (r as Gaps) }
    const { figures } = make.all(
      'body',
      bodySinks,
      { front: f.sinks, rear: r.sinks, x: finished.x, wheelbase },
      {
        labels: { at: 'The body sinks at its centre of mass', lamps: 'Lamps aim higher by' },
      },
    )
    return { front: f, rear: r, lamps: figures.lamps }
  },
})

type Springs = {
  readonly fitted: { readonly rate: Value; readonly raised: Value } | null
  readonly now: Value
  readonly before: Value
  readonly rate: Value
  readonly tyre: Value
  readonly unsprung: Value
}
function rides(make: Maker, axle: Axle, { now, before, rate, fitted: f, tyre, unsprung }: Springs): AxleRide | Gaps {
  const more = make.work('more', massGained, { now, before }, { item: axle, label: `More on the ${axle} axle than before` })
  const sprung = (key: string, mass: Value, when: string): Figure =>
    make.work(key, sprungOnWheel, { axle: mass, unsprung }, { item: axle, label: `Sprung mass on a ${axle} wheel, ${when}` })
  const massBefore = sprung('sprung-before', before, 'donor'),
    mass = sprung('sprung', now, 'finished')
  // An axle that carries less than its own wheels has no ride: a slip of the hand elsewhere, which rules on masses tell.
  if (!(massBefore.value > 0 && mass.value > 0)) return { gaps: [] }
  return {
    sinks: f
      ? make.work(
          'sinks',
          standsLower,
          { before: massBefore, now: mass, more, springBefore: rate, spring: f.rate, tyre, raised: f.raised },
          { item: axle, label: `The ${axle} axle sinks by` },
        )
      : make.work('sinks', axleSinks, { mass: more, wheel: rate, tyre }, { item: axle, label: `The ${axle} axle sinks by` }),
    before: make.work(
      'frequency-before',
      rideFrequency,
      { wheel: rate, mass: massBefore },
      { item: axle, label: `Ride frequency, ${axle}, donor` },
    ),
    now: make.work(
      'frequency',
      rideFrequency,
      { wheel: f ? f.rate : rate, mass },
      { item: axle, label: `Ride frequency, ${axle}, finished` },
    ),
    spring: make.work(
      'spring',
      springForMass,
      { before: rate, massBefore, mass },
      { item: axle, label: `Spring rate that rides as before, ${axle}` },
    ),
  }
}
