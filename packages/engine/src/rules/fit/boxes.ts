import type { BoxBody } from '../../model/fit.ts'
import type { Model } from '../../model/model.ts'
import { shapesOf } from '../../studies/fit/places.ts'
import { type BoxRoom, boxRoom } from '../../studies/fit/box-room.ts'
import type { RoomForTwo } from '../../studies/fit/box-room-two-forms.ts'
import { edges } from '../../studies/fit/edges.ts'
import { type Shell, shells } from '../../studies/fit/shells.ts'
import { isGaps } from '../../studies/study.ts'
import { type AnyValue, type Field, type Gap, isGap } from '../../working/value.ts'
import { bySet, silent } from '../brief/by-set.ts'
import { limitFact } from '../limits.ts'
import { doesNotApply, type Judgement, type Remedy, type Rule, rule } from '../rule.ts'
import { FITTING, pathOf, placeOf } from './shapes.ts'

const boxesOf = (m: Model): readonly (readonly [string, BoxBody])[] =>
  shapesOf(m).flatMap(([name, b]) => (b.kind === 'battery box' ? [[name, b] as const] : []))
const NO_BOX = (): readonly Judgement[] => doesNotApply('no battery box has a shape yet', ['fit.bodies'])
const GAS = 'Gas of a burning cell is toxic and explosive. It must find its way outside, and not into the cabin.'

/** One yes or no of a battery box: the word it must be, or one of those it must not be. */
const each =
  (
    key: string,
    field: (b: BoxBody) => Field<string>,
    good: (word: string) => boolean,
    says: string,
    remedies: readonly Remedy[],
  ): Rule['judgements'] =>
  m => {
    const boxes = boxesOf(m)
    if (boxes.length === 0) return NO_BOX()
    return boxes.map(([item, b]): Judgement => {
      const about = [`${pathOf(item)}.${key}`],
        word = field(b)
      if (isGap(word)) return { item, about, says: 'It is not said yet.', missing: word }
      return { item, about, holds: good(word.value), rests: [word as AnyValue], says, slots: { word: word as AnyValue }, remedies }
    })
  }
const setTo = (says: string): readonly Remedy[] => [{ do: 'act', says }]

export const boxSealed = rule({
  id: 'box-lid-sealed',
  title: 'Every battery box has a lid with a seal',
  stage: 'fit',
  harm: 'S3',
  hazards: ['A15'],
  source: FITTING,
  caution: GAS,
  judgements: each(
    'lid-seal',
    b => b.lidSeal,
    w => w === 'yes',
    'A lid with a seal: {word}.',
    setTo('A lid with a seal all round, and bolts close enough to press it.'),
  ),
  spoil: { sample: 'lapwing', edits: [{ path: 'fit.bodies.boot-box.lid-seal', now: 'no' }], item: 'boot-box' },
})

export const boxVents = rule({
  id: 'box-vents-outside',
  title: 'Gas of the cells has a way from every box to the outside',
  stage: 'fit',
  harm: 'S3',
  hazards: ['A15'],
  source: FITTING,
  caution: GAS,
  judgements: each(
    'vent',
    b => b.vent,
    w => w === 'to the outside',
    'Gas goes: {word}.',
    setTo('A vent film for breathing and a burst opening for gas, led to the outside, away from the doors.'),
  ),
  spoil: { sample: 'lapwing', edits: [{ path: 'fit.bodies.boot-box.vent', now: 'none' }], item: 'boot-box' },
})

export const boxDrains = rule({
  id: 'box-keeps-no-water',
  title: 'Water that gets into a box does not stand there unseen',
  stage: 'fit',
  harm: 'S3',
  hazards: ['D1'],
  source: FITTING,
  caution: 'Water between cell and wall is a fault to the body that comes with wet weather.',
  judgements: each(
    'drain',
    b => b.drain,
    w => w === 'yes',
    'Water that gets in runs out or is told of: {word}.',
    setTo('A drain at the lowest corner, or a sensor there, and a liner between cells and wall.'),
  ),
  spoil: { sample: 'lapwing', edits: [{ path: 'fit.bodies.tank-box.drain', now: 'no' }], item: 'tank-box' },
})

