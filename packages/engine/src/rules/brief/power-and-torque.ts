import type { Model } from '../../model/model.ts'
import { againstDonor, type ComparedPeaks } from '../../studies/brief/against-donor.ts'
import { from, type Gaps, isGaps } from '../../studies/study.ts'
import { type Gap, isGap } from '../../working/value.ts'
import { doesNotApply, rule } from '../rule.ts'
import type { DrivelinePlan } from '../sets/feasibility.ts'
import * as gateB from '../sets/feasibility.ts'
import { bySet, inWords, onEnds, silent, waiting } from './by-set.ts'
import { powerLimitedTo, torqueLimitedTo } from './limit-remedy.ts'

const SOURCE = { work: 'rule-set', place: 'power and torque before and after' } as const
const numbers = (p: ComparedPeaks) => ({ peaks: p.peaks.map(v => v.value), limited: p.now.value, before: p.before.value })
const pathsOf = (m: Model, key: string): readonly string[] => Object.keys(m.drive.units).map(name => `drive.units.${name}.${key}`)

/** Whether everything behind the engine is still the donor's, as a law that speaks of it means it. */
export function driveline(m: Model): DrivelinePlan | Gap {
  const units = Object.values(m.drive.units)
  const unknown = units.map(u => u.through).find(isGap)
  if (unknown) return unknown
  const kept = units.every(u => !isGap(u.through) && u.through.value === 'kept gearbox' && isGap(u.finalDrive))
  return {
    drivelineKept: units.length > 0 && kept,
    gearLocked: units.some(u => !isGap(u.shifting) && u.shifting.value === 'held in one gear'),
  }
}

/** Why more power than common practice holds good may still pass where the law says nothing. */
const agreed = (m: Model, fellBack: boolean): string | undefined =>
  fellBack && !isGap(m.brief.asked.inspector)
    ? 'the law says nothing and the inspector agreed in writing; brakes and driveline still have to suit it'
    : undefined

export const powerAgainstDonor = rule({
  id: 'power-against-donor',
  title: 'Peak power lies within what the rule set allows against the old engine',
  stage: 'brief',
  harm: 'S2',
  hazards: [],
  source: SOURCE,
  judgements: bySet((limits, m, ask) => {
    const about = ['brief.rules', 'donor.engine.power', ...pathsOf(m, 'motor.peak-power')]
    const power: ComparedPeaks | Gaps = from(ask(againstDonor), a => a.power)
    if (isGaps(power)) return [waiting(about, power)]
    const plan = driveline(m)
    if (isGap(plan)) return [waiting(about, plan)]
    const { peaks, limited, before } = numbers(power)
    const answer = gateB.powerRatio(limits, { ...plan, donorPower: before, motorPowers: peaks, limitedPower: limited })
    if (!answer) return silent(about)
    if (answer.kind === 'stated') return [inWords(answer, about)]
    const judged = (c: gateB.Comparison, eased?: string) =>
      onEnds(c, {
        about,
        found: power.ratio,
        shows: 'ratio',
        slots: { now: power.now, before: power.before },
        upper: {
          says: 'Peak power is {now}, {found} times the {before} of the old engine; the rule set allows at most {limit}.',
          remedies: powerLimitedTo(m, c.quantity?.high ?? 0),
        },
        lower: {
          says: 'Peak power is {now}, {found} times the {before} of the old engine; the rule set asks for at least {limit}.',
          remedies: [{ do: 'act', says: 'A stronger motor, or a higher limit.' }],
        },
        eased,
      })
    if (answer.kind === 'compared') return judged(answer, agreed(m, answer.fellBack))
    const reason = 'the driveline is kept: this rule set then looks at torque, not at power'
    if (!answer.otherReading) return doesNotApply(reason, about)
    return judged(answer.otherReading, 'it counts only if the gearbox held in one gear is taken for a changed driveline')
  }),
  spoil: { sample: 'lapwing', edits: [{ path: 'brief.rules', now: 'be' }], item: 'upper end' },
})

export const torqueAgainstDonor = rule({
  id: 'torque-against-donor',
  title: 'Peak torque lies within what the rule set allows against the old engine',
  stage: 'brief',
  harm: 'S2',
  hazards: [],
  source: SOURCE,
  judgements: bySet((limits, m, ask) => {
    const about = ['brief.rules', 'donor.engine.torque', ...pathsOf(m, 'motor.peak-torque')]
    if (!limits('torque.ratio')) return silent(about)
    const torque: ComparedPeaks | Gaps = from(ask(againstDonor), a => a.torque)
    if (isGaps(torque)) return [waiting(about, torque)]
    const plan = driveline(m)
    if (isGap(plan)) return [waiting(about, plan)]
    const { peaks, limited, before } = numbers(torque)
    const answer = gateB.torqueRatio(limits, { ...plan, donorTorque: before, motorTorques: peaks, limitedTorque: limited })
    if (!answer) return silent(about)
    if (answer.kind === 'stated') return [inWords(answer, about)]
    return onEnds(answer, {
      about,
      found: torque.ratio,
      shows: 'ratio',
      slots: { now: torque.now, before: torque.before },
      upper: {
        says: 'Motor torque is {now} at the shaft, {found} times the {before} of the old engine; the rule set allows at most {limit}, whatever the ratio behind it.',
        remedies: torqueLimitedTo(m, answer.quantity?.high ?? 0),
      },
      lower: {
        says: 'Motor torque is {now} at the shaft, {found} times the {before} of the old engine; the rule set asks for at least {limit}.',
        remedies: [{ do: 'act', says: 'A motor with more torque, or a higher limit.' }],
      },
    })
  }),
  spoil: { sample: 'lapwing', edits: [{ path: 'brief.rules', now: 'it' }], item: 'upper end' },
})

