import type { DriveUnit } from '../../model/drive.ts'
import type { Model } from '../../model/model.ts'
import { type Into, type KeptParts, keptParts } from '../../studies/donor/kept-parts.ts'
import { oldEngine } from '../../studies/donor/old-engine.ts'
import { speedGoals, wantedSpeeds } from '../../studies/drive/wanted-speed.ts'
import { type Ask, from, type Gaps, isGaps } from '../../studies/study.ts'
import { type Field, type Gap, isGap, type Value } from '../../working/value.ts'
import { doesNotApply, type Judgement, type Remedy, rule } from '../rule.ts'

const KEPT = { work: 'practice', place: 'kept parts against their rating or their old worst load' } as const

/** Limits the motor so that a kept part sees no more than it stands. */
function limited(m: Model, unit: string, into: Into, limit: Field | Gap | Gaps | Value): readonly Remedy[] {
  const otherwise: Remedy = { do: 'act', says: 'A taller gear ahead of the part, a stronger part, or a motor with less torque.' }
  if (isGap(limit) || isGaps(limit) || !m.drive.units[unit]) return [otherwise]
  const value = Math.floor(limit.value / into.ratio + 1e-9)
  return [
    {
      do: 'set',
      says: 'Limit the torque of the motor in software and seal the limit.',
      sets: [
        { path: `drive.units.${unit}.torque-limit`, to: { value, kind: 'torque' } },
        { path: `drive.units.${unit}.limit-sealed`, to: { word: 'yes' } },
      ],
    },
    otherwise,
  ]
}

/** Judges each unit that keeps the part in question. */
function each(
  m: Model,
  ask: Ask,
  keeps: (u: DriveUnit) => boolean,
  reason: string,
  judgement: (name: string, k: KeptParts) => Judgement | undefined,
): readonly Judgement[] {
  const units = Object.entries(m.drive.units).filter(([, u]) => keeps(u))
  if (units.length === 0) return doesNotApply(reason, ['drive.units'])
  return units.flatMap(([name]): readonly Judgement[] => {
    const k = from(ask(keptParts), a => (a.units[name] as KeptParts | Gaps | undefined) ?? { gaps: [] })
    if (isGaps(k))
      return [{ item: name, about: [`drive.units.${name}`], says: 'What this part has to take cannot be said yet.', missing: k }]
    const judged = judgement(name, k)
    return judged ? [judged] : []
  })
}
const keptBox = (u: DriveUnit): boolean => !isGap(u.through) && u.through.value === 'kept gearbox'
const throughTransfer = (u: DriveUnit): boolean =>
  !isGap(u.through) && u.through.value !== 'drive unit' && !isGap(u.transfer) && u.transfer.value !== 'none'
const keptAxle = (u: DriveUnit): boolean => !isGap(u.through) && u.through.value !== 'drive unit' && isGap(u.finalDrive)

export const gearboxTorque = rule({
  id: 'gearbox-torque',
  title: 'The kept gearbox stands the torque of the motor',
  stage: 'donor',
  harm: 'S2',
  hazards: [],
  source: KEPT,
  judgements: (m, ask) =>
    each(m, ask, keptBox, 'no gearbox is kept', (item, { box }) => {
      if (!box) return undefined
      const limit = m.donor.gearbox.inputTorque,
        old = m.donor.engine.torque
      return {
        item,
        about: ['donor.gearbox.input-torque', `drive.units.${item}.motor.peak-torque`, `drive.units.${item}.torque-limit`],
        found: box.torque,
        side: 'at most',
        limit,
        says: isGap(old)
          ? 'The motor puts {found} into the gearbox, which is rated for {limit}.'
          : 'The motor puts {found} into the gearbox, which is rated for {limit}; the old engine gave {old}.',
        slots: { old: isGap(old) ? undefined : old },
        remedies: isGap(limit)
          ? [
              {
                do: 'measure',
                says: 'Find out what the gearbox is rated for: data of the donor car, or of the strongest engine it was sold with.',
                path: 'donor.gearbox.input-torque',
              },
            ]
          : limited(m, item, box, limit),
      }
    }),
  spoil: { sample: 'lapwing', edits: [{ path: 'donor.gearbox.input-torque', now: '200 Nm' }], item: 'main' },
})

