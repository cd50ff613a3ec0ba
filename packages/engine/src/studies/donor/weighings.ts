import { axleShare, massRatio } from '../../vehicle/against-donor.ts'
import { massesApart, twoTogether } from '../../vehicle/mass-and-axles.ts'
import { type Field, type Figure, isGap, type Value } from '../../working/value.ts'
import { againstDonor } from '../brief/against-donor.ts'
import { from, type Gaps, isGaps, maybe, study } from '../study.ts'
import { stance } from './stance.ts'
import { weighed } from './weighed.ts'

export type Weighings = {
  /** By axle: how far its two wheels together are from the axle as a whole, where somebody weighed both ways. */
  readonly apart: Readonly<Record<string, Figure>>
  readonly left: Figure | Gaps
  readonly front: Figure | Gaps
  /** Weighed, in running order, over what the papers say; none where they are not asked. */
  readonly papers: Figure | Gaps | null
}

const bothWays = (axle: Field, left: Field, right: Field) =>
  isGap(axle) || isGap(left) || isGap(right) ? null : { axle: axle as Value, left: left as Value, right: right as Value }

/** Weighings held against each other: one slip there moves every figure behind it. */
export const weighings = study({
  id: 'weighings',
  stage: 'donor',
  asks: 'Do the weighings of the donor car agree with each other?',
  reads: ({ donor: { weighing: w, registeredMass } }, ask) => ({
    axles: { front: bothWays(w.front, w.frontLeft, w.frontRight), rear: bothWays(w.rear, w.rearLeft, w.rearRight) },
    left: maybe(from(ask(stance), s => s.left)),
    weighed: maybe(ask(weighed)),
    papers: isGap(registeredMass)
      ? null
      : maybe({
          registered: registeredMass,
          weighed: from(ask(againstDonor), a => (isGaps(a.runningOrder) ? a.runningOrder : { mass: a.runningOrder.before })),
        }),
  }),
  answer: ({ axles, left, weighed: w, papers }, make): Weighings => ({
    apart: Object.fromEntries(
      Object.entries(axles).flatMap(([name, a]) => {
        if (!a) return []
        const wheels = make.work(
          'wheels',
          twoTogether,
          { one: a.left, other: a.right },
          { item: name, label: `Wheels of the ${name} axle` },
        )
        const label = `Wheels against the ${name} axle as a whole`
        return [[`${name} axle`, make.work('apart', massesApart, { one: a.axle, other: wheels }, { item: name, label })]]
      }),
    ),
    left,
    front: isGaps(w)
      ? w
      : make.work('front-share', axleShare, { axle: w.front, other: w.rear }, { label: 'Donor, share on the front axle' }),
    papers:
      papers === null || isGaps(papers)
        ? papers
        : make.work(
            'papers',
            massRatio,
            { now: papers.weighed.mass, before: papers.registered },
            { label: 'Weighed, in running order, over the papers' },
          ),
  }),
})