export const powerChange = rule({
  id: 'power-change',
  title: 'The change of power starts no further approval',
  stage: 'brief',
  harm: 'S1',
  hazards: [],
  source: SOURCE,
  judgements: bySet((limits, m, ask) => {
    const about = ['brief.rules', 'donor.engine.power', ...pathsOf(m, 'motor.peak-power')]
    if (!limits('power.change.trigger')) return silent(about)
    const power: ComparedPeaks | Gaps = from(ask(againstDonor), a => a.power)
    if (isGaps(power)) return [waiting(about, power)]
    const { peaks, limited, before } = numbers(power)
    const answer = gateB.powerChange(limits, { donorPower: before, motorPowers: peaks, limitedPower: limited })
    if (answer?.kind !== 'compared') return answer ? [inWords(answer, about)] : silent(about)
    const act = [
      { do: 'act', says: 'Plan for the approval; where entries of the register start one anyway, this changes nothing.' },
    ] as const
    return onEnds(answer, {
      about,
      found: power.change,
      shows: 'share',
      scale: 0.01,
      slots: { now: power.now, before: power.before },
      upper: {
        says: 'Power changes by {found}, from {before} to {now}; from {limit} on a further approval starts.',
        remedies: [...powerLimitedTo(m, answer.quantity?.high ?? 0), ...act],
      },
      lower: { says: 'Power changes by {found}, from {before} to {now}; from {limit} on a further approval starts.', remedies: act },
    })
  }),
  spoil: { sample: 'wren', edits: [{ path: 'brief.rules', now: 'nl' }], item: 'upper end' },
})

export const continuousPower = rule({
  id: 'continuous-power',
  title: 'Continuous power starts no further code',
  stage: 'brief',
  harm: 'S2',
  hazards: [],
  source: SOURCE,
  judgements: bySet((limits, m, ask) => {
    const about = ['brief.rules', 'donor.engine.strongest', ...pathsOf(m, 'motor.continuous-power')]
    if (!limits('power.ratio.continuous')) return silent(about)
    const power: ComparedPeaks | Gaps = from(ask(againstDonor), a => a.continuous)
    if (isGaps(power)) return [waiting(about, power)]
    const answer = gateB.continuousPowerRatio(limits, {
      strongestEnginePower: power.before.value,
      continuousPowers: power.peaks.map(p => p.value),
    })
    if (answer?.kind !== 'compared') return answer ? [inWords(answer, about)] : silent(about)
    return onEnds(answer, {
      about,
      found: power.ratio,
      shows: 'ratio',
      slots: { now: power.now, before: power.before },
      upper: {
        says: 'Continuous power is {now}, {found} times the {before} of the strongest engine offered; above {limit} a further code starts.',
        remedies: [{ do: 'act', says: 'Ask the signatory which codes then hold.' }],
      },
    })
  }),
  spoil: {
    sample: 'lapwing',
    edits: [
      { path: 'brief.rules', now: 'au' },
      { path: 'drive.units.main.motor.continuous-power', now: '120 kW' },
    ],
    turns: 'marginal',
  },
})

export const historicPrivilege = rule({
  id: 'historic-privilege',
  title: 'Power to weight leaves the privilege of a historic car alone',
  stage: 'brief',
  harm: 'S1',
  hazards: [],
  source: SOURCE,
  judgements: bySet((limits, m, ask) => {
    const about = ['brief.rules', 'donor.historic', ...pathsOf(m, 'motor.peak-power')]
    if (!limits('power.historic.trigger')) return silent(about)
    if (isGap(m.donor.historic)) return [waiting(about, m.donor.historic)]
    if (m.donor.historic.value === 'no') return doesNotApply('the donor car is not registered as historic', about)
    const answer = ask(againstDonor)
    if (isGaps(answer)) return [waiting(about, answer)]
    const { power, runningOrder, powerToWeight: found } = answer
    if (isGaps(power)) return [waiting(about, power)]
    if (isGaps(runningOrder)) return [waiting(about, runningOrder)]
    if (isGaps(found)) return [waiting(about, found)]
    const c = gateB.powerToWeightRise(limits, {
      donorPower: power.before.value,
      donorMass: runningOrder.before.value,
      power: power.now.value,
      mass: runningOrder.now.value,
    })
    if (c?.high === undefined) return silent(about)
    // the row gives the rise in per cent, the figure is new over old
    return onEnds(
      { ...c, high: 100 + c.high },
      {
        about,
        found,
        shows: 'ratio',
        scale: 0.01,
        slots: { now: power.now, before: power.before },
        upper: {
          says: 'Power to weight is {found} times what it was; above {limit} the privilege of a historic car ends.',
          remedies: powerLimitedTo(m, (c.quantity?.high ?? 0) * runningOrder.now.value),
        },
      },
    )
  }),
  spoil: {
    sample: 'lapwing',
    edits: [
      { path: 'brief.rules', now: 'gb' },
      { path: 'donor.historic', now: 'yes' },
      { path: 'drive.units.main.motor.peak-power', now: '200 kW' },
    ],
  },
})
