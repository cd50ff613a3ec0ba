import { type RuleSet, rowsFrom } from './requirement.ts'

const decree = rowsFrom({ work: 'be-decree-1968', clause: 'Art. 77bis', date: '2023-05', read: 'T' })
const quoted = rowsFrom({
  work: 'be-decree-1968',
  via: ['be-summaries', 'be-press-2023'],
  clause: 'Art. 77bis',
  date: '2023-05',
  read: 'Q',
})
const notified = rowsFrom({ work: 'be-notification', date: '2023-08', read: 'S' })

/** Belgium: federal technical rules, approval and inspection by the regions. */
export const be: RuleSet = {
  id: 'be',
  name: 'Belgium',
  base: 'un',
  note: 'Art. 77bis in force since 1 June 2023; only its opening was open. Flanders notified its own text; regional rules were not open.',
  rows: [
    decree('route.allowed', 'fact', true, '', { for: 'engine gone, battery or hydrogen cell in its place' }),
    decree('donor.category', 'fact', ['M', 'N'], ''),
    decree('power.ratio', 'range', [0.65, 1], '1', { for: 'net maximum power' }),
    decree('power.ratio@le60kw', 'max', 1.2, '1', { for: 'net maximum power of the donor 60 kW or less' }),
    decree('power.measure', 'fact', 'net maximum power', ''),
    decree('fuel.removed', 'must', 'tanks out or made unusable', ''),
    quoted('dims.change', 'must-not', true, '', { via: ['be-summaries'], remark: 'start of the sentence read' }),
    quoted('mass.gross.change', 'must-not', true, '', { for: 'maximum mass of the car and of the combination' }),
    quoted('mass.axle-limit.change', 'must-not', true, '', { for: 'each axle' }),
    quoted('axle.share.shift', 'max', 10, '%', { for: 'mass in running order, against the base car' }),
    quoted('sign.install.condition', 'must', 'approval authority is shown the technical documents the installer needs', '', {
      via: ['be-summaries'],
    }),
    notified('sign.approval', 'who', 'approval authority of the region', ''),
  ],
}
