import type { Goal } from '../../model/brief.ts'
import type { Model } from '../../model/model.ts'
import { acceleration } from '../../studies/drive/acceleration.ts'
import { climb } from '../../studies/drive/climb.ts'
import { heldSpeed } from '../../studies/drive/held-speed.ts'
import { topSpeed } from '../../studies/drive/top-speed.ts'
import { isGaps } from '../../studies/study.ts'
import { type Gap, standard, type Value } from '../../working/value.ts'
import { doesNotApply, type Judgement, rule } from '../rule.ts'
import { anyToWindow } from './by-window.ts'

const GOAL = { work: 'practice', place: 'a goal of the brief' } as const
const wanted = (m: Model, kind: Goal['kind']): readonly string[] =>
  Object.entries(m.brief.goals).flatMap(([name, g]) => (g?.kind === kind ? [name] : []))
const waiting = (item: string, about: readonly string[], missing: { readonly gaps: readonly Gap[] } | undefined): Judgement => ({
  item,
  about,
  says: 'It cannot be said yet whether {item} is met.',
  missing: missing ?? { gaps: [] },
})
/** What a speed ends at, in words. */
const whatEnds = ({ binding, weak }: { readonly binding: string; readonly weak: boolean }): string =>
  binding.startsWith('motor')
    ? 'the motor is at its top speed'
    : binding.startsWith('gearbox')
      ? 'the gearbox input is at the speed it is rated for'
      : binding === 'tyre'
        ? 'the speed rating of the tyre ends there'
        : weak
          ? 'the battery gives no more'
          : 'pull and road load meet'

export const topSpeedGoal = rule({
  id: 'top-speed',
  title: 'Reaches the top speed wanted and holds it',
  stage: 'drive',
  harm: 'S1',
  hazards: [],
  source: GOAL,
  judgements: (m, ask) => {
    const names = wanted(m, 'top speed')
    if (names.length === 0) return doesNotApply('the brief asks for no top speed', ['brief.goals'])
    const answer = ask(topSpeed)
    return names.map((item): Judgement => {
      const about = [`brief.goals.${item}.speed`, 'drive.units'],
        a = isGaps(answer) ? answer : answer.goals[item]
      if (!a || isGaps(a)) return waiting(item, about, a)
      const why = whatEnds(a)
      return {
        item,
        about,
        found: a.speed,
        side: 'at least',
        limit: a.goal,
        says: `It reaches {found}, where ${why}; the brief asks for {limit}.`,
        remedies: [
          ...anyToWindow(m, ask),
          {
            do: 'act',
            says:
              a.binding === 'tyre'
                ? 'Tyres of a higher speed rating.'
                : a.weak
                  ? 'More modules side by side, cells that give more current for longer, or less drag.'
                  : a.binding.includes('pull')
                    ? 'A motor with more continuous power, or less drag.'
                    : 'A taller total ratio, or a lower top speed in the brief.',
          },
        ],
      }
    })
  },
  spoil: { sample: 'wren', edits: [{ path: 'drive.units.front.reduction', now: '12' }], item: 'top-speed' },
})

export const accelerationGoal = rule({
  id: 'acceleration',
  title: 'Gathers speed as quickly as wanted',
  stage: 'drive',
  harm: 'S1',
  hazards: [],
  source: GOAL,
  judgements: (m, ask) => {
    const names = wanted(m, 'acceleration')
    if (names.length === 0) return doesNotApply('the brief asks for no time', ['brief.goals'])
    const answer = ask(acceleration)
    return names.map((item): Judgement => {
      const about = [`brief.goals.${item}.within`, 'drive.units'],
        a = isGaps(answer) ? answer : answer.goals[item]
      if (!a || isGaps(a)) return waiting(item, about, a)
      return {
        item,
        about,
        found: a.time,
        side: 'at most',
        limit: a.goal,
        says: !Number.isFinite(a.time.value)
          ? 'It never gets to {to}: the motor is at its top speed, or the pull is used up. The brief asks for {limit}.'
          : a.withBattery
            ? 'It takes {found} from half charge; the brief asks for {limit}.'
            : 'It takes {found} if the battery gives all the motors ask for, which is not known yet; the brief asks for {limit}.',
        slots: { to: a.to },
        remedies: [
          ...anyToWindow(m, ask),
          {
            do: 'act',
            says: Number.isFinite(a.time.value)
              ? 'A shorter total ratio, more torque, less mass, or more time.'
              : 'Another total ratio, or a motor with a higher top speed or more power.',
          },
        ],
      }
    })
  },
  spoil: { sample: 'lapwing', edits: [], item: 'sprint' },
})

