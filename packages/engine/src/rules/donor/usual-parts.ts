import type { Donor, NotListed } from '../../model/donor.ts'
import type { Model } from '../../model/model.ts'
import { ownInlet } from '../../studies/donor/ledger.ts'
import { type Fact, isGap, standard } from '../../working/value.ts'
import { doesNotApply, type Judgement, rule } from '../rule.ts'

/** Mass such a part has in most cars: middle and half-width of the range. */
const usually = (name: string, label: string, middle: number, half: number): Fact => ({
  ...standard(`usual-mass-${name}`, `usual mass of ${label}`, 'm', middle, 'kg', {
    work: 'practice',
    place: `class data: ${label}`,
    mark: 'common practice',
  }),
  half,
})

type Usual = {
  readonly key: string
  readonly label: string
  readonly field: keyof Omit<Donor['notListed'], 'at' | 'given'>
  /** What its name in the list of parts put in holds. */
  readonly named: RegExp
  /** Nothing drives without it. */
  readonly needed: boolean
  readonly mass?: Fact
}
const part = (
  key: string,
  label: string,
  field: Usual['field'],
  named: RegExp,
  needed: boolean,
  mass?: readonly [number, number],
): Usual => ({
  key,
  label,
  field,
  named,
  needed,
  ...(mass ? { mass: usually(key, label, ...mass) } : {}),
})

/** Not the cables, boxes and management of the traction battery. */
const STARTER_BATTERY = /starter-?battery|12-?v.*battery|battery.*12-?v|^(small-|new-|old-|auxiliary-)?battery(-small|-new|-old)?$/i

const USUAL: readonly Usual[] = [
  part('dc-dc', 'DC-DC', 'dcDc', /dc-?dc/i, true, [3.5, 1.5]),
  part('high-voltage-cable', 'high-voltage cable', 'highVoltageCable', /cable|wiring|loom|harness/i, true),
  part('junction-box', 'junction box', 'junctionBox', /junction|distribution/i, false, [5.5, 2.5]),
  part('starter-battery', '12 V battery', 'starterBattery', STARTER_BATTERY, true, [9, 5]),
  part('bms', 'BMS', 'bms', /bms|battery-management/i, true, [1.25, 0.75]),
  part('cooling', 'cooling of motor and electronics', 'cooling', /cool|radiator/i, false),
  part('cabin-heater', 'cabin heater', 'cabinHeater', /heat/i, false, [2.5, 1.5]),
  part('charge-inlet', 'charge inlet', 'chargeInlet', /inlet/i, false, [1.5, 0.5]),
]

const word = (label: string): Fact<string> => ({ path: 'usual-part', label: 'usual part', symbol: '', unit: '', value: label })

/** The old 12 V battery stays where nothing took it out. */
const stays = (u: Usual, { removed }: Donor): boolean =>
  u.field === 'starterBattery' && !Object.keys(removed).some(name => u.named.test(name))

function judged(u: Usual, m: Model): Judgement {
  const { donor } = m
  const about = ['donor.added', `donor.not-listed.${u.key}`],
    base = { item: u.label, about },
    slots = { part: word(u.label), usual: u.mass }
  const listed = Object.keys(donor.added).some(name => u.named.test(name))
  if (listed) return { ...base, holds: true, rests: [], says: 'It is among the parts put in.' }
  if (u.field === 'chargeInlet' && ownInlet(m)) return { ...base, holds: true, rests: [], says: 'It is counted by its own group.' }
  if (stays(u, donor)) return { ...base, holds: true, rests: [], says: 'The one of the donor car stays.' }
  const where: NotListed = donor.notListed[u.field]
  if (isGap(where))
    return {
      ...base,
      slots,
      says: 'No part put in is named after the {part}: without it kerb mass and cost are too low.',
      remedies: [
        {
          do: 'act',
          says: u.mass
            ? 'List the {part} with mass (usually {usual}), place and price, or say that it was weighed with another part.'
            : 'List the {part} with mass, place and price, or say that it was weighed with another part.',
        },
      ],
      missing: where,
    }
  const fitted = where.value === 'with another part'
  return {
    ...base,
    slots,
    holds: fitted || !u.needed,
    marginal: !fitted,
    rests: [where],
    says: fitted ? 'The {part} is in the mass of another part put in.' : 'The {part} is not fitted.',
    remedies: fitted
      ? []
      : [{ do: 'act', says: u.needed ? 'The car does not work without it: put it in.' : 'Think again whether the car does without it.' }],
  }
}

export const usualPartsListed = rule({
  id: 'usual-parts-listed',
  title: 'What goes into every conversion is in the list, with its mass and price',
  stage: 'donor',
  harm: 'S2',
  hazards: [],
  source: { work: 'practice', place: 'a mass ledger holds everything that goes in', mark: 'common practice' },
  judgements: m =>
    Object.keys(m.drive.units).length === 0 ? doesNotApply('no motor is chosen yet', ['drive.units']) : USUAL.map(u => judged(u, m)),
  spoil: {
    sample: 'lapwing',
    edits: [
      { path: 'donor.added.dc-dc', now: null },
      { path: 'fit.bodies.dc-dc', now: null },
      { path: 'donor.not-listed.dc-dc', now: 'not fitted' },
    ],
    item: 'DC-DC',
  },
})
