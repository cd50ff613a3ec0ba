import { NAMED, type RuleSet, rowsFrom } from './requirement.ts'

const saaq = rowsFrom({ work: 'qc-saaq-fr', read: 'S' })
const press = rowsFrom({ work: 'qc-press', read: 'Q' })
const builder = rowsFrom({ work: 'qc-builder', date: '2011-09', read: 'Q' })

/** Québec: agreement before the work, mechanical inspection, analysis, and as a rule an engineer. */
export const caQc: RuleSet = {
  id: 'ca-qc',
  name: 'Québec',
  base: 'ca',
  rows: [
    saaq('route.allowed', 'fact', 'yes, as a modified vehicle: agreement, check, analysis', ''),
    press('ask.before', 'must', 'write to the vehicle safety directorate before starting', '', {
      work: 'qc-saaq-fr',
      via: ['qc-press'],
      remark: 'the authority advises it, the press says must',
    }),
    press('sign.technical', 'who', 'engineer of the Ordre des ingénieurs du Québec', '', {
      work: 'qc-saaq-fr',
      via: ['qc-press'],
      remark: 'the authority may demand it; for electric always, says the press',
    }),
    saaq('inspect.approval', 'must', 'appointment at a mechanical inspection centre with invoices, description and photographs', '', {
      via: ['qc-safety-code'],
      clause: 'Highway Safety Code s. 214',
    }),
    saaq('structure.body', 'must-not', 'chassis, body or mechanism changed without agreement where stability or braking suffers', '', {
      work: 'qc-saaq',
      remark: 'no welding on the chassis',
    }),
    press('mass.gross.max', 'max', NAMED.makerGross, '', {
      via: ['qc-builder'],
      for: 'converted car, laden',
      date: '2011; later',
      remark: 'PNBV',
    }),
    press('mass.axle.max', 'max', NAMED.makerAxles, ''),
    press('axle.share.shift', 'must', 'near the original', '', { remark: 'for brake balance; no figure given' }),
    builder('mass.person', 'fact', 80, 'kg per seat', { for: 'load check', remark: 'person 70, luggage 10' }),
    builder('donor.built.to', 'max', '1997-09', 'date', { remark: 'later cars only where the airbags are proven to work' }),
    builder('reverse.alarm', 'must', true, ''),
    builder('horn.second', 'must', 'for pedestrians', ''),
    builder('charge.charger-mark', 'must', 'certified for Québec; other marks refused', '', {
      for: 'charger',
      remark: 'limited the pack voltage at the time',
    }),
    rowsFrom({ work: 'qc-newspaper', date: '2021-09', read: 'Q' })('fee', 'fact', 10_000, 'CA$', {
      for: 'report of an engineer on one car',
      remark: 'about this much',
    }),
  ],
}
