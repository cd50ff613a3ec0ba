import { type Stronger, strongerDrive } from '../../studies/brief/stronger-drive.ts'
import type { Gaps } from '../../studies/study.ts'
import { isGaps } from '../../studies/study.ts'
import type { AnyValue } from '../../working/value.ts'
import { doesNotApply, type Judgement, rule } from '../rule.ts'
import { toWindow, windows } from './by-window.ts'

const SOURCE = { work: 'practice', place: 'the total ratio must suit both the motor’s speed range and the road speed wanted' } as const
const about = (unit: string): readonly string[] => [
  `drive.units.${unit}.gear`,
  `drive.units.${unit}.reduction`,
  `drive.units.${unit}.final-drive`,
]
const waiting = (missing: Gaps): readonly Judgement[] => [{ about: ['drive.units'], says: 'The ratio cannot be judged yet.', missing }]

export const gearedTooShort = rule({
  id: 'geared-too-short',
  title: 'Not geared too short for any goal',
  stage: 'drive',
  harm: 'S1',
  hazards: [],
  source: SOURCE,
  judgements: (m, ask) => {
    const all = windows(ask)
    if (isGaps(all)) return waiting(all)
    const list = all.flatMap(w =>
      w.goals.flatMap((g): readonly Judgement[] =>
        g.high
          ? [
              {
                item: `${w.unit} ${g.goal}`,
                about: about(w.unit),
                found: w.present,
                side: 'at most',
                limit: g.high,
                says: 'The total ratio is {found}; {item} allows at most {limit}, else the motor or the gearbox input turns too fast or the run gets slower.',
                remedies: [...toWindow(m, w), { do: 'act', says: 'A taller gear or axle ratio.' }],
              },
            ]
          : [],
      ),
    )
    return list.length ? list : doesNotApply('no goal limits how short the ratio may be', ['brief.goals'])
  },
  spoil: { sample: 'wren', edits: [{ path: 'drive.units.front.reduction', now: '12' }], item: 'front top-speed' },
})

export const gearedTooTall = rule({
  id: 'geared-too-tall',
  title: 'Not geared too tall for any goal',
  stage: 'drive',
  harm: 'S1',
  hazards: [],
  source: SOURCE,
  judgements: (m, ask) => {
    const all = windows(ask)
    if (isGaps(all)) return waiting(all)
    const list = all.flatMap(w =>
      w.goals.flatMap((g): readonly Judgement[] =>
        g.low && Number.isFinite(g.low.value)
          ? [
              {
                item: `${w.unit} ${g.goal}`,
                about: about(w.unit),
                found: w.present,
                side: 'at least',
                limit: g.low,
                says: 'The total ratio is {found}; {item} asks for at least {limit}, else the pull is too small.',
                remedies: [...toWindow(m, w), { do: 'act', says: 'A shorter gear or axle ratio.' }],
              },
            ]
          : [],
      ),
    )
    return list.length ? list : doesNotApply('no goal limits how tall the ratio may be', ['brief.goals'])
  },
  spoil: { sample: 'lapwing', edits: [], item: 'main sprint' },
})

/** What relaxing goals saves: a motor strong enough for them in mass and money, or the time to settle for. */
function bought(s: Stronger, i: number) {
  const slots: Record<string, AnyValue | undefined> = {
    [`times${i}`]: s.times,
    [`mass${i}`]: isGaps(s.mass) ? undefined : s.mass,
    [`money${i}`]: isGaps(s.money) ? undefined : s.money,
    [`settle${i}`]: s.settle,
  }
  const cost = [isGaps(s.mass) ? '' : `{mass${i}} more mass`, isGaps(s.money) ? '' : `{money${i}} more money`].filter(Boolean).join(' and ')
  const settle = s.settle ? `, or, at the shortest ratio ${s.goals[1]} allows, {settle${i}} for ${s.goals[0]}` : ''
  return { slots, says: `For ${s.goals.join(' and ')}: a motor {times${i}} times as strong${cost ? `, about ${cost}` : ''}${settle}.` }
}

export const ratioMeetsAll = rule({
  id: 'ratio-meets-all',
  title: 'One total ratio can meet every goal',
  stage: 'drive',
  harm: 'S1',
  hazards: [],
  source: SOURCE,
  judgements: (_, ask) => {
    const all = windows(ask)
    if (isGaps(all)) return waiting(all)
    if (all.length === 0) return doesNotApply('no unit is held in one ratio', ['drive.units'])
    const stronger = all.some(w => w.empty) ? ask(strongerDrive) : { list: [] }
    return all.map(({ unit, empty, collide, low, high, present, goals }): Judgement => {
      const buys = isGaps(stronger) ? [] : stronger.list.filter(s => s.unit === unit).map(bought)
      const hopeless = goals.flatMap(g => (g.none ? [{ goal: g.goal, none: g.none }] : [])),
        rests = [present, ...(low ? [low] : []), ...(high ? [high] : [])]
      const why = {
        power: 'the motors are too weak for it at any ratio',
        battery: 'the battery gives too little power for it at any ratio',
        grip: 'the tyres do not carry it at any ratio',
        time: 'no ratio is quick enough',
      } as const
      const cure = {
        power: 'a stronger motor',
        battery: 'cells that give more current for longer',
        grip: 'more load on the driven axle or a second driven axle',
        time: 'a stronger motor',
      } as const
      const says = !empty
        ? low && high
          ? 'Ratios from {low} to {high} meet every goal; it has {present}.'
          : 'The goals leave a ratio; it has {present}.'
        : hopeless.length
          ? `${hopeless.map(g => `${g.goal}: ${why[g.none]}`).join('; ')}.`
          : `${collide.join(' and ')} collide: the one asks for at least {low}, the other allows at most {high}.`
      return {
        item: unit,
        about: ['brief.goals', ...about(unit)],
        holds: !empty,
        rests,
        says,
        slots: Object.assign({ present, low, high }, ...buys.map(b => b.slots)),
        remedies: empty
          ? [
              {
                do: 'act',
                says: hopeless.length
                  ? `Relax ${hopeless.length > 1 ? 'these goals' : 'that goal'}, or choose ${[...new Set(hopeless.map(g => cure[g.none]))].join(' and ')}.`
                  : 'Relax one of the two, choose a motor with more torque or a higher top speed, or keep two gears.',
              },
              ...buys.map(b => ({ do: 'act' as const, says: b.says })),
            ]
          : [],
      }
    })
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'brief.goals.top-speed.speed', now: '165 km/h' }], item: 'main' },
})
