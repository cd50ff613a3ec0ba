import { lackingReadings } from '../../studies/pack/salvage.ts'
import { isOther, placesOf, recordsInPack } from '../../studies/pack/salvaged-modules.ts'
import { isGaps } from '../../studies/study.ts'
import { type Fact, isGap } from '../../working/value.ts'
import { doesNotApply, rule } from '../rule.ts'
import { limitOf, open } from './answers.ts'
import { completed, GRADING, judgedLot, named, ofSalvage } from './salvage-judged.ts'

export const modulesRecorded = rule({
  id: 'salvaged-modules-recorded',
  title: 'Every salvaged module has its record',
  stage: 'pack',
  harm: 'S2',
  hazards: ['A9'],
  source: GRADING,
  judgements: ofSalvage((m, s) => {
    const records = recordsInPack(m.pack),
      about = ['pack.salvage', 'pack.modules-in-series', 'pack.strings']
    if (isGaps(s)) return [open(about, s)]
    if (isGaps(s.places)) return [open(about, s.places)]
    const recorded: Fact = {
      path: 'pack.salvage',
      label: 'modules recorded',
      symbol: 'n',
      unit: '1',
      shows: 'count',
      value: records.length,
    }
    if (records.length > s.places.value)
      return [
        {
          about,
          holds: false,
          rests: [recorded, s.places],
          says: '{recorded} modules are recorded as in the pack, which has places for {places}.',
          slots: { recorded, places: s.places },
          remedies: [{ do: 'act', says: 'Mark the others as spare or rejected.' }],
        },
      ]
    if (records.length < s.places.value)
      return [open(about, { gap: true, path: 'pack.salvage', label: 'records of the other modules', until: 'before the part is bought' })]
    const places = placesOf(m.pack),
      others = records.filter(([, r]) => isOther(r)).length
    if (!isGap(places) && others !== places.other)
      return [
        {
          about: [...about, 'pack.other-module.in-series'],
          holds: false,
          rests: [recorded, s.places],
          says: 'As many modules are recorded as the pack has places for, {places}, but not as many of each form.',
          slots: { places: s.places },
          remedies: [{ do: 'act', says: 'Say of each record which form the module has.' }],
        },
      ]
    const gaps = lackingReadings(m)
    if (gaps.length) return [open(about, { gaps })]
    return [{ about, holds: true, rests: [recorded, s.places], says: 'All {places} modules are recorded.', slots: { places: s.places } }]
  }),
  spoil: { sample: 'lapwing', edits: [{ path: 'pack.modules-in-series', now: '12' }] },
})

export const oneOrigin = rule({
  id: 'salvaged-modules-of-one-origin',
  title: 'All salvaged modules come from one source',
  stage: 'pack',
  harm: 'S2',
  hazards: ['A9'],
  source: GRADING,
  judgements: ofSalvage(m => {
    const records = recordsInPack(m.pack),
      about = records.map(([name]) => `pack.salvage.${name}.source`)
    const first = records[0]?.[1].source
    for (const [name, { source }] of records) {
      if (isGap(source)) return [open([`pack.salvage.${name}.source`], source)]
      if (first && !isGap(first) && source.value !== first.value)
        return [
          {
            about: [`pack.salvage.${name}.source`],
            holds: false,
            rests: [first, source],
            says: 'Module {name} comes from {other}, the first from {one}: another age, another history.',
            slots: { name: named(m, name), other: source, one: first },
            remedies: [
              {
                do: 'act',
                says: 'One pack from one car; or sort by measured capacity, resistance and self-discharge, and accept that they age apart.',
              },
            ],
          },
        ]
    }
    return first && !isGap(first)
      ? [{ about, holds: true, rests: [first], says: 'All come from {one}.', slots: { one: first } }]
      : doesNotApply('no module is in the pack', ['pack.salvage'])
  }),
  spoil: { sample: 'lapwing', edits: [{ path: 'pack.salvage.m04.source', now: 'an older pack from a breaker' }] },
})

const CAPACITY = limitOf('off-median-capacity', 'furthest from the median of a lot, capacity', 0.06, '1', GRADING, 'share')
const RESISTANCE = limitOf('off-median-resistance', 'furthest from the median of a lot, resistance', 0.3, '1', GRADING, 'share')

export const capacityMatched = rule({
  id: 'salvaged-capacity-matched',
  title: 'No salvaged module stands out of its lot in capacity',
  stage: 'pack',
  harm: 'S2',
  hazards: ['A9'],
  source: GRADING,
  judgements: ofSalvage((m, s) =>
    judgedLot(
      m,
      s,
      x => x.capacity,
      'capacity',
      'at most',
      CAPACITY,
      'Module {worst} lies {found} off the median capacity; from {limit} on it is rejected. The weakest ends the range of all.',
      'Put it aside and take a spare; the weakest module decides for its whole string.',
    ),
  ),
  spoil: { sample: 'lapwing', edits: completed({ capacity: '98 Ah' }) },
})
export const resistanceMatched = rule({
  id: 'salvaged-resistance-matched',
  title: 'No salvaged module stands out of its lot in resistance',
  stage: 'pack',
  harm: 'S2',
  hazards: ['A9'],
  source: GRADING,
  judgements: ofSalvage((m, s) =>
    judgedLot(
      m,
      s,
      x => x.resistance,
      'resistance',
      'at most',
      RESISTANCE,
      'Module {worst} lies {found} off the median resistance; from {limit} on it is rejected. It warms and ages ahead of the rest.',
      'Put it aside, or find the bad joint inside it.',
    ),
  ),
  spoil: { sample: 'lapwing', edits: completed({ resistance: '4.4 mΩ' }) },
})

export const moduleInsulated = rule({
  id: 'salvaged-module-insulated',
  title: 'Each salvaged module is insulated well enough for all together',
  stage: 'pack',
  harm: 'S3',
  hazards: [],
  source: GRADING,
  caution:
    'Insulation is measured with an insulation tester on a module by itself, monitor board unplugged, nobody touching it: the tester itself gives a shock.',
  judgements: ofSalvage((m, s) =>
    judgedLot(
      m,
      s,
      x => x.insulation,
      'insulation',
      'at least',
      isGaps(s) ? s : s.insulationWanted,
      'Module {worst} shows {found} to its case; every one of them needs {limit}, for all leak side by side.',
      'Dry it, clean it, measure again at 500 V for a minute; reject it if it stays low.',
    ),
  ),
  spoil: { sample: 'lapwing', edits: completed({ insulation: '4 MΩ' }) },
})

export const healthAsStated = rule({
  id: 'salvaged-health-as-stated',
  title: 'The lot is as healthy as the seller says',
  stage: 'pack',
  harm: 'S1',
  hazards: [],
  source: GRADING,
  judgements: ofSalvage((m, s) => {
    const about = ['pack.module.health', 'pack.salvage']
    if (isGaps(s)) return [open(about, s)]
    if (isGaps(s.median)) return s.median.gaps.length ? [open(about, s.median)] : doesNotApply('one module is no lot', about)
    return [
      {
        about,
        found: s.median,
        side: 'at least',
        limit: m.pack.module.health,
        says: 'Half of the modules measure {found} or less; stated are {limit}.',
        remedies: [{ do: 'act', says: 'Talk about the price; plan with what was measured.' }],
      },
    ]
  }),
  spoil: { sample: 'badger', edits: [{ path: 'pack.module.health', now: '99 ± 1 %' }] },
})
