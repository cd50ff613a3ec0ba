import type { Source } from '../../sources.ts'
import { type Angle, ground } from '../../studies/fit/ground.ts'
import { type OnLift, lift } from '../../studies/fit/lift.ts'
import { ride } from '../../studies/fit/ride.ts'
import { sides } from '../../studies/fit/sides.ts'
import { isGaps } from '../../studies/study.ts'
import { type Field, isGap, type Value } from '../../working/value.ts'
import { limitOf } from '../pack/answers.ts'
import { doesNotApply, type Judgement, rule } from '../rule.ts'
import { anyShape, FITTING, nameOfShape, NO_SHAPE, placeOf } from './shapes.ts'

const EVEN = limitOf('off-even', 'off even, left to right, that the trade lets stand', 0.03, '1', FITTING, 'share')
export const standsEven = rule({
  id: 'stands-even',
  title: 'The car stands as even as the trade lets it',
  stage: 'fit',
  harm: 'S1',
  hazards: [],
  source: FITTING,
  judgements: (_, ask) => {
    const about = ['donor.weighing', 'donor.added', 'donor.removed', 'pack.boxes'],
      found = ask(sides)
    if (isGaps(found)) return [{ about, says: 'Left and right cannot be told yet.', missing: found }]
    const { left } = found
    if (isGaps(left) && left.gaps.length === 0)
      return doesNotApply('the donor car was weighed by axles: weigh each wheel to know left from right', about)
    if (isGaps(left)) return [{ about, says: 'Left and right cannot be told yet.', missing: left }]
    return [
      {
        about,
        found: left.off,
        side: 'at most',
        limit: EVEN,
        says: '{share} of the finished car stands on its left wheels: {found} off even; the trade lets {limit} stand.',
        slots: { share: left.share },
        remedies: [{ do: 'act', says: 'Move a heavy part across the car, or one against another.' }],
      },
    ]
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'pack.boxes.tank.y', now: '-700 mm' }] },
})

const PADS: Source = { work: 'practice', place: 'each pair of pads of a lift carries a quarter at least', mark: 'common practice' }
const QUARTER = limitOf('pads-share', 'least share of one pair of pads', 0.25, '1', PADS, 'share')
const MOST = limitOf('pads-share-most', 'greatest share of the front pads', 0.75, '1', PADS, 'share')
export const staysOnTheLift = rule({
  id: 'stays-on-the-lift',
  title: 'The car stays on the lift in whatever order the work is done',
  stage: 'fit',
  harm: 'S3',
  hazards: [],
  source: PADS,
  caution:
    'A car with its engine out tips off a two-post lift. Set the arms anew when the weight moves; stands under both ends before the first heavy bolt.',
  judgements: (m, ask) => {
    const about = ['fit.lift', 'donor.removed', 'donor.added', 'pack.boxes']
    if (!m.fit.lift.given) return doesNotApply('no two-post lift is used', ['fit.lift'])
    const found = ask(lift)
    if (isGaps(found)) return [{ about, says: 'What the pads carry cannot be told yet.', missing: found }]
    if (isGaps(found.on)) return [{ about, says: 'What the pads carry cannot be told yet.', missing: found.on }]
    const on = found.on as OnLift,
      { armRating } = m.fit.lift
    const again = [
      {
        do: 'act' as const,
        says: 'Set the arms anew for that step, or work in another order: what comes out of one end before what goes into the other.',
      },
    ]
    return [
      {
        item: 'weight to the rear',
        about,
        found: on.rearmost.share,
        side: 'at least',
        limit: QUARTER,
        says: 'In the worst order the front pads carry {found} of the car; keep {limit} on each pair.',
        remedies: again,
      },
      {
        item: 'weight to the front',
        about,
        found: on.foremost.share,
        side: 'at most',
        limit: MOST,
        says: 'In the worst order the front pads carry {found} of the car; keep it to {limit}, so that the rear ones carry their quarter.',
        remedies: again,
      },
      ...(isGap(armRating)
        ? [
            {
              item: 'arms',
              about: ['fit.lift.arm-rating'],
              says: 'What one arm may carry is not known.',
              missing: armRating,
            } satisfies Judgement,
          ]
        : (['foremost', 'rearmost'] as const).map((way): Judgement => {
            const arm = way === 'foremost' ? on.foremost.frontArm : on.rearmost.rearArm
            return {
              item: way === 'foremost' ? 'front arms' : 'rear arms',
              about: ['fit.lift.arm-rating'],
              found: arm,
              side: 'at most',
              limit: armRating,
              says: 'In the worst order one of these arms carries {found}; it is rated for {limit}.',
              remedies: again,
            }
          })),
    ]
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'fit.lift.rear-pads', now: '1350 mm' }], item: 'weight to the rear' },
})

