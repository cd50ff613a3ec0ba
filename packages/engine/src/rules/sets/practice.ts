import { type RuleSet, rowsFrom } from './requirement.ts'

const practised = rowsFrom({ work: 'common-practice', read: 'common practice' })
const r100 = rowsFrom({ work: 'un-r100', read: 'D' })

/** Fallback where a jurisdiction is silent. Nothing here is law. */
export const practice: RuleSet = {
  id: 'practice',
  name: 'Common practice',
  note: 'Not law. Used where the set of the jurisdiction and its base have no row for a key, and said so each time.',
  rows: [
    practised('ask.before', 'must', true, '', { for: 'written answer of signatory and insurer' }),
    r100('hv.class.dc', 'fact', 60, 'V', { clause: '§2' }),
    r100('insulation.dc-and-ac-joined', 'min', 500, 'Ω/V', { for: 'working voltage, whole car', clause: '§5.1.3.2' }),
    r100('bond.max', 'max', 0.1, 'Ω', { for: 'at 0.2 A or more', clause: '§5.1.2' }),
    practised('battery.location', 'must-not', 'inside the occupant space, or outside the protected zone of the axles', '', {
      remark: '420 mm behind the front end, 300 mm ahead of the rear end, 100 mm from the sill',
    }),
    practised('battery.restraint.front', 'min', 20, 'times weight'),
    practised('battery.restraint.side', 'min', 15, 'times weight'),
    practised('battery.restraint.rear', 'min', 10, 'times weight', { remark: '20 where the direction cannot be told' }),
    practised('battery.restraint.vertical', 'min', 10, 'times weight'),
    practised('mass.gross.change', 'must-not', true, '', { remark: 'each axle too' }),
    practised('axle.share.shift', 'max', 10, '%', { remark: 'figure of the Belgian set' }),
    practised('power.ratio', 'max', 1.2, '1', {
      remark: 'figure of the Australian dividing line; above it, brakes, driveline and the opinion of the signatory in writing',
    }),
    practised('disconnect.service', 'must', 'in reach without lifting the car, shown on the rescue sheet', ''),
    practised('papers.rescue', 'paper', true, ''),
    rowsFrom({ work: 'merkblatt-764', via: ['de-builder-list'], read: 'Q' })('fault.movement', 'max', 0.1, 'm', {
      remark: 'figure of the German set',
    }),
    practised('structure.body', 'must-not', 'cut or drilled without asking', '', {
      remark: 'photographs before and after; reason in the British set',
    }),
  ],
}