export const boxBreathes = rule({
  id: 'box-breathes-dry',
  title: 'A sealed box breathes through a membrane',
  stage: 'fit',
  harm: 'S2',
  hazards: ['D3'],
  source: {
    work: 'practice',
    place: 'a box without a membrane draws damp air past its seal or through an opening as it cools, and the damp condenses inside',
    mark: 'common practice',
  },
  judgements: each(
    'breathing',
    b => b.breathing,
    w => w === 'through a membrane',
    'Air passes: {word}.',
    setTo(
      'A membrane that lets air through and water not, on a side that stays out of spray; a bag of desiccant that is renewed with each service.',
    ),
  ),
  spoil: { sample: 'lapwing', edits: [{ path: 'fit.bodies.tank-box.breathing', now: 'freely' }], item: 'tank-box' },
})

export const boxHeld = rule({
  id: 'box-held-by-structure',
  title: 'Battery boxes hang on structure, not on thin sheet',
  stage: 'fit',
  harm: 'S3',
  hazards: ['A13'],
  source: FITTING,
  caution:
    'In a crash a box pulls with many times its weight. Whoever signs decides what it must bear; have the fixing reckoned before it is made.',
  judgements: m => {
    const boxes = boxesOf(m)
    if (boxes.length === 0) return NO_BOX()
    return boxes.map(([item, b]): Judgement => {
      const about = [`${pathOf(item)}.fixed-into`]
      if (isGap(b.fixedInto)) return { item, about, says: 'What it is fixed into is not said yet.', missing: b.fixedInto }
      const { value } = b.fixedInto
      return {
        item,
        about,
        holds: value !== 'floor sheet alone',
        marginal: value === 'floor sheet with spreading plates',
        rests: [b.fixedInto],
        says: 'It is fixed into: {into}.',
        slots: { into: b.fixedInto },
        remedies: setTo(
          'Cross members, sills, the points of engine, subframe or tank; through floor sheet only with plates that spread the load, reckoned for it.',
        ),
      }
    })
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'fit.bodies.boot-box.fixed-into', now: 'floor sheet alone' }], item: 'boot-box' },
})

export const boxBehindTheEdge = rule({
  id: 'box-behind-the-edge',
  title: 'Battery boxes keep the distance from the ends of the car that the rule set asks',
  stage: 'fit',
  harm: 'S3',
  hazards: ['A14'],
  source: { work: 'un-r100', place: 'crush test, mounted position' },
  caution: 'Cells crushed in an impact burn, at once or hours later. Nearer to the ends only with a crash test of the car.',
  judgements: bySet((limits, m, ask) => {
    const boxes = boxesOf(m)
    if (boxes.length === 0) return NO_BOX()
    const found = ask(edges),
      rows = { front: limits('battery.edge.front'), rear: limits('battery.edge.rear') }
    if (!rows.front && !rows.rear) return silent(['fit.ends'])
    if (isGaps(found))
      return [{ about: ['fit.ends'], says: 'How far the boxes are from the ends of the car cannot be told yet.', missing: found }]
    return boxes.flatMap(([name]) =>
      (['front', 'rear'] as const).flatMap((end): Judgement[] => {
        const row = rows[end],
          at = found.boxes[name]?.[end]
        if (!row || typeof row.requirement.value !== 'number') return []
        const about = [`fit.ends.${end}`, ...placeOf(m, name)],
          item = `${name} ${end}`
        if (at === undefined) return []
        if (isGaps(at)) return [{ item, about, says: 'How far it is from the end of the car cannot be told yet.', missing: at }]
        return [
          {
            item,
            about,
            found: at,
            side: 'at least',
            limit: limitFact(row, row.requirement.value / 1000, { unit: 'm', shows: 'length' }),
            requirement: row,
            says: 'It stands {found} from that end of the car; {limit} is asked of a pack that was crushed as a component.',
            remedies: setTo('Move it towards the middle of the car, or ask whoever signs how the car is to be shown safe.'),
          },
        ]
      }),
    )
  }),
  spoil: { sample: 'lapwing', edits: [{ path: 'fit.ends.rear', now: '2950 mm' }], item: 'boot-box rear' },
})

