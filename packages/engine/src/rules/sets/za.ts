import { type RuleSet, rowsFrom } from './requirement.ts'

/** South Africa: no rule on electric conversions was found; neighbouring rules only. */
export const za: RuleSet = {
  id: 'za',
  name: 'South Africa',
  note: 'No rule on electric conversions was found. The rows are neighbouring rules.',
  rows: [
    rowsFrom({ work: 'za-nrtr', clause: 'r. 9', read: 'T' })(
      'papers.declaration',
      'paper',
      ['affidavit on form SOA with parts and receipts', 'deregistration certificate', 'police clearance'],
      '',
      { for: 'motor vehicle built up from parts' },
    ),
    rowsFrom({ work: 'za-camper-report', date: '2022-03', read: 'Q' })('sign.approval', 'who', 'NRCS', '', {
      for: 'modified vehicle, by analogy with campers',
      remark: 'application for a vehicle modified by a private person',
    }),
  ],
}
