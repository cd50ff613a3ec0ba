import { type RuleSet, rowsFrom } from './requirement.ts'

const revenue = rowsFrom({ work: 'ie-revenue', read: 'S' })
const quoted = rowsFrom({ work: 'ie-finance-act', via: ['ie-explainer'], read: 'Q' })

/** Ireland: the change goes to the register; approval only for cars never registered. */
export const ie: RuleSet = {
  id: 'ie',
  name: 'Ireland',
  base: 'un',
  baseOnly: 'approval of a new car, never registered',
  note: 'What a motor tax office asks for a change of fuel, and the practice of the approval authority, were not open.',
  rows: [
    quoted('route.allowed', 'fact', 'yes; any recorded particular altered makes a conversion', '', { clause: 's. 130' }),
    revenue('papers.declaration', 'fact', 'none to Revenue for category A at J1', '', {
      for: 'registered in Ireland',
      clause: 'conversions',
      remark: 'B, C, D or blank: only for seats added, seats cut from ten or more, or a motor caravan',
    }),
    revenue('papers.declaration@foreign', 'paper', ['declaration of conversion', 'declaration by a suitably qualified individual'], '', {
      for: 'registered abroad, with category, seats, belts, body code, mass in service, doors or windows changed',
      clause: 'conversions',
    }),
    revenue('sign.technical', 'who', 'suitably qualified individual, on headed paper', '', {
      via: ['ie-councils'],
      for: 'declaration needed',
    }),
    revenue('sign.approval', 'who', 'NSAI', '', { for: 'new, never registered', clause: 'conversions' }),
    revenue('register.office', 'who', 'motor tax office of the county', '', { work: 'ie-councils', for: 'other changes' }),
    revenue('register.benefit', 'fact', 'electric relief refused to a converted import: series production only', '', {
      work: 'ie-press',
      for: 'import',
      read: 'Q',
    }),
    revenue('inspect.first', 'fact', 48, 'months', { work: 'ie-nct', read: 'from memory' }),
  ],
}