const LAMPS: Source = { work: 'practice', place: 'lamps are aimed anew when the beam has moved by half a percent', mark: 'common practice' }
const AIM = limitOf('lamps-rise', 'rise of the beam that is let stand', 0.005, '1', LAMPS, 'slope')
export const standsAsBefore = rule({
  id: 'stands-as-before',
  title: 'Ride height and lamp aim stay near those of the donor car',
  stage: 'fit',
  harm: 'S2',
  hazards: ['J5'],
  source: LAMPS,
  judgements: (m, ask) => {
    const about = ['fit.springs', 'pack.boxes', 'donor.added', 'donor.removed']
    if (!m.fit.springs.given) return doesNotApply('the springs are not measured', ['fit.springs'])
    const found = ask(ride)
    if (isGaps(found)) return [{ about, says: 'How the car stands on its springs cannot be told yet.', missing: found }]
    const { front, rear, lamps } = found
    if (isGaps(lamps) || isGaps(front) || isGaps(rear))
      return [
        {
          about,
          says: 'How the car stands on its springs cannot be told yet.',
          missing: { gaps: [lamps, front, rear].flatMap(x => (isGaps(x) ? x.gaps : [])) },
        },
      ]
    return [
      {
        about,
        found: lamps,
        side: 'at most',
        limit: AIM,
        says: 'The front sinks by {front} and the rear by {rear}: the lamps aim {found} higher, {limit} is let stand. Rates that ride as before: {springFront} in front, {springRear} behind.',
        slots: { front: front.sinks, rear: rear.sinks, springFront: front.spring, springRear: rear.spring },
        remedies: [
          {
            do: 'set',
            says: 'Springs that ride as before; then wheel alignment and lamps, once all the mass is in.',
            sets: [
              { path: 'fit.springs.front-new', to: { value: front.spring.value, kind: 'stiffness' } },
              { path: 'fit.springs.rear-new', to: { value: rear.spring.value, kind: 'stiffness' } },
            ],
          },
        ],
      },
    ]
  },
  spoil: { sample: 'lapwing', edits: [] },
})

const UNDER = limitOf('lowest-battery', 'least height of a battery, car standing', 0.15, 'm', FITTING, 'length')
export const aboveTheGround = rule({
  id: 'above-the-ground',
  title: 'Nothing new hangs lower than it may',
  stage: 'fit',
  harm: 'S3',
  hazards: ['A14'],
  source: FITTING,
  caution: 'A box that strikes the ground is pushed into its cells.',
  judgements: (m, ask) => {
    if (!anyShape(m)) return NO_SHAPE()
    const found = ask(ground)
    if (isGaps(found)) return [{ about: ['fit.bodies'], says: 'What hangs lowest cannot be told yet.', missing: found }]
    const { lowest } = found
    if (!lowest) return []
    const { clearance } = m.fit.ground
    return [
      {
        item: 'lowest',
        about: ['fit.ground.clearance', ...placeOf(m, lowest.name)],
        found: lowest.ends.bottom,
        side: 'at least',
        limit: isGap(clearance) ? UNDER : clearance,
        says: 'What hangs lowest of all that goes in is {shape}, {found} above the ground; {limit} is wanted.',
        slots: { shape: nameOfShape(lowest.name) },
        remedies: [{ do: 'act', says: 'Put it higher, make it flatter, or guard it with a skid plate that the structure carries.' }],
      },
    ]
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'pack.boxes.tank.z', now: '230 mm' }], item: 'lowest' },
})

export const clearsRamps = rule({
  id: 'clears-ramps-and-crests',
  title: 'What goes in clears the ramps and crests wanted',
  stage: 'fit',
  harm: 'S1',
  hazards: [],
  source: FITTING,
  judgements: (m, ask) => {
    const wanted = (['approach', 'departure', 'ramp'] as const).flatMap(angle => {
      const f: Field = m.fit.ground[angle]
      return isGap(f) ? [] : [{ angle, wanted: f as Value }]
    })
    if (wanted.length === 0) return doesNotApply('no angle is wanted', ['fit.ground'])
    if (!anyShape(m)) return NO_SHAPE()
    const found = ask(ground)
    if (isGaps(found)) return [{ about: ['fit.ground'], says: 'The angles cannot be told yet.', missing: found }]
    return wanted.map(({ angle, wanted: limit }): Judgement => {
      const at = found[angle] as Angle | undefined | { gaps: readonly [] },
        about = [`fit.ground.${angle}`]
      if (isGaps(at)) return { item: angle, about, says: 'The angle cannot be told yet.', missing: at }
      if (!at) return { item: angle, about, says: 'nothing that goes in reaches there', doesNotApply: 'nothing that goes in reaches there' }
      return {
        item: angle,
        about: [...about, ...placeOf(m, at.shape.name)],
        found: at.angle,
        side: 'at least',
        limit,
        says: 'Under {shape} the angle is {found}; {limit} is wanted.',
        slots: { shape: nameOfShape(at.shape.name) },
        remedies: [{ do: 'act', says: 'Put it higher or nearer to an axle.' }],
      }
    })
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'fit.ground.departure', now: '60°' }], item: 'departure' },
})