export const sheetWithinOverhead = rule({
  id: 'sheet-within-overhead',
  title: 'The mass listed for a box covers its sheet at least',
  stage: 'fit',
  harm: 'S1',
  hazards: [],
  source: FITTING,
  judgements: (m, ask) => {
    const boxes = boxesOf(m)
    if (boxes.length === 0) return NO_BOX()
    const found = ask(shells)
    if (isGaps(found)) return [{ about: ['fit.bodies'], says: 'What the sheet weighs cannot be told yet.', missing: found }]
    return boxes.map(([item]): Judgement => {
      const shell = found.shells[item] as Shell | { gaps: readonly Gap[] },
        about = [pathOf(item)]
      if (isGaps(shell)) return { item, about, says: 'What its sheet weighs cannot be told yet.', missing: shell }
      return {
        item,
        about: [...about, `pack.boxes.${shell.box}.overhead`],
        found: shell.overhead,
        side: 'at least',
        limit: shell.sheet,
        says: '{found} is listed for box, lid, plates and links; the sheet of the box alone weighs {limit}.',
        remedies: setTo('Thinner or lighter sheet, or a larger mass in the list: then axle loads tell the truth.'),
      }
    })
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'fit.bodies.front-box.wall', now: '12 mm' }], item: 'front-box' },
})

/** The same of a box with two forms of module. */
function forTwo(item: string, about: readonly string[], { stated, others, othersOneWay, othersMost, beside, most }: RoomForTwo): Judgement {
  const remedies = setTo('A larger box, fewer modules in it, or an arrangement in which modules stand different ways round.')
  if (others.value > othersMost.value)
    return {
      item,
      about,
      found: others,
      side: 'at most',
      limit: othersMost,
      says: '{found} modules of the other form are to go in; by volume never more than {limit} do.',
      remedies,
    }
  const fits = others.value <= othersOneWay.value && stated.value <= beside.value
  if (!fits && stated.value <= most.value)
    return {
      item,
      about,
      holds: true,
      marginal: true,
      rests: [stated, others, othersOneWay, beside, most],
      says: '{stated} modules and {others} of the other form are to go in. Each form the same way round, {othersOneWay} of the other form alone have room, and {beside} modules beside those; by volume never more than {most}. Try it before the sheet is cut.',
      slots: { stated, others, othersOneWay, beside, most },
      remedies,
    }
  return {
    item,
    about,
    found: stated,
    side: 'at most',
    limit: fits ? beside : most,
    says: fits
      ? '{found} modules are to go in beside {others} of the other form; {limit} have room there, each form the same way round.'
      : '{found} modules are to go in beside {others} of the other form; by volume never more than {limit} do.',
    slots: { others },
    remedies,
  }
}

export const modulesFitTheirBox = rule({
  id: 'modules-fit-their-box',
  title: 'Each battery box has room for its modules',
  stage: 'fit',
  harm: 'S2',
  hazards: [],
  source: { work: 'statics', place: 'whole modules along each side; volume of the inside' },
  caution: 'Modules that are forced in bend, chafe and short. Lay them out in a box of cardboard before the sheet is cut.',
  judgements: (m, ask) => {
    const boxes = boxesOf(m)
    if (boxes.length === 0) return NO_BOX()
    const found = ask(boxRoom)
    if (isGaps(found)) return [{ about: ['fit.bodies'], says: 'Whether the modules have room cannot be told yet.', missing: found }]
    return boxes.map(([item, { box }]): Judgement => {
      const room = found.rooms[item] as BoxRoom | RoomForTwo | { gaps: readonly Gap[] },
        about = [pathOf(item), 'fit.packing', ...(isGap(box) ? [] : [`pack.boxes.${box.value}.modules`])]
      if (isGaps(room)) return { item, about, says: 'Whether its modules have room cannot be told yet.', missing: room }
      if ('others' in room) return forTwo(item, [...about, ...(isGap(box) ? [] : [`pack.boxes.${box.value}.other-modules`])], room)
      const { stated, oneWay, most } = room,
        remedies = setTo('A larger box, fewer modules in it, or an arrangement in which modules stand different ways round.')
      // Between the two a mixture of ways may do it: that takes a search.
      if (stated.value > oneWay.value && stated.value <= most.value)
        return {
          item,
          about,
          holds: true,
          marginal: true,
          rests: [stated, oneWay, most],
          says: '{stated} modules are to go in; all the same way round {oneWay} have room, by volume never more than {most}. Try it before the sheet is cut.',
          slots: { stated, oneWay, most },
          remedies,
        }
      return {
        item,
        about,
        found: stated,
        side: 'at most',
        limit: stated.value <= oneWay.value ? oneWay : most,
        says:
          stated.value <= oneWay.value
            ? '{found} modules are to go in; {limit} have room, all the same way round.'
            : '{found} modules are to go in; by volume never more than {limit} do.',
        remedies,
      }
    })
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'pack.boxes.tank.modules', now: '7' }], item: 'tank-box' },
})
