import type { Model } from '../../model/model.ts'
import { type Axles, againstDonor, type Compared } from '../../studies/brief/against-donor.ts'
import { type Ask, from, type Gaps, isGaps } from '../../studies/study.ts'
import { isGap } from '../../working/value.ts'
import { doesNotApply, type Judgement, type Remedy, rule } from '../rule.ts'
import * as gateB from '../sets/feasibility.ts'
import type { Limits } from '../sets/sets.ts'
import { bySet, inWords, onEnds, silent, waiting } from './by-set.ts'

const SOURCE = { work: 'rule-set', place: 'masses before and after' } as const
const ABOUT = ['brief.rules', 'donor.weighing', 'donor.added', 'donor.removed', 'pack.boxes']
const LIGHTER: readonly Remedy[] = [{ do: 'act', says: 'A smaller pack, or less mass elsewhere.' }]
const MOVE: readonly Remedy[] = [{ do: 'act', says: 'Move battery boxes or other heavy parts towards the other axle.' }]

const axlesOf = (ask: Ask): Axles | Gaps => from(ask(againstDonor), a => a.axles)
const plain = (axles: Axles) => ({
  donor: { front: axles.front.before.value, rear: axles.rear.before.value },
  converted: { front: axles.front.now.value, rear: axles.rear.now.value },
})

/** Old and new mass on the basis the row means: unladen where it says so, else in running order. */
function onItsBasis(limits: Limits, ask: Ask): { basis: gateB.MassBasis; masses: Compared | Gaps } {
  const unladen = limits('mass.kerb.ratio')?.requirement.for?.includes('unladen') ?? false
  return unladen
    ? { basis: 'unladen', masses: from(axlesOf(ask), a => a.total) }
    : { basis: 'running order', masses: from(ask(againstDonor), a => a.runningOrder) }
}

export const kerbMass = rule({
  id: 'kerb-mass-against-donor',
  title: 'The finished car weighs what the rule set allows against the donor car',
  stage: 'brief',
  harm: 'S2',
  hazards: [],
  source: SOURCE,
  judgements: bySet((limits, m, ask) => {
    if (!limits('mass.kerb.ratio')) return silent(ABOUT)
    const { basis, masses } = onItsBasis(limits, ask)
    if (isGaps(masses)) return [waiting(ABOUT, masses)]
    if (isGap(m.donor.category)) return [waiting(ABOUT, m.donor.category)]
    const goods = m.donor.category.value.startsWith('N')
    const answer = gateB.kerbMassRatio(limits, { basis, donor: masses.before.value, converted: masses.now.value, goods })
    if (answer?.kind !== 'compared') return answer ? [inWords(answer, ABOUT)] : silent(ABOUT)
    const says = (bound: string) => `It weighs {now} after {before}, {found} times the donor car; the rule set ${bound} {limit}.`
    return onEnds(answer, {
      about: ABOUT,
      found: masses.ratio,
      shows: 'ratio',
      slots: { now: masses.now, before: masses.before },
      upper: { says: says('allows at most'), remedies: LIGHTER },
      lower: { says: says('asks for at least') },
    })
  }),
  spoil: {
    sample: 'lapwing',
    edits: [
      { path: 'brief.rules', now: 'in' },
      { path: 'donor.added.motor-mounts.mass', now: '100 kg' },
    ],
  },
})

export const kerbMassChange = rule({
  id: 'kerb-mass-change',
  title: 'The change of mass starts no further approval',
  stage: 'brief',
  harm: 'S1',
  hazards: [],
  source: SOURCE,
  judgements: bySet((limits, _, ask) => {
    if (!limits('mass.kerb.change.trigger')) return silent(ABOUT)
    const masses: Compared | Gaps = from(ask(againstDonor), a => a.runningOrder)
    if (isGaps(masses)) return [waiting(ABOUT, masses)]
    const answer = gateB.kerbMassChange(limits, { basis: 'running order', donor: masses.before.value, converted: masses.now.value })
    if (answer?.kind !== 'compared') return answer ? [inWords(answer, ABOUT)] : silent(ABOUT)
    const side = { says: 'Mass in running order changes by {found}, from {before} to {now}; from {limit} on a further approval starts.' }
    return onEnds(answer, {
      about: ABOUT,
      found: masses.change,
      shows: 'share',
      scale: 0.01,
      slots: { now: masses.now, before: masses.before },
      upper: { ...side, remedies: LIGHTER },
      lower: side,
    })
  }),
  spoil: {
    sample: 'lapwing',
    edits: [
      { path: 'brief.rules', now: 'nl' },
      { path: 'donor.added.motor-mounts.mass', now: '100 kg' },
    ],
    item: 'upper end',
  },
})

