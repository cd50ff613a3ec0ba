import { centreInAnyOrder } from '../../vehicle/corner-masses.ts'
import { padsOfLift } from '../../vehicle/lifting.ts'
import type { Figure, Value } from '../../working/value.ts'
import { reckonedFrom } from '../donor/ledger.ts'
import { type Gaps, isGaps, maybe, study } from '../study.ts'
import { listed } from './sides.ts'

type Pads = { readonly [K in keyof (typeof padsOfLift)['card']['gives']]: Figure }
export type OnLift = { readonly foremost: Pads; readonly rearmost: Pads; readonly finished: Pads }

/** What the pads of a two-post lift carry when the work is in its worst order. */
export const lift = study({
  id: 'lift',
  stage: 'fit',
  asks: 'Does the car stay on a two-post lift while parts come out and go in?',
  reads: (m, ask) => ({
    pads: m.fit.lift.given ? maybe({ front: m.fit.lift.frontPads, rear: m.fit.lift.rearPads }) : null,
    weighed: reckonedFrom(m, ask),
    listed: listed(m, ask),
    wheelbase: m.donor.wheelbase,
  }),
  answer: ({ pads, weighed: w, listed: l, wheelbase }, make): { readonly on: OnLift | Gaps } => {
    const { added, removed, kerb, x } = l.ledger
    const { figures: c } = make.all('centre', centreInAnyOrder, {
      front: w.front,
      rear: w.rear,
      wheelbase,
      added,
      addedX: l.added.map(p => p.x as Value),
      removed,
      removedX: l.removed.map(p => p.x as Value),
    })
    if (pads === null) return { on: { gaps: [] } }
    if (isGaps(pads)) return { on: pads }
    const carried = (item: string, mass: Value, centre: Value): Pads =>
      make.all(
        'pads',
        padsOfLift,
        { mass, centre, front: pads.front, rear: pads.rear },
        {
          item,
          labels: {
            share: `Share of the front pads, ${item}`,
            frontArm: `On each front arm, ${item}`,
            rearArm: `On each rear arm, ${item}`,
          },
        },
      ).figures
    return {
      on: {
        foremost: carried('weight furthest forward', c.foremostMass, c.foremost),
        rearmost: carried('weight furthest to the rear', c.rearmostMass, c.rearmost),
        finished: carried('finished', kerb, x),
      },
    }
  },
})