export const gearboxSpeed = rule({
  id: 'gearbox-speed',
  title: 'The kept gearbox turns no faster than it is rated for',
  stage: 'donor',
  harm: 'S2',
  hazards: [],
  source: KEPT,
  judgements: (m, ask) => {
    const units = Object.entries(m.drive.units).filter(([, u]) => keptBox(u)),
      goals = speedGoals(m)
    if (units.length === 0) return doesNotApply('no gearbox is kept', ['drive.units'])
    if (goals.length === 0) return doesNotApply('the brief asks for no speed', ['brief.goals'])
    const answer = ask(wantedSpeeds)
    return units.flatMap(([unit]) =>
      goals.map(({ goal }): Judgement => {
        const item = `${unit} ${goal}`,
          about = ['donor.gearbox.input-speed', `drive.units.${unit}.gear`, `brief.goals.${goal}`],
          a = isGaps(answer) ? answer : (answer.at[item] ?? { gaps: [] })
        if (isGaps(a)) return { item, about, says: 'How fast its input turns cannot be said yet.', missing: a }
        return {
          item,
          about,
          found: a.motor,
          side: 'at most',
          limit: m.donor.gearbox.inputSpeed,
          says: 'At the speed wanted its input turns at {found}; it is rated for {limit}.',
          remedies: [{ do: 'act', says: 'A taller gear, or less speed.' }],
        }
      }),
    )
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'drive.units.main.gear', now: 'second' }], item: 'main top-speed' },
})

export const transferCaseTorque = rule({
  id: 'transfer-case-torque',
  title: 'The kept transfer case stands what comes into it',
  stage: 'donor',
  harm: 'S2',
  hazards: [],
  source: KEPT,
  judgements: (m, ask) =>
    each(m, ask, throughTransfer, 'no transfer case is kept', (item, { transfer }) => {
      if (!transfer) return undefined
      const limit = isGap(m.donor.transferCase.inputTorque) ? from(ask(oldEngine), o => o.intoTransfer) : m.donor.transferCase.inputTorque
      return {
        item,
        about: ['donor.transfer-case.input-torque', `drive.units.${item}.reduction`],
        found: transfer.torque,
        side: 'at most',
        limit,
        says: isGap(m.donor.transferCase.inputTorque)
          ? 'It takes in {found}; the old engine put in {limit} at most.'
          : 'It takes in {found} and is rated for {limit}.',
        remedies: limited(m, item, transfer, limit),
      }
    }),
  spoil: { sample: 'badger', edits: [{ path: 'drive.units.main.reduction', now: '3.1' }], item: 'main' },
})

export const axleTorque = rule({
  id: 'axle-torque',
  title: 'The kept axle stands what comes into it',
  stage: 'donor',
  harm: 'S2',
  hazards: [],
  source: KEPT,
  judgements: (m, ask) =>
    each(m, ask, keptAxle, 'no axle of the donor car is driven through', (item, { axle }) => {
      if (!axle) return undefined
      const rated = !isGap(m.donor.finalDriveTorque),
        limit = rated ? m.donor.finalDriveTorque : from(ask(oldEngine), o => o.intoAxle)
      return {
        item,
        about: ['donor.final-drive-torque', 'donor.gearbox.gears', 'donor.engine.torque', `drive.units.${item}`],
        found: axle.torque,
        side: 'at most',
        limit,
        says: rated ? 'It takes in {found} and is rated for {limit}.' : 'It takes in {found}; in first gear the old engine put in {limit}.',
        remedies: limited(m, item, axle, limit),
      }
    }),
  spoil: { sample: 'badger', edits: [{ path: 'donor.engine.torque', now: '150 Nm' }], item: 'main' },
})
