import type { DrivenWheels, EnginePosition } from '../../model/donor.ts'
import type { Model } from '../../model/model.ts'
import { againstDonor } from '../../studies/brief/against-donor.ts'
import { from } from '../../studies/study.ts'
import { type Field, isGap } from '../../working/value.ts'
import { doesNotApply, type Judgement, type Remedy, rule } from '../rule.ts'

const SLIP: readonly Remedy[] = [{ do: 'act', says: 'Look for a slip of the pen in one of the two.' }]

/** A month holds all its days: what is written coarsely is compared as coarsely. */
const notAfter = (earlier: string, later: string): boolean => {
  const n = Math.min(earlier.length, later.length)
  return earlier.slice(0, n) <= later.slice(0, n)
}

const dates = (m: Model): readonly (readonly [item: string, earlier: Field<string>, later: Field<string>, says: string])[] => [
  ['built', m.donor.built, m.donor.firstRegistered, 'Built {earlier}, first registered {later}.'],
  ['registered', m.donor.firstRegistered, m.brief.convertedOn, 'First registered {earlier}, presented as converted {later}.'],
  ['bought', m.brief.partsBoughtFrom, m.brief.convertedOn, 'The first part is bought {earlier}, the conversion is presented {later}.'],
]

export const datesInOrder = rule({
  id: 'dates-in-order',
  title: 'The dates follow each other: built, registered, parts bought, converted',
  stage: 'brief',
  harm: 'S2',
  hazards: [],
  source: { work: 'definition', place: 'order in time; the law that applies goes by these days' },
  judgements: m => {
    const known = dates(m).flatMap(([item, earlier, later, says]): readonly Judgement[] =>
      isGap(earlier) || isGap(later)
        ? []
        : [
            {
              item,
              about: [earlier.path, later.path],
              holds: notAfter(earlier.value, later.value),
              rests: [earlier, later],
              says,
              slots: { earlier, later },
              remedies: SLIP,
            },
          ],
    )
    return known.length ? known : doesNotApply('no two of these dates are known', ['donor.first-registered', 'brief.converted-on'])
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'brief.converted-on', now: '1993-02-01' }], item: 'registered' },
})

/** Wheels an engine in this place does not drive in any car built in numbers. */
const NEVER: Readonly<Record<EnginePosition, readonly DrivenWheels[]>> = {
  'transverse front': ['rear'],
  'longitudinal front': [],
  rear: ['front'],
  mid: ['front'],
}

export const layoutInReason = rule({
  id: 'layout-in-reason',
  title: 'Engine position and driven wheels of the donor car go together',
  stage: 'brief',
  harm: 'S2',
  hazards: [],
  source: { work: 'practice', place: 'layouts cars were built in' },
  judgements: ({ donor: { enginePosition: engine, drivenWheels: driven } }) => {
    const about = ['donor.engine-position', 'donor.driven-wheels']
    if (isGap(engine)) return [{ about, says: 'Where the engine sits is not known yet.', missing: engine }]
    if (isGap(driven)) return [{ about, says: 'Which wheels were driven is not known yet.', missing: driven }]
    return [
      {
        about,
        holds: !NEVER[engine.value].includes(driven.value),
        rests: [engine, driven],
        says: 'Engine: {engine}; driven wheels: {driven}.',
        slots: { engine, driven },
        remedies: SLIP,
      },
    ]
  },
  spoil: { sample: 'wren', edits: [{ path: 'donor.driven-wheels', now: 'rear' }] },
})

export const everyoneSits = rule({
  id: 'everyone-sits',
  title: 'Everybody aboard has a seat',
  stage: 'brief',
  harm: 'S3',
  hazards: [],
  source: { work: 'definition', place: 'one person on one seat' },
  caution: 'Who sits on no seat has no belt.',
  judgements: (m, ask) => {
    const limit = from(ask(againstDonor), a => a.seats),
      rows = 'donor.seats'
    const wanted: Judgement = {
      item: 'seats wanted',
      about: ['brief.seats', rows],
      found: m.brief.seats,
      side: 'at most',
      limit,
      says: '{found} seats are wanted; the seat rows have {limit} places.',
      remedies: [{ do: 'act', says: 'Count the seats of the car, and name every row that stays.' }],
    }
    return [
      wanted,
      ...Object.entries(m.brief.loads).map(
        ([name, load]): Judgement => ({
          item: `load case ${name}`,
          about: [`brief.loads.${name}.people`, rows],
          found: load.people,
          side: 'at most',
          limit,
          says: '{found} people are aboard; the seat rows have {limit} places.',
          remedies: [{ do: 'act', says: 'Fewer people aboard, or name every seat row that stays.' }],
        }),
      ),
    ]
  },
  spoil: { sample: 'otter', edits: [{ path: 'brief.loads.full.people', now: '9' }], item: 'load case full' },
})

export const gearsInOrder = rule({
  id: 'gears-in-order',
  title: 'The ratios of the gearbox fall from gear to gear',
  stage: 'donor',
  harm: 'S1',
  hazards: [],
  source: { work: 'definition', place: 'each higher gear turns the wheels faster' },
  judgements: ({ donor: { gearbox } }) => {
    const about = ['donor.gearbox.gears'],
      forward = Object.entries(gearbox.gears).flatMap(([name, g]) =>
        name === 'reverse' || g === undefined || isGap(g) ? [] : [{ name, ratio: g }],
      )
    if (forward.length < 2) return doesNotApply('no two gears are known', about)
    const slips = forward.slice(1).flatMap((g, i) => (g.ratio.value < (forward[i]?.ratio.value ?? 0) ? [] : [g.name]))
    // Written from the top gear down they rise all the way.
    const holds = slips.length === 0 || slips.length === forward.length - 1
    return [
      {
        about,
        holds,
        rests: forward.map(g => g.ratio),
        says: holds ? 'Each gear is taller than the one before.' : `Shorter than the gear before: ${slips.join(', ')}.`,
        remedies: SLIP,
      },
    ]
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'donor.gearbox.gears.second', now: '20.6' }] },
})
