import { type RuleSet, rowsFrom } from './requirement.ts'

const radical = rowsFrom({ work: 'gb-radical', date: 'archived', read: 'S' })
const recalled = rowsFrom({ work: 'gb-mot', read: 'from memory' })

/** Great Britain: no conversion law; what decides is whether the car keeps its identity. */
export const gb: RuleSet = {
  id: 'gb',
  name: 'Great Britain',
  base: 'un',
  baseOnly: 'individual vehicle approval (IVA), asked for when the identity is lost',
  note: 'The registration policy of 2025, the IVA clauses for electric cars and the official point values were not open.',
  rows: [
    radical('route.allowed', 'fact', 'yes, without approval while the identity is kept', ''),
    radical('structure.points', 'min', 8, 'points', { for: 'radically altered car, to keep its number' }),
    recalled(
      'structure.points@values',
      'fact',
      ['unmodified chassis or bodyshell 5', 'suspension 2', 'axles 2', 'transmission 2', 'steering 2', 'engine 1'],
      'points',
      { work: 'gb-radical', via: ['gb-association-letters'], remark: 'the five for the shell is quoted' },
    ),
    radical('structure.body', 'must-not', 'monocoque altered or chassis modified', '', { remark: 'else approval and a Q number' }),
    radical('structure.body@holes', 'fact', 'drilled holes led to a demand for IVA and a record withdrawn; undoing them did not help', '', {
      work: 'gb-owner-letter',
      date: '2022-08',
      read: 'Q',
      remark: 'report of one owner; ask first, bolt to points that exist',
    }),
    radical('structure.keep-share', 'min', 'original unmodified chassis or unaltered bodyshell, and two other major parts', '', {
      work: 'gb-rebuilt',
      for: 'rebuilt car',
    }),
    recalled('law.as-of@2025', 'fact', 'registration policy for modified and electric classics restated in August 2025', '', {
      work: 'gb-call-press',
      date: '2024-05',
      remark: 'after the call for evidence of 2024; read it first',
    }),
    radical('power.historic.trigger', 'trigger', 15, '% power to weight', {
      work: 'gb-vhi',
      date: '2018',
      for: 'vehicle of historic interest, exempt from the test',
    }),
    radical(
      'inspect.items',
      'list',
      ['brakes 09A–09E', 'EMC 10', 'speedometer 17', 'plates 18', 'controls 33', 'defrost 34', 'heating 36', 'masses and dimensions 44'],
      '',
      { work: 'gb-iva', date: '2020-10', for: 'IVA needed' },
    ),
    radical('register.mark', 'fact', 'kept with the points, else a Q number', ''),
    recalled('register.fields', 'must', ['engine', 'fuel', 'displacement'], '', {
      work: 'gb-certificate-press',
      read: 'Q',
      remark: 'kept current; fine of up to 1000 £',
    }),
    recalled('register.tax', 'fact', 'stored CO₂ figure stays', '', {
      work: 'gb-campaign-letter',
      date: '2023-05',
      for: 'cars registered from 2001',
      read: 'Q',
    }),
    recalled('inspect.first', 'fact', 36, 'months'),
    recalled('inspect.then', 'fact', 12, 'months'),
  ],
}
