import type { Scales } from '../../model/donor.ts'
import type { Model } from '../../model/model.ts'
import { centreShiftsSideways, rightFrontWheel, rightRearWheel, shareFromEven } from '../../vehicle/corner-masses.ts'
import { otherAxle, sideShare, twoTogether } from '../../vehicle/mass-and-axles.ts'
import { wheelAsWeighed } from '../../vehicle/since-weighed.ts'
import { type Figure, isGap, type Value } from '../../working/value.ts'
import { addedPlaces, fromScales, ledger, removedPlaces } from '../donor/ledger.ts'
import { type Ask, type Gaps, isGaps, type Maker, maybe, study } from '../study.ts'

export type Wheels = { readonly frontLeft: Figure; readonly frontRight: Figure; readonly rearLeft: Figure; readonly rearRight: Figure }
export type Sides = {
  readonly shift: Figure | Gaps
  readonly wheels: Wheels | Gaps
  /** Share of the finished car on its left wheels, and how far it is from even. */
  readonly left: { readonly share: Figure; readonly off: Figure } | Gaps
}

/** Masses of the ledger with their places, in its order: what came out only where the car was not weighed again without it. */
export const listed = (m: Model, ask: Ask) => ({
  ledger: ask(ledger),
  added: addedPlaces(m, ask).map(({ x, y }) => ({ x, y })),
  removed: m.fit.stripped.given ? [] : removedPlaces(m).map(({ x, y }) => ({ x, y })),
})

/** What each wheel carries at kerb, and whether the car stands even. */
export const sides = study({
  id: 'side',
  stage: 'fit',
  asks: 'What does each wheel carry, and does the car stand even?',
  reads: (m, ask) => {
    const w = m.fit.stripped.given ? m.fit.stripped : m.donor.weighing,
      wheels = wheelsOf(w),
      done = wheelsOf(m.fit.weighed)
    return {
      listed: maybe(listed(m, ask)),
      // Each wheel of the finished car by what the scales said of it, where the car is reckoned from these.
      done:
        fromScales(m) && !done.some(isGap)
          ? maybe({
              front: { left: m.fit.weighed.frontLeft, right: m.fit.weighed.frontRight },
              rear: { left: m.fit.weighed.rearLeft, right: m.fit.weighed.rearRight },
            })
          : null,
      // A car weighed by axles has no left and right; what the changes do is told all the same.
      wheels: wheels.every(isGap)
        ? null
        : maybe({
            front: w.frontRight,
            rear: w.rearRight,
            wheelbase: m.donor.wheelbase,
            trackFront: m.donor.trackFront,
            trackRear: m.donor.trackRear,
          }),
    }
  },
  answer: (known, make): Sides => {
    const l = known.listed
    if (isGaps(l)) return { shift: l, wheels: l, left: l }
    const { kerb, front, rear, added, removed } = l.ledger,
      addedY = l.added.map(p => p.y as Value),
      removedY = l.removed.map(p => p.y as Value)
    const shift = make.work('shift', centreShiftsSideways, { added, addedY, removed, removedY, total: kerb })
    if (known.done && !isGaps(known.done)) {
      const wheels = asWeighed(make, known.done, { front, rear })
      return { shift, wheels, left: leftOf(make, wheels) }
    }
    if (known.wheels === null) return { shift, wheels: { gaps: [] }, left: { gaps: [] } }
    if (isGaps(known.wheels)) return { shift, wheels: known.wheels, left: known.wheels }
    const w = known.wheels,
      changes = { added, addedX: l.added.map(p => p.x as Value), addedY, removed, removedX: l.removed.map(p => p.x as Value), removedY }
    const common = { ...changes, wheelbase: w.wheelbase }
    const frontRight = make.work(
      'front-right',
      rightFrontWheel,
      { before: w.front, ...common, track: w.trackFront },
      { label: 'Right front wheel at kerb' },
    )
    const rearRight = make.work(
      'rear-right',
      rightRearWheel,
      { before: w.rear, ...common, track: w.trackRear },
      { label: 'Right rear wheel at kerb' },
    )
    const wheels: Wheels = {
      frontRight,
      rearRight,
      frontLeft: make.work('front-left', otherAxle, { total: front, one: frontRight }, { label: 'Left front wheel at kerb' }),
      rearLeft: make.work('rear-left', otherAxle, { total: rear, one: rearRight }, { label: 'Left rear wheel at kerb' }),
    }
    return { shift, wheels, left: leftOf(make, wheels) }
  },
})

const wheelsOf = (w: Scales) => [w.frontLeft, w.frontRight, w.rearLeft, w.rearRight]

type Pair = { readonly left: Value; readonly right: Value }
/** Each wheel by its share of the axle it stands on. */
function asWeighed(
  make: Maker,
  scales: { readonly front: Pair; readonly rear: Pair },
  axles: { readonly front: Value; readonly rear: Value },
): Wheels {
  const one = (axle: 'front' | 'rear', side: 'left' | 'right'): Figure =>
    make.work(
      `${axle}-${side}`,
      wheelAsWeighed,
      { axle: axles[axle], one: scales[axle][side], other: scales[axle][side === 'left' ? 'right' : 'left'] },
      { label: `${side === 'left' ? 'Left' : 'Right'} ${axle} wheel at kerb` },
    )
  return {
    frontLeft: one('front', 'left'),
    frontRight: one('front', 'right'),
    rearLeft: one('rear', 'left'),
    rearRight: one('rear', 'right'),
  }
}

function leftOf(make: Maker, w: Wheels): { readonly share: Figure; readonly off: Figure } {
  const left = make.work('left', twoTogether, { one: w.frontLeft, other: w.rearLeft }, { label: 'Left wheels at kerb' }),
    right = make.work('right', twoTogether, { one: w.frontRight, other: w.rearRight }, { label: 'Right wheels at kerb' })
  const share = make.work('left-share', sideShare, { one: left, other: right }, { label: 'Share on the left wheels at kerb' })
  return { share, off: make.work('off-even', shareFromEven, { share }, { label: 'Off even, left to right' }) }
}
