import { type RuleSet, rowsFrom } from './requirement.ts'

/** Canada: conversions are a matter of the provinces. */
export const ca: RuleSet = {
  id: 'ca',
  name: 'Canada',
  note: 'Federal text not open; of the provinces only Québec (its own set) and Ontario as of 2010.',
  rows: [
    rowsFrom({ work: 'ca-mvsa', read: 'from memory' })('route.allowed', 'fact', 'left to the provinces', '', {
      remark: 'federal standards bind makers and importers of new vehicles',
    }),
    rowsFrom({ work: 'ca-email-2010', date: '2010-06', read: 'Q' })(
      'route.allowed@on',
      'fact',
      ['safety standards certificate', 'declaration of conversion by the owner', 'decal on the car'],
      '',
      { for: 'ON' },
    ),
  ],
}
