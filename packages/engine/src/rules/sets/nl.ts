import { NAMED, type RuleSet, rowsFrom } from './requirement.ts'

const regeling = rowsFrom({ work: 'nl-regeling', date: '2012-12', read: 'T' })
const rdw = rowsFrom({ work: 'nl-rdw', read: 'S' })

/** Netherlands: change of construction approved by the vehicle authority. */
export const nl: RuleSet = {
  id: 'nl',
  name: 'Netherlands',
  base: 'un',
  note: 'Regeling voertuigen as valid on 31 December 2012; article numbers may have moved, so check the current text.',
  rows: [
    regeling('route.allowed', 'fact', 'yes, as a change of construction', '', { clause: 'Art. 6.1' }),
    regeling('law.as-of', 'must', 'electric driveline: day of application; the rest: day the car entered service', '', {
      via: ['nl-rdw'],
      clause: 'Art. 6.2',
      remark: 'the authority still cites it',
    }),
    regeling('sign.approval', 'who', 'RDW, the vehicle authority', '', { clause: 'Art. 6.1' }),
    regeling('mass.kerb.change.trigger', 'trigger', 20, '%', {
      for: 'mass in running order or empty mass, against the register',
      clause: 'Art. 6.3(1) i, j',
    }),
    regeling('power.change.trigger', 'trigger', 20, '%', { for: 'four-wheeled vehicles', clause: 'Art. 6.3(1) r' }),
    regeling('wheelbase.change.trigger', 'trigger', 2, '%', { clause: 'Art. 6.3(1) c' }),
    regeling(
      'register.fields',
      'list',
      ['motor code or type', 'fuel', 'cylinders, displacement', 'permitted mass', 'towed masses', 'more seats', 'standing noise'],
      '',
      { clause: 'Art. 6.3(1) k, m–q, v, y', eachTriggers: true },
    ),
    regeling('brakes.change.trigger', 'trigger', 'place, manner or force of brake operation altered', '', { clause: 'Art. 6.4(1) a' }),
    regeling('steering.change.trigger', 'trigger', 'place, manner or force of steering altered', '', { clause: 'Art. 6.4(1) b' }),
    regeling('seats.change', 'trigger', NAMED.moreSeats, '', { clause: 'Art. 6.3(1) v' }),
    regeling('structure.seat-anchorages.trigger', 'trigger', 'seat or belt anchorages altered', '', {
      for: 'in service after 29 April 2009',
      clause: 'Art. 6.4(1) c, d',
    }),
    rdw('battery.approval', 'must', ['UN R100', 'handling policy', 'annex 4 of Annex IV: cables, switch-off, battery position'], '', {
      via: ['nl-regeling'],
      remark: 'since 1 April 2011, whatever the age of the car; the page read names the 01 series',
    }),
    rdw('emc.rule', 'must', 'UN R10 or 72/245/EEC', ''),
    regeling('papers.report', 'paper', 'documents on the electric driveline, before approval', '', {
      clause: 'annex',
      remark: 'one sentence',
    }),
    rdw('battery.approval@announced', 'fact', 'stricter rules with an approved pack', '', {
      work: 'nl-association',
      date: '2023-12',
      read: 'Q',
      remark: 'published for 1 January 2024, put off for want of approved universal packs; ask before a pack is bought',
    }),
  ],
}
