import type { Model } from '../../model/model.ts'
import { recovery } from '../../studies/drive/recovery.ts'
import type { PackFigures } from '../../studies/pack/pack-figures.ts'
import { packModel } from '../../studies/pack/pack-model.ts'
import { type Ask, type Gaps, isGaps } from '../../studies/study.ts'
import { type TripAnswer, trips } from '../../studies/trips/trips.ts'
import { isGap, type Value } from '../../working/value.ts'
import { doesNotApply, type Judgement, rule } from '../rule.ts'
import { HUNDREDTH } from './keeps-up.ts'

/** One judgement for each trip of the file. */
function eachTrip(m: Model, ask: Ask, judged: (item: string, t: TripAnswer) => Judgement): readonly Judgement[] {
  const names = Object.keys(m.trips.named)
  if (names.length === 0) return doesNotApply('no trip is named yet', ['trips.named'])
  const answer = ask(trips)
  return names.map(item => {
    const t = isGaps(answer) ? answer : answer.trips[item]
    return !t || isGaps(t)
      ? { item, about: [`trips.named.${item}`], says: 'What {item} asks of the car cannot be said yet.', missing: t ?? { gaps: [] } }
      : judged(item, t)
  })
}

export const followsItsTrips = rule({
  id: 'follows-its-trips',
  title: 'Keeps up with the trips it is judged by',
  stage: 'drive',
  harm: 'S1',
  hazards: [],
  source: { work: 'practice', place: 'a trip the car cannot drive says little about its range' },
  judgements: (m, ask) =>
    eachTrip(m, ask, (item, { figures: f, missed, gear }) => ({
      item,
      about: [`trips.named.${item}`, 'drive.units'],
      found: missed,
      side: 'at most',
      limit: HUNDREDTH,
      says:
        (missed.value > 0
          ? 'On {item} it falls {missed} short of the speeds asked, and is slow for {slow}.'
          : 'On {item} it keeps the speeds asked.') + (gear ? ` The whole trip is reckoned in ${gear} gear.` : ''),
      slots: { missed: f['distance-missed'], slow: f['time-slow'] },
      remedies: [{ do: 'act', says: 'More power, another ratio, or a trip this car is meant for.' }],
    })),
  spoil: { sample: 'lapwing', edits: [{ path: 'drive.units.main.power-limit', now: '15 kW' }], item: 'mixed' },
})

export const notThrottled = rule({
  id: 'not-throttled-by-heat',
  title: 'No trip makes a motor so warm that it is throttled',
  stage: 'drive',
  harm: 'S2',
  hazards: [],
  source: { work: 'practice', place: 'continuous rating below the need of the road' },
  judgements: (m, ask) =>
    eachTrip(m, ask, (item, { figures: f, throttledFrom }) => ({
      item,
      about: [`trips.named.${item}`, 'drive.units'],
      found: f['hottest-winding'],
      side: 'at most',
      limit: throttledFrom,
      says: 'On {item} the hottest winding reaches {found}; from {limit} on torque is taken back. {over} of the trip lie above the continuous rating.',
      slots: { over: f['above-continuous'] },
      remedies: [{ do: 'act', says: 'Another ratio, a motor with more continuous torque, cooler coolant, or a slower trip.' }],
    })),
  spoil: {
    sample: 'lapwing',
    edits: [
      { path: 'drive.units.main.motor.continuous-torque', now: '35 Nm' },
      { path: 'drive.units.main.motor.continuous-power', now: '15 kW' },
    ],
    item: 'mixed',
  },
})

const pick = (ask: Ask, figure: (p: PackFigures) => Value): Value | Gaps => {
  const pack = ask(packModel)
  return isGaps(pack) ? pack : figure(pack)
}
export const cellCurrentOnTrips = rule({
  id: 'cell-current-on-trips',
  title: 'Half an hour of any trip stays within the continuous current of the cells',
  stage: 'pack',
  harm: 'S2',
  hazards: [],
  source: { work: 'practice', place: 'continuous current against the rms of half an hour' },
  judgements: (m, ask) =>
    eachTrip(m, ask, (item, { figures: f }) => ({
      item,
      about: [`trips.named.${item}`, 'pack.module.continuous-current'],
      found: f['rms-30-min'],
      side: 'at most',
      limit: pick(ask, p => p.continuousCurrent),
      says: 'On {item} half an hour takes {found} rms; the cells carry {limit} for ever.',
      remedies: [{ do: 'act', says: 'More cells in parallel, or a slower trip.' }],
    })),
  spoil: { sample: 'lapwing', edits: [{ path: 'pack.module.continuous-current', now: '10 A' }], item: 'mixed' },
})

export const recoveryWithinCells = rule({
  id: 'recovery-within-cells',
  title: 'Recovery asks no more charging current than warm cells take',
  stage: 'pack',
  harm: 'S2',
  hazards: [],
  source: { work: 'practice', place: 'recovery is charging: cell limit, nothing when full or cold' },
  judgements: (m, ask) => {
    const about = ['drive.regeneration.power', 'pack.module.charge-current'],
      answer = ask(trips)
    if (!m.drive.regeneration.given) return doesNotApply('no recovery is planned yet', about)
    const limit = isGaps(answer) ? answer : answer.recovery,
      set = m.drive.regeneration.power,
      back = ask(recovery),
      atBattery = isGaps(back) ? back : back.atBattery
    if (isGaps(limit)) return [{ about, says: 'What the cells take cannot be said yet.', missing: limit }]
    return [
      {
        about,
        // Where the motors’ own figures are not known, what it is set to counts as if they gave it.
        found: isGaps(atBattery) ? set : atBattery,
        side: 'at most',
        limit,
        says: 'Recovery is set to {set} and reaches the battery with {found} at most; warm cells take {limit}. Full or cold they take less, and the BMS must lower it.',
        slots: { set: isGap(set) ? undefined : set },
        remedies: [
          {
            do: 'set',
            says: 'Set recovery to what warm cells take.',
            sets: [{ path: 'drive.regeneration.power', to: { value: Math.floor(limit.value / 1000) * 1000, kind: 'power' } }],
          },
        ],
      },
    ]
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'drive.regeneration.power', now: '80 kW' }] },
})
