import type { Model } from '../../model/model.ts'
import { ledger } from '../../studies/donor/ledger.ts'
import { moves, type Relief } from '../../studies/donor/moves.ts'
import { RATED, type Rated } from '../../studies/donor/ratings.ts'
import { room } from '../../studies/donor/room.ts'
import { seats } from '../../studies/donor/seats.ts'
import { type Ask, from, isGaps } from '../../studies/study.ts'
import type { AnyValue } from '../../working/value.ts'
import { doesNotApply, type Judgement, type Remedy, rule } from '../rule.ts'

const PLATE = { work: 'practice', place: 'permitted masses on the plate of the car' } as const
const KEY: Readonly<Record<Rated, string>> = { total: 'total', 'front axle': 'front-axle', 'rear axle': 'rear-axle' }

/** The least move of modules first, then what else would help. */
function reliefs(m: Model, relief: Relief | undefined): readonly Remedy[] {
  const { move } = relief ?? {}
  const sets: readonly Remedy[] = move
    ? [
        {
          do: 'set',
          says: 'Move {modules} modules from box {from} to box {to}; check that they fit there.',
          sets: [
            { path: `pack.boxes.${move.from}.modules`, to: { value: move.leaves, kind: 'count' } },
            { path: `pack.boxes.${move.to}.modules`, to: { value: move.makes, kind: 'count' } },
          ],
        },
      ]
    : []
  const carries = Object.keys(m.pack.boxes).length > 0
  return [
    ...sets,
    ...(relief?.slide
      ? [{ do: 'act', says: 'Sliding one box alone would take {slide}: see whether there is that much space.' } as const]
      : []),
    { do: 'act', says: carries ? 'Fewer or lighter modules, or less aboard.' : 'Less mass, or less aboard.' },
  ]
}

const box = (name: string): AnyValue => ({ path: `pack.boxes.${name}`, label: 'battery box', symbol: '', unit: '', value: name })
const boxes = (relief: Relief | undefined): Readonly<Record<string, AnyValue>> =>
  relief?.move ? { from: box(relief.move.from), to: box(relief.move.to) } : {}

function judged(m: Model, ask: Ask, name: string, rated: Rated): Judgement {
  const item = `${name}, ${rated}`,
    about = [`brief.loads.${name}`, `donor.ratings.${KEY[rated]}`, 'donor.weighing', 'donor.removed', 'donor.added', 'pack.boxes']
  const found = from(ask(room), r => r.cases[name]?.[rated] ?? { gaps: [] })
  if (isGaps(found)) return { item, about, says: 'This mass cannot be compared yet.', missing: found }
  const all = ask(moves),
    relief = isGaps(all) ? undefined : all.relief[item]
  return {
    item,
    about,
    found: found.mass,
    side: 'at most',
    limit: found.rating,
    says: 'Laden so it carries {found}; {limit} is permitted, {room} is left.',
    slots: { room: found.room, modules: relief?.move?.modules, ...boxes(relief), slide: relief?.slide?.by },
    remedies: rated === 'total' ? [{ do: 'act', says: 'Less mass: a smaller pack, lighter parts, or less aboard.' }] : reliefs(m, relief),
  }
}

export const ladenMasses = rule({
  id: 'laden-masses',
  title: 'Every load case stays within the permitted masses',
  stage: 'donor',
  harm: 'S3',
  hazards: [],
  source: PLATE,
  caution:
    'An overloaded axle breaks tyres, bearings and brakes, on the road and with people aboard. Weigh the finished car before it carries anybody.',
  judgements: (m, ask) => {
    const names = Object.keys(m.brief.loads)
    return names.length === 0
      ? doesNotApply('the brief names no load case', ['brief.loads'])
      : names.flatMap(name => RATED.map(rated => judged(m, ask, name, rated)))
  },
  spoil: { sample: 'lapwing', edits: [], item: 'two-up, rear axle' },
})

export const axlesCarry = rule({
  id: 'axles-carry',
  title: 'Each axle still carries something when what is listed has come out and gone in',
  stage: 'donor',
  harm: 'S2',
  hazards: [],
  source: { work: 'definition', place: 'an axle cannot pull the road up' },
  judgements: (_, ask) => {
    const kerb = ask(ledger)
    return (['front', 'rear'] as const).map(axle => {
      const item = `${axle} axle`,
        about = ['donor.weighing', 'donor.removed', 'donor.added', 'pack.boxes']
      if (isGaps(kerb)) return { item, about, says: 'What it carries cannot be said yet.', missing: kerb }
      return {
        item,
        about,
        holds: kerb[axle].value > 0,
        rests: [kerb[axle]],
        says: 'At kerb it would carry {now}.',
        slots: { now: kerb[axle] },
        remedies: [
          { do: 'act', says: 'Look for a slip in the lists: a mass with a digit too many, or a place in cm or m that should be mm.' },
        ],
      }
    })
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'donor.removed.engine.mass', now: '1280 kg' }], item: 'front axle' },
})

export const seatsWanted = rule({
  id: 'seats-wanted',
  title: 'As many seats may be used as the brief wants, luggage aboard',
  stage: 'donor',
  harm: 'S1',
  hazards: [],
  source: PLATE,
  judgements: (m, ask) => {
    const about = ['brief.seats', 'brief.luggage', 'brief.person', 'donor.seats', 'donor.ratings'],
      answer = ask(seats)
    if (isGaps(answer)) return [{ about, says: 'How many seats may be used cannot be said yet.', missing: answer }]
    const { usable, breaks } = answer
    return [
      {
        about,
        found: usable,
        side: 'at least',
        limit: m.brief.seats,
        says: breaks
          ? `With {found} aboard and the luggage wanted everything holds; one more leaves {over} to the rating of the ${breaks.rated === 'total' ? 'whole car' : breaks.rated}.`
          : 'All {found} seats may be used with the luggage wanted.',
        slots: { over: breaks?.room },
        remedies: [{ do: 'act', says: 'Move mass off what is overloaded, or carry less luggage.' }],
      },
    ]
  },
  spoil: { sample: 'lapwing', edits: [] },
})