export const axleShare = rule({
  id: 'axle-share',
  title: 'The share of the mass on each axle stays near the donor car’s',
  stage: 'brief',
  harm: 'S3',
  hazards: [],
  source: SOURCE,
  caution: 'A shifted balance changes how the car brakes and turns: brake balance and springs have to follow it.',
  judgements: bySet((limits, _, ask) => {
    const limit = limits('axle.share.shift')
    if (!limit) return silent(ABOUT)
    const axles = axlesOf(ask)
    if (isGaps(axles)) return [waiting(ABOUT, axles)]
    return gateB.axleShare(limits, plain(axles)).flatMap((answer): readonly Judgement[] => {
      if (answer.kind === 'stated') return [inWords(answer, ABOUT)]
      const share = answer.item === 'front axle' ? axles.frontShare : axles.rearShare
      const says = (bound: string) =>
        `It carries {found} of the mass after {before}; ${bound} {limit}. Shares are compared as weighed, without driver.`
      return onEnds(answer, {
        about: ABOUT,
        found: share.now,
        shows: 'share',
        slots: { before: share.before },
        upper: { says: says('the limit is'), remedies: MOVE },
        lower: { says: says('the least allowed is'), remedies: MOVE },
      })
    })
  }),
  spoil: { sample: 'lapwing', edits: [{ path: 'donor.removed.engine.mass', now: '300 kg' }], item: 'front axle, lower end' },
})

export const crashEquivalence = rule({
  id: 'crash-equivalence',
  title: 'The crash proof of the donor car still counts',
  stage: 'brief',
  harm: 'S3',
  hazards: [],
  source: SOURCE,
  caution: 'What a heavier or differently loaded car does in a crash is not known from the donor car.',
  judgements: bySet((limits, _, ask) => {
    if (!limits('axle.share.crash-equivalence') && !limits('mass.total.crash-equivalence')) return silent(ABOUT)
    const axles = axlesOf(ask)
    if (isGaps(axles)) return [waiting(ABOUT, axles)]
    const prove: readonly Remedy[] = [
      {
        do: 'act',
        says: 'Where the donor car was approved to crash rules at all, the proof has to be given anew: ask the technical service.',
      },
    ]
    return gateB.axleMassBand(limits, plain(axles)).flatMap(c => {
      const one = c.item === 'front axle' ? axles.front : c.item === 'rear axle' ? axles.rear : axles.total
      const says = 'Mass changes by {found}, from {before} to {now}; the donor’s crash proof counts up to {limit}.'
      return onEnds(c, {
        about: ABOUT,
        found: one.change,
        shows: 'share',
        scale: 0.01,
        slots: { now: one.now, before: one.before },
        upper: { says, remedies: [...(c.item === 'total' ? LIGHTER : MOVE), ...prove] },
        lower: { says, remedies: prove },
      })
    })
  }),
  spoil: { sample: 'lapwing', edits: [{ path: 'brief.rules', now: 'it' }], item: 'total' },
})

export const frontAxleRise = rule({
  id: 'front-axle-rise',
  title: 'The front axle of a goods vehicle gains no more than the rule set allows',
  stage: 'brief',
  harm: 'S3',
  hazards: [],
  source: SOURCE,
  caution: 'An overloaded axle lengthens braking and can break wheels, tyres and bearings.',
  judgements: bySet((limits, m: Model, ask) => {
    if (!limits('axle.front.rise')) return silent(ABOUT)
    if (isGap(m.donor.category)) return [waiting(ABOUT, m.donor.category)]
    if (!m.donor.category.value.startsWith('N')) return doesNotApply('the donor car is no goods vehicle', ABOUT)
    const axles = axlesOf(ask)
    if (isGaps(axles)) return [waiting(ABOUT, axles)]
    const c = gateB.frontAxleRise(limits, plain(axles))
    if (!c) return silent(ABOUT)
    return onEnds(c, {
      about: ABOUT,
      found: axles.front.change,
      shows: 'share',
      scale: 0.01,
      slots: { now: axles.front.now, before: axles.front.before },
      upper: { says: 'The front axle changes by {found}, from {before} to {now}; the rule set allows a rise of {limit}.', remedies: MOVE },
    })
  }),
  spoil: {
    sample: 'badger',
    edits: [
      { path: 'brief.rules', now: 'in' },
      { path: 'donor.removed.engine.mass', now: '20 kg' },
    ],
    item: 'front axle',
  },
})
