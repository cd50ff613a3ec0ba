import { centreHeightByLedger } from '../../vehicle/centre-of-mass.ts'
import { sideShare, twoTogether } from '../../vehicle/mass-and-axles.ts'
import { starBelow, staticStabilityFactor, tiltAngle } from '../../vehicle/roll-over.ts'
import { type Figure, isGap, type Value } from '../../working/value.ts'
import { type Gaps, isGaps, type Maker, maybe, study } from '../study.ts'
import { addedPlaces, gone, leaving, ledger, removedPlaces } from './ledger.ts'
import { weighed } from './weighed.ts'

export type Tipping = {
  readonly before: Figure
  readonly now: Figure
  /** Lower edge of the band the donor car stood in; the donor car itself where it stood in none. */
  readonly band: Value
}
export type Stance = {
  /** Height of the centre of mass before and after the changes. */
  readonly height: { readonly before: Value; readonly now: Figure } | Gaps
  /** Static stability factor before and after. */
  readonly stability: Tipping | Gaps
  /** Share of the donor car on its left wheels, where all four were weighed. */
  readonly left: Figure | Gaps
}

/** How high the centre of mass lies after the changes, how easily the car tips, and whether it stood level left and right. */
export const stance = study({
  id: 'stance',
  stage: 'donor',
  asks: 'How high is the centre of mass, and how easily does it tip?',
  reads: (m, ask) => {
    const { donor } = m,
      { frontLeft, frontRight, rearLeft, rearRight } = donor.weighing,
      wheels = [frontLeft, frontRight, rearLeft, rearRight]
    return {
      height: maybe({
        donor: ask(weighed),
        finished: ask(ledger),
        before: donor.centreHeight,
        added: addedPlaces(m, ask).map(p => p.z),
        leaves: leaving(m),
        removed: removedPlaces(m).map(p => p.z),
      }),
      tracks: maybe({ front: donor.trackFront, rear: donor.trackRear }),
      // Scales under single wheels are one way to weigh; a car weighed by axles has no left and right, and needs none.
      wheels: wheels.every(isGap) ? null : maybe({ frontLeft, frontRight, rearLeft, rearRight }),
    }
  },
  answer: ({ height: h, tracks, wheels }, make): Stance => {
    const height = isGaps(h)
      ? h
      : {
          before: h.before,
          now: make.work(
            'height',
            centreHeightByLedger,
            {
              before: h.donor.total,
              height: h.before,
              added: h.finished.added,
              addedZ: h.added,
              removed: gone(make, h.leaves).map(o => o.mass),
              removedZ: h.removed,
              total: h.finished.kerb,
            },
            { label: 'Height of the centre of mass at kerb' },
          ),
        }
    const stability = isGaps(height) ? height : isGaps(tracks) ? tracks : tipping(make, tracks, height)
    if (!isGaps(stability)) make.work('tilt', tiltAngle, { factor: stability.now })
    return { height, stability, left: wheels === null ? { gaps: [] } : isGaps(wheels) ? wheels : leftSide(make, wheels) }
  },
})

function tipping(make: Maker, tracks: { front: Value; rear: Value }, height: { before: Value; now: Value }): Tipping {
  const before = make.work(
    'stability-before',
    staticStabilityFactor,
    { ...tracks, height: height.before },
    { label: 'Static stability factor, donor car' },
  )
  return {
    before,
    now: make.work('stability', staticStabilityFactor, { ...tracks, height: height.now }),
    band: starBelow(before.value) ?? before,
  }
}

function leftSide(make: Maker, w: { frontLeft: Value; frontRight: Value; rearLeft: Value; rearRight: Value }): Figure {
  const side = (key: string, one: Value, other: Value): Figure =>
    make.work(key, twoTogether, { one, other }, { label: `Donor, ${key} wheels` })
  return make.work(
    'left-share',
    sideShare,
    { one: side('left', w.frontLeft, w.rearLeft), other: side('right', w.frontRight, w.rearRight) },
    { label: 'Donor, share on the left wheels' },
  )
}
