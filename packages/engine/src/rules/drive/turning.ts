import type { Model } from '../../model/model.ts'
import { speedGoals, wantedSpeeds } from '../../studies/drive/wanted-speed.ts'
import { type Gaps, isGaps } from '../../studies/study.ts'
import { doesNotApply, type Judgement, rule } from '../rule.ts'
import { toWindow, windows } from './by-window.ts'

const pairs = (m: Model): readonly { unit: string; goal: string }[] =>
  speedGoals(m).flatMap(({ goal }) => Object.keys(m.drive.units).map(unit => ({ unit, goal })))
const waiting = (item: string, about: readonly string[], missing: Gaps | undefined): Judgement => ({
  item,
  about,
  says: 'How fast it turns cannot be said yet.',
  missing: missing ?? { gaps: [] },
})

export const motorOverSpeed = rule({
  id: 'motor-over-speed',
  title: 'The motor does not turn too fast at any speed wanted',
  stage: 'drive',
  harm: 'S2',
  hazards: [],
  source: { work: 'practice', place: 'rotors and bearings burst or seize above their rated speed' },
  judgements: (m, ask) => {
    const list = pairs(m)
    if (list.length === 0) return doesNotApply('the brief asks for no speed', ['brief.goals'])
    const answer = ask(wantedSpeeds),
      all = windows(ask)
    return list.map(({ unit, goal }): Judgement => {
      const item = `${unit} ${goal}`,
        about = [`brief.goals.${goal}`, `drive.units.${unit}`],
        a = isGaps(answer) ? answer : answer.at[item]
      if (!a || isGaps(a)) return waiting(item, about, a)
      const window = isGaps(all) ? undefined : all.find(w => w.unit === unit)
      return {
        item,
        about,
        found: a.motor,
        side: 'at most',
        limit: m.drive.units[unit]?.motor.topSpeed ?? { gaps: [] },
        says: 'At the speed wanted the motor turns at {found}; its top speed is {limit}.',
        remedies: [
          ...(window ? toWindow(m, window) : []),
          { do: 'act', says: 'A taller ratio, or a limit of road speed in the vehicle control unit.' },
        ],
      }
    })
  },
  spoil: { sample: 'wren', edits: [{ path: 'brief.goals.top-speed.speed', now: '130 km/h' }], item: 'front top-speed' },
})

export const propshaftSpeed = rule({
  id: 'propshaft-speed',
  title: 'The propshaft turns no faster than it did',
  stage: 'drive',
  harm: 'S2',
  hazards: ['E11'],
  source: { work: 'practice', place: 'a propshaft that turns faster than before may whip' },
  judgements: (m, ask) => {
    const list = pairs(m).filter(({ unit, goal }) => {
      if (m.brief.goals[goal]?.kind !== 'top speed') return false
      const t = m.drive.units[unit]?.through
      return !(t && 'value' in t && t.value === 'drive unit')
    })
    if (list.length === 0)
      return doesNotApply('no unit drives through a propshaft, or no top speed is asked for', ['drive.units', 'brief.goals'])
    const answer = ask(wantedSpeeds)
    return list.map(({ unit, goal }): Judgement => {
      const item = `${unit} ${goal}`,
        about = [`drive.units.${unit}.final-drive`, 'donor.final-drive', 'donor.top-speed'],
        a = isGaps(answer) ? answer : answer.at[item]
      if (!a || isGaps(a)) return waiting(item, about, a)
      if (!a.propshaft || isGaps(a.propshaft)) return waiting(item, about, a.propshaft)
      return {
        item,
        about,
        found: a.propshaft.now,
        side: 'at most',
        limit: a.propshaft.before,
        says: 'At the speed wanted the propshaft turns at {found}; in the donor car it turned at {limit} at most.',
        remedies: [{ do: 'act', says: 'Work out its critical speed; a shorter or two-piece shaft, balanced, or a taller axle ratio.' }],
      }
    })
  },
  spoil: { sample: 'badger', edits: [{ path: 'drive.units.main.final-drive', now: '6.1' }], item: 'main top-speed' },
})