const WHOLE = standard('whole-limit', 'limit of the winding', 'θ', 1, '1', { work: 'definition', place: '1 at the limit' })
export const peakLasts = rule({
  id: 'peak-lasts',
  title: 'The peak rating lasts through every run wanted',
  stage: 'drive',
  harm: 'S1',
  hazards: [],
  source: { work: 'practice', place: 'ratings for a time' },
  judgements: (m, ask) => {
    const names = wanted(m, 'acceleration')
    if (names.length === 0) return doesNotApply('the brief asks for no time', ['brief.goals'])
    const answer = ask(acceleration)
    return names.map((item): Judgement => {
      const about = [`brief.goals.${item}`, ...Object.keys(m.drive.units).map(u => `drive.units.${u}.motor.peak-time`)],
        a = isGaps(answer) ? answer : answer.goals[item]
      if (!a || isGaps(a)) return waiting(item, about, a)
      return {
        item,
        about,
        found: a.warmest,
        side: 'at most',
        limit: WHOLE as Value,
        says: 'At the end of {item} the warmest winding is at {found} of the way from coolant to its limit.',
        remedies: [{ do: 'act', says: 'A motor whose peak lasts longer, or a shorter ratio, which asks less torque.' }],
      }
    })
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'drive.units.main.motor.peak-time', now: '6 s' }], item: 'sprint' },
})

export const climbGoal = rule({
  id: 'climb',
  title: 'Climbs as wanted within the continuous rating',
  stage: 'drive',
  harm: 'S2',
  hazards: [],
  source: GOAL,
  judgements: (m, ask) => {
    const names = wanted(m, 'climb')
    if (names.length === 0) return doesNotApply('the brief asks for no climb', ['brief.goals'])
    const answer = ask(climb)
    return names.map((item): Judgement => {
      const about = [`brief.goals.${item}.slope`, `brief.goals.${item}.speed`, 'drive.units'],
        a = isGaps(answer) ? answer : answer.goals[item]
      if (!a || isGaps(a)) return waiting(item, about, a)
      const tooFast = a.speed.value > a.fastest.value,
        weak = a.weak
      return {
        item,
        about,
        found: a.slope,
        side: 'at least',
        limit: a.goal,
        says: tooFast
          ? a.binding.startsWith('motor')
            ? 'It cannot climb at {speed}: from {fastest} on the motor turns faster than it may. The brief asks for {limit}.'
            : 'It cannot climb at {speed}: from {fastest} on the gearbox input turns faster than it is rated for. The brief asks for {limit}.'
          : weak
            ? 'At {speed} it holds {found} for as long as asked, for the battery gives no more; the brief asks for {limit}. On it the winding would settle at {warm}; its limit is {warmest}.'
            : 'At {speed} the motors hold {found} for as long as asked; the brief asks for {limit}. On it the winding would settle at {warm}; its limit is {warmest}.',
        slots: { speed: a.speed, fastest: a.fastest, warm: a.warmest, warmest: a.limit },
        remedies: [
          ...anyToWindow(m, ask),
          {
            do: 'act',
            says: tooFast
              ? 'A taller total ratio, or a slower climb.'
              : weak
                ? 'More modules side by side, cells that give more current for longer, or a slower climb.'
                : 'A shorter total ratio, a motor with more continuous torque, or a slower climb.',
          },
        ],
      }
    })
  },
  spoil: { sample: 'lapwing', edits: [], item: 'pass-climb' },
})

export const steadySpeedGoal = rule({
  id: 'steady-speed',
  title: 'Holds the speeds wanted for as long as wanted',
  stage: 'drive',
  harm: 'S1',
  hazards: [],
  source: GOAL,
  judgements: (m, ask) => {
    const names = wanted(m, 'steady speed')
    if (names.length === 0) return doesNotApply('the brief asks for no speed to be held', ['brief.goals'])
    const answer = ask(heldSpeed)
    return names.map((item): Judgement => {
      const about = [`brief.goals.${item}.speed`, 'drive.units'],
        a = isGaps(answer) ? answer : answer.goals[item]
      if (!a || isGaps(a)) return waiting(item, about, a)
      const why = whatEnds(a)
      return {
        item,
        about,
        found: a.speed,
        side: 'at least',
        limit: a.goal,
        says: `${a.duration ? 'For {duration}' : 'For as long as the road goes'} it holds {found} on the level, where ${why}; the brief asks for {limit}.`,
        slots: a.duration ? { duration: a.duration } : {},
        remedies: [
          ...anyToWindow(m, ask),
          {
            do: 'act',
            says:
              a.binding !== 'pull'
                ? 'A taller total ratio, or a lower speed in the brief.'
                : a.weak
                  ? 'More modules side by side, cells that give more current for longer, or a lower speed in the brief.'
                  : 'A motor with more continuous power, less drag, a smaller trailer, or a lower speed in the brief.',
          },
        ],
      }
    })
  },
  spoil: {
    sample: 'otter',
    edits: ['front', 'rear'].flatMap(unit => [
      { path: `drive.units.${unit}.motor.continuous-power`, now: '6 kW' },
      { path: `drive.units.${unit}.motor.continuous-torque`, now: '20 Nm' },
    ]),
    item: 'caravan-cruise',
  },
})
