import type { Model } from '../../model/model.ts'
import { acceleration } from '../../studies/drive/acceleration.ts'
import { partLoads } from '../../studies/drive/part-loads.ts'
import { isGaps } from '../../studies/study.ts'
import { isGap, standard } from '../../working/value.ts'
import { doesNotApply, type Judgement, rule } from '../rule.ts'

const AT_ONCE = standard('no-slipping', 'no time held back by grip', 't', 0, 's', { work: 'definition', place: 'nothing' })
export const launchGrip = rule({
  id: 'launch-grip',
  title: 'The driven tyres carry the motors’ pull',
  stage: 'drive',
  harm: 'S1',
  hazards: [],
  source: { work: 'practice', place: 'full pull from standstill under the brief’s usual conditions' },
  judgements: (m, ask) => {
    const wanted = Object.entries(m.brief.goals).flatMap(([name, g]) => (g?.kind === 'acceleration' ? [name] : []))
    if (wanted.length === 0) return doesNotApply('the brief asks for no time', ['brief.goals'])
    const answer = ask(acceleration)
    return wanted.map((item): Judgement => {
      const about = [`brief.goals.${item}`, 'drive.units'],
        a = isGaps(answer) ? answer : answer.goals[item]
      if (!a || isGaps(a)) return { item, about, says: 'Whether the tyres slip cannot be said yet.', missing: a ?? { gaps: [] } }
      return {
        item,
        about,
        found: a.slipping,
        side: 'at most',
        limit: AT_ONCE,
        says: 'In {item} the tyres hold the pull back for {found}.',
        ...(a.time.value <= a.goal.value ? { eased: 'the time wanted is kept all the same' } : {}),
        remedies: [
          { do: 'act', says: 'Ramp or limit the torque in the inverter, add traction control, or bring load onto the driven axle.' },
        ],
      }
    })
  },
  spoil: {
    sample: 'lapwing',
    edits: [
      { path: 'drive.units.main.gear', now: 'first' },
      { path: 'brief.goals.sprint.to', now: '50 km/h' },
      { path: 'brief.goals.sprint.within', now: '1.5 s' },
    ],
    item: 'sprint',
  },
})

/** Goals of the brief met with axles locked together in low range. */
const inLowRange = (m: Model): readonly (readonly [string, { readonly value: string } | undefined])[] =>
  Object.entries(m.brief.goals).flatMap(([name, g]) => {
    if (!g || !('transfer' in g) || isGap(g.transfer) || g.transfer.value !== 'low') return []
    const surface = isGap(g.surface) ? m.brief.conditions.surface : g.surface
    return [[name, isGap(surface) ? undefined : surface] as const]
  })

export const lowRangeOnDry = rule({
  id: 'low-range-on-dry',
  title: 'Low range is not asked of on a dry road',
  stage: 'drive',
  harm: 'S2',
  hazards: [],
  source: { work: 'practice', place: 'part-time 4x4: locked axles wind up where the tyres cannot slip' },
  judgements: m => {
    const partTime = !isGap(m.donor.drivenWheels) && m.donor.drivenWheels.value === 'part-time 4x4',
      list = inLowRange(m)
    if (!partTime || list.length === 0) return doesNotApply('no goal is met in the low range of a part-time 4x4', ['brief.goals'])
    return list.map(([item, surface]): Judgement => {
      const about = [`brief.goals.${item}.transfer`, `brief.goals.${item}.surface`]
      if (!surface)
        return { item, about, says: 'On which surface {item} is to be met is not said.', missing: m.brief.conditions.surface as never }
      return {
        item,
        about,
        holds: surface.value !== 'dry',
        rests: [surface as never],
        says:
          surface.value === 'dry'
            ? '{item} is to be met in low range on a dry road: the axles wind up.'
            : '{item} is met in low range where the tyres can slip.',
        remedies: [{ do: 'set', says: 'Meet it in high range.', sets: [{ path: `brief.goals.${item}.transfer`, to: { word: 'high' } }] }],
      }
    })
  },
  spoil: { sample: 'badger', edits: [{ path: 'brief.goals.yard-ramp.surface', now: 'dry' }], item: 'yard-ramp' },
})

export const recoveryGrip = rule({
  id: 'recovery-grip',
  title: 'Recovery stays within the grip of a wet road',
  stage: 'drive',
  harm: 'S3',
  hazards: ['J4'],
  caution:
    'Recovery on one axle can lock its wheels on a wet or icy road and spin the car, and anti-lock brakes do not see it. Try it first in an empty yard, at walking pace, and set less for winter.',
  source: { work: 'practice', place: 'regeneration against tyre grip' },
  judgements: (m, ask) => {
    if (Object.keys(m.drive.units).length === 0) return doesNotApply('no drive unit yet', ['drive.units'])
    const answer = ask(partLoads),
      about = ['drive.regeneration.torque-share', 'donor.grip.wet']
    const recovery = isGaps(answer) ? answer : answer.recovery
    if (isGaps(recovery)) return [{ about, says: 'What recovery asks of the tyres cannot be said yet.', missing: recovery }]
    const { torqueShare: share } = m.drive.regeneration,
      { wet } = m.donor.grip
    return Object.entries(recovery).map(([item, { needed, most, snow }]): Judgement => {
      // What the driveline loses and where the centre lies need not be measured where the worst of it still holds.
      const found = !isGap(wet) && most.value <= wet.value ? most : needed
      return {
        item,
        about,
        found,
        side: 'at most',
        limit: wet,
        says: `With recovery at its strongest the {item} axle needs a grip of {found}${found === most && most !== needed ? ' at most' : ''}; a wet road gives {limit}.${snow ? ' Snow lets {snow} of it through, ice next to nothing.' : ''}`,
        slots: { snow },
        remedies: [
          ...(isGap(share) || isGap(wet) || found.value <= wet.value
            ? []
            : [
                {
                  do: 'set',
                  says: 'Recover with less torque.',
                  sets: [
                    {
                      path: 'drive.regeneration.torque-share',
                      to: { value: Math.floor(((share.value * wet.value) / found.value) * 80) / 100, kind: 'share' },
                    },
                  ],
                } as const,
              ]),
          {
            do: 'act',
            says: 'Limit recovery by road and speed, less on snow and none on ice, and switch it off while the anti-lock brakes work.',
          },
        ],
      }
    })
  },
  spoil: {
    sample: 'lapwing',
    edits: [
      { path: 'donor.grip.wet', now: '0.5' },
      { path: 'drive.units.main.efficiency', now: '95 %' },
      { path: 'drive.units.main.gear', now: 'first' },
    ],
    item: 'rear',
  },
})
