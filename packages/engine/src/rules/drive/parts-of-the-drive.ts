import type { DriveUnit } from '../../model/drive.ts'
import type { Model } from '../../model/model.ts'
import { type Envelope, envelopes } from '../../studies/drive/envelopes.ts'
import { partLoads } from '../../studies/drive/part-loads.ts'
import { type Ask, type Gaps, isGaps } from '../../studies/study.ts'
import { isGap, standard, type Value } from '../../working/value.ts'
import { doesNotApply, type Judgement, type Remedy, rule } from '../rule.ts'

const units = (m: Model, through: readonly string[]): readonly (readonly [string, DriveUnit])[] =>
  Object.entries(m.drive.units).filter(([, u]) => !isGap(u.through) && through.includes(u.through.value))
function peakOf(ask: Ask, unit: string): Value | Gaps {
  const answer = ask(envelopes),
    e = isGaps(answer) ? answer : (answer.units[unit] as Envelope | Gaps)
  return isGaps(e) ? e : e.peakTorque
}
const limitedTo = (unit: string, value: number, says: string): Remedy => ({
  do: 'set',
  says,
  sets: [{ path: `drive.units.${unit}.torque-limit`, to: { value: Math.floor(value * 10) / 10, kind: 'torque' } }],
})

export const couplerTorque = rule({
  id: 'coupler-torque',
  title: 'The coupler takes the motor’s peak torque',
  stage: 'drive',
  harm: 'S2',
  hazards: [],
  source: { work: 'practice', place: 'couplers and hubs are rated for a torque' },
  judgements: (m, ask) => {
    const list = units(m, ['kept gearbox', 'single reduction'])
    if (list.length === 0) return doesNotApply('drive units need no coupler', ['drive.units'])
    return list.map(
      ([item, u]): Judgement => ({
        item,
        about: [`drive.units.${item}.coupler-torque`],
        found: peakOf(ask, item),
        side: 'at most',
        limit: u.couplerTorque,
        says: 'The motor gives {found}; the coupler is rated for {limit}.',
        remedies: isGap(u.couplerTorque)
          ? [{ do: 'measure', says: 'Ask its maker what it is rated for.', path: `drive.units.${item}.coupler-torque` }]
          : [
              limitedTo(item, u.couplerTorque.value, 'Limit the torque in software to what the coupler is rated for.'),
              { do: 'act', says: 'A stronger coupler.' },
            ],
      }),
    )
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'drive.units.main.coupler-torque', now: '200 Nm' }], item: 'main' },
})

export const halfShaftTorque = rule({
  id: 'half-shaft-torque',
  title: 'Half-shafts take what comes through before the tyres slip',
  stage: 'drive',
  harm: 'S2',
  hazards: [],
  source: { work: 'practice', place: 'half-shafts made from two are as strong as their joint' },
  judgements: (m, ask) => {
    const list = units(m, ['drive unit'])
    if (list.length === 0) return doesNotApply('no drive unit with half-shafts of its own', ['drive.units'])
    const answer = ask(partLoads)
    return list.map(([item, u]): Judgement => {
      const found = isGaps(answer) ? answer : (answer.halfShafts[item] ?? { gaps: [] })
      return {
        item,
        about: [`drive.units.${item}.shaft-torque`],
        found,
        side: 'at most',
        limit: u.shaftTorque,
        says: 'One half-shaft sees {found}; it is rated for {limit}.',
        remedies: isGap(u.shaftTorque)
          ? [{ do: 'measure', says: 'Ask who makes or joins them what they are rated for.', path: `drive.units.${item}.shaft-torque` }]
          : [{ do: 'act', says: 'Stronger half-shafts, or a torque limit in software.' }],
      }
    })
  },
  spoil: { sample: 'wren', edits: [{ path: 'drive.units.front.shaft-torque', now: '500 Nm' }], item: 'front' },
})

