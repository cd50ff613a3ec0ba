import { NAMED, type RuleSet, rowsFrom } from './requirement.ts'

const vsb14 = rowsFrom({ work: 'au-vsb14', via: ['au-wiki'], read: 'Q' })
const ncop14 = rowsFrom({ work: 'au-ncop14', via: ['au-parts-summary'], read: 'Q' })
const recalled = rowsFrom({ work: 'au-ncop14', read: 'from memory' })
const states = rowsFrom({ work: 'au-tas-2024', via: ['au-vic-2021'], clause: 'TAS r. 134; VIC s. 144B', date: '2024; 2021', read: 'T' })
const vsi8 = rowsFrom({ work: 'au-vsi8', date: '2021-06', read: 'S' })

/** Australia: national code and guideline, approval by each state through a signatory. */
export const au: RuleSet = {
  id: 'au',
  name: 'Australia',
  note: 'Neither the guideline NCOP14 nor the engine codes of VSB 14 were open: the technical rows are second-hand.',
  rows: [
    rowsFrom({ work: 'au-vsb14', clause: 'preface', read: 'S' })(
      'route.allowed',
      'fact',
      'yes, by modification code and state approval',
      '',
    ),
    vsi8('sign.technical', 'who', 'authorised signatory', '', {
      via: ['au-qld-persons'],
      date: '2021-06; 2015-09',
      remark: 'VIC: certificate under the assessment signatory scheme; QLD: approved person and modification plate',
    }),
    vsi8('donor.gross.max', 'max', 4.5, 't', { for: 'VIC information sheet' }),
    vsb14('power.ratio.continuous', 'trigger', 1.2, '1', { for: 'against the strongest engine the maker offered' }),
    vsb14('mass.gross.exceed.trigger', 'trigger', NAMED.makerGross, '', { for: 'laden mass with every part of the drive' }),
    vsb14(
      'safety-systems.keep',
      'must',
      ['anti-lock brakes', 'stability control', 'airbags', 'what the design rules of the build date asked'],
      '',
    ),
    ncop14('battery.restraint.any', 'min', 20, 'times weight'),
    recalled('battery.restraint.front', 'min', 20, 'times weight'),
    recalled('battery.restraint.side', 'min', 15, 'times weight'),
    recalled('battery.restraint.rear', 'min', 10, 'times weight'),
    recalled('battery.restraint.vertical', 'min', 10, 'times weight'),
    ncop14('battery.gas', 'must', 'sealed box proof against corrosion, vented to the outside alone', '', {
      for: 'wet cells',
      remark: 'forced ventilation where needed',
    }),
    ncop14('circuit.separate', 'must', 'traction apart from auxiliaries; lamps and brakes independent', ''),
    ncop14('disconnect.master', 'must', 'mechanical, in easy reach of the driver', '', { remark: 'a contactor alone does not count' }),
    ncop14('structure.seat-anchorages', 'must', 'untouched, and structure not weakened', ''),
    ncop14('brakes.rule', 'must', 'within the design rules after changes of mass, centre of gravity and assistance', ''),
    ncop14('leakage.max', 'max', 20, 'mA', {
      via: ['au-leakage-article'],
      for: 'to chassis, at rest',
      remark: 'a monitor may be used',
    }),
    ncop14('cable.colour', 'must', 'orange', '', { via: ['au-inverter-manuals'] }),
    states('label.from', 'trigger', 'built or modified after 1 January 2019', '', { for: 'TAS; VIC for modified cars too' }),
    states('label.size', 'must', 30, 'mm', { for: 'TAS, VIC', remark: 'each side of an equilateral triangle' }),
    states('label.metal', 'min', 1, 'mm', { for: 'TAS, VIC' }),
    states('label.letters', 'min', 8, 'mm', { for: 'TAS, VIC', remark: 'white "EV", upright' }),
    states('label.colour', 'must', 'blue, class 2 of AS 1906:2007', '', { for: 'TAS', remark: 'VIC: reflective blue' }),
    states('label.place', 'must', 'front and rear number plate, no character covered', '', {
      via: ['au-vic-2021', 'au-nsw-page'],
      for: 'TAS, VIC; NSW: fixed to the plate',
      read: 'S',
    }),
    rowsFrom({ work: 'au-dealer-notice', date: '2026', read: 'Q' })('inspect.who', 'who', 'tester with the EV category', '', {
      for: 'VIC roadworthiness, from 1 June 2026',
    }),
  ],
}
