import { type RuleSet, rowsFrom } from './requirement.ts'

const code = rowsFrom({ work: 'nz-lvv-code', date: '2018-10', read: 'S' })
const inService = rowsFrom({ work: 'nz-virm-inservice', read: 'T' })
const entry = rowsFrom({ work: 'nz-virm-entry', read: 'T' })

/** New Zealand: low volume vehicle certification, always for high voltage. */
export const nz: RuleSet = {
  id: 'nz',
  name: 'New Zealand',
  note: 'The technical clauses of LVV standard 75-00(01), later issues of it and the threshold schedule were not open.',
  rows: [
    code('route.allowed', 'fact', 'yes, by low volume vehicle (LVV) certification', '', {
      via: ['nz-rule-35001'],
      remark: 'single cars cannot sensibly be tested to international rules',
    }),
    inService('inspect.approval', 'trigger', 'any change to the high-voltage system', '', {
      clause: 'table 13-5-1',
      remark: 'its threshold table makes no exception',
    }),
    code('sign.technical', 'who', 'LVV certifier', ''),
    entry('papers.form', 'paper', ['statement of compliance F001, stamped', 'certification plate'], '', {
      clause: '1-6',
      date: '2024',
      remark: 'the form is not needed with an electronic data plate',
    }),
    inService('plate.code', 'must', 'valid LVV plate, modification declaration or authority card', ''),
    code(
      'law.standards',
      'list',
      [
        '75-00(01) electric and hybrid vehicles',
        '85-40(02) engine and drivetrain conversions',
        '35-00(02) brakes',
        '175-00(03) belt anchorages',
      ],
      '',
      {
        work: 'nz-lvv-75',
        via: ['nz-lvv-index'],
        date: '2013-07; 2016',
        remark:
          '75-00(01): 22 pages, in force since 1 May 2012, amendment 1 since 1 July 2013, tied also to the light vehicle brakes rule 2002',
      },
    ),
    inService('cable.secure', 'must', 'held, undamaged, clear of hot parts, sharp edges, rotating parts and the ground', '', {
      clause: '(1)',
      remark: 'else a reason for rejection',
    }),
    inService('battery.box', 'must', 'held, undamaged, not leaking, shields in place', '', {
      clause: '(2), (3)',
      remark: 'else a reason for rejection',
    }),
    entry(
      'donor.rules-known',
      'fact',
      'a replaced part meets the standard of the original or a later one, and the system keeps its standard',
      '',
      {
        clause: 'technical bulletin 1',
        date: '2024-04',
      },
    ),
  ],
}