export const inverterLimits = rule({
  id: 'inverter-limits',
  title: 'The torque limit for the inverter is decided and within the motor’s own',
  stage: 'drive',
  harm: 'S2',
  hazards: ['F10'],
  source: { work: 'practice', place: 'parameter audit against a table of limits' },
  judgements: (m, ask) => {
    const list = Object.entries(m.drive.units)
    if (list.length === 0) return doesNotApply('no drive unit yet', ['drive.units'])
    const answer = ask(envelopes)
    return list.map(([item, u]): Judgement => {
      const e = isGaps(answer) ? answer : (answer.units[item] as Envelope | Gaps)
      return {
        item,
        about: [`drive.units.${item}.torque-limit`],
        found: u.torqueLimit,
        side: 'at most',
        limit: isGaps(e) ? e : e.motorTorque,
        says: 'The inverter is to be set to {found}; the motor’s peak is {limit}.',
        remedies: isGaps(e) ? [] : [limitedTo(item, e.motorTorque.value, 'Set the limit to the motor’s peak torque.')],
      }
    })
  },
  spoil: { sample: 'wren', edits: [{ path: 'drive.units.front.torque-limit', now: '260 Nm' }], item: 'front' },
})

const APART = standard('stated-figures-apart', 'stated figures of a motor apart', 'ε', 0.15, '1', {
  work: 'practice',
  place: 'peak torque times base speed against peak power',
  mark: 'common practice',
})
export const motorFiguresAgree = rule({
  id: 'motor-figures-agree',
  title: 'Stated peak torque, peak power and base speed of a motor fit together',
  stage: 'drive',
  harm: 'S1',
  hazards: [],
  source: { work: 'practice', place: 'breakers’ lists mix figures of several versions' },
  judgements: (_, ask) => {
    const answer = ask(partLoads)
    if (isGaps(answer)) return [{ about: ['drive.units'], says: 'The stated figures cannot be compared yet.', missing: answer }]
    const list = Object.entries(answer.apart)
    if (list.length === 0) return doesNotApply('no motor has all three stated', ['drive.units'])
    return list.map(
      ([item, found]): Judgement => ({
        item,
        about: [`drive.units.${item}.motor`],
        found,
        side: 'at most',
        limit: APART,
        says: 'Torque times base speed is {found} away from the stated power; up to {limit} is rounding and voltage.',
        remedies: [{ do: 'measure', says: 'Look up the datasheet of exactly this version.', path: `drive.units.${item}.motor.base-speed` }],
      }),
    )
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'drive.units.main.motor.base-speed', now: '2800 rpm' }], item: 'main' },
})

export const reversedRotation = rule({
  id: 'reversed-rotation',
  title: 'A unit that turns against its maker’s sense has its lubrication asked about',
  stage: 'drive',
  harm: 'S2',
  hazards: ['E8'],
  source: { work: 'practice', place: 'gears and bearings of a turned-round drive unit run dry' },
  judgements: m => {
    const list = units(m, ['drive unit', 'single reduction'])
    if (list.length === 0) return doesNotApply('no gears that came with the motor', ['drive.units'])
    return list.map(([item, u]): Judgement => {
      const about = [`drive.units.${item}.rotation`, `drive.units.${item}.reversed-oiled`]
      if (isGap(u.rotation)) return { item, about, says: 'In which sense it turns is not decided.', missing: u.rotation }
      if (u.rotation.value !== 'reversed')
        return { item, about, holds: true, rests: [u.rotation], says: 'It turns as its maker meant it to.' }
      if (isGap(u.reversedOiled)) return { item, about, says: 'It turns in reverse; nobody has asked about oil.', missing: u.reversedOiled }
      return {
        item,
        about,
        holds: u.reversedOiled.value === 'yes',
        rests: [u.rotation, u.reversedOiled],
        says:
          u.reversedOiled.value === 'yes'
            ? 'It turns in reverse; its lubrication was asked about and found right.'
            : 'It turns in reverse, and its lubrication does not suit that.',
        remedies: [{ do: 'act', says: 'Turn the unit round or swap sides, add an oil pump, or use another unit.' }],
      }
    })
  },
  spoil: {
    sample: 'wren',
    edits: [
      { path: 'drive.units.front.rotation', now: 'reversed' },
      { path: 'drive.units.front.reversed-oiled', now: 'no' },
    ],
    item: 'front',
  },
})
