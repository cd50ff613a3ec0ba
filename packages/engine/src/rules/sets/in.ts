import { type RuleSet, rowsFrom } from './requirement.ts'

const ais123 = rowsFrom({ work: 'in-ais-123', clause: 'cl. 4.1', date: '2018-09', read: 'T' })
const scope = rowsFrom({ work: 'in-ais-123', clause: 'cl. 1', date: '2018-09', read: 'T' })
const hybrid = rowsFrom({ work: 'in-gsr-629', date: '2016-06', read: 'Q' })

/** India: type-approved kit, fitted by an authorised installer. */
export const india: RuleSet = {
  id: 'in',
  name: 'India',
  note: 'Of AIS-123 part 3 the amendment was open, not the main text (gradeability, brakes, electrical clauses), nor rule 115D.',
  rows: [
    rowsFrom({ work: 'in-gsr-167', date: '2019-03', read: 'Q' })('route.allowed', 'fact', 'yes, with a type-approved kit', '', {
      remark: 'AIS-123 part 3 for pure electric; parts 1 and 2 for hybrid up to and above 3.5 t',
    }),
    rowsFrom({ work: 'in-agency', read: 'Q' })('route.kit', 'must', 'kit and converted car both tested by a test agency', ''),
    hybrid('sign.install', 'who', 'installer authorised by the maker or supplier of the kit', '', { remark: 'text for hybrid kits' }),
    hybrid('route.kit.validity', 'fact', 3, 'years', { remark: 'text for hybrid kits' }),
    scope('donor.category', 'fact', ['L1', 'L2', 'L5', 'M', 'N1', 'N2', 'N3'], ''),
    scope('donor.built.from', 'min', '1990-01-01', 'date'),
    scope('donor.excluded', 'must-not', 'permit for dangerous goods', ''),
    ais123('mass.kerb.ratio', 'max', 1.25, '1', { for: 'M1, M2, M3, L1, L2, L5M; unladen weight' }),
    ais123('mass.kerb.ratio@goods', 'max', 'donor unladen and kit', 'kg', { for: 'L5N, N1, N2, N3' }),
    ais123('axle.front.rise', 'max', 10, '%', { for: 'L5N, N1, N2, N3' }),
    ais123('mass.axle.max', 'max', 'laden limits of appendix XII, Central Motor Vehicles Rules 1989', '', { for: 'L5N, N1, N2, N3' }),
    ais123('route.series', 'range', [-10, 10], '% gross weight', {
      for: 'other cars of the category under one approval',
      clause: 'cl. 21.1 a',
    }),
    rowsFrom({ work: 'ais-038-draft', clause: '5.1.2.2', date: '2019-09', read: 'T' })('bond.max', 'max', 0.1, 'Ω', {
      remark: 'same as UN R100',
    }),
  ],
}
