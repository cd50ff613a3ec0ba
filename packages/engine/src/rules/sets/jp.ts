import { type RuleSet, rowsFrom } from './requirement.ts'

const annex4 = rowsFrom({ work: 'jp-annex-4', read: 'T' })
const forms = rowsFrom({ work: 'jp-forms', read: 'T' })
const kanto = rowsFrom({ work: 'jp-kanto', date: '2010-09', read: 'Q' })
const items = rowsFrom({ work: 'jp-guideline-items', date: '2010-12', read: 'Q' })
const guideline = rowsFrom({ work: 'jp-guideline', date: '2011-04', read: 'Q' })
const revised = rowsFrom({ work: 'jp-guideline-2020', date: '2020-06', read: 'Q' })
const strength = rowsFrom({ work: 'jp-form-2-guide', read: 'Q' })

/** Japan: notice before modification, then inspection for change of construction. */
export const jp: RuleSet = {
  id: 'jp',
  name: 'Japan',
  note: 'Notice goes to the inspection body: NALTEC for cars, the light motor vehicle organisation for small ones. The industry guideline of 2011, revised 2020, is voluntary but used; its text was not open.',
  rows: [
    annex4('route.allowed', 'fact', 'yes, as a modified car', '', { clause: '1 and 3' }),
    annex4('structure.keep-share', 'min', 0.5, 'of frame or body', { clause: '3', remark: 'below it the car is no longer a modified one' }),
    rowsFrom({ work: 'jp-naltec', read: 'S' })(
      'ask.before',
      'must',
      ['form 1: notice', 'form 2: description, comparison table, strength', 'attachments'],
      '',
      {
        for: 'parts that matter to safety or cannot be seen',
      },
    ),
    kanto('sign.install', 'who', 'certified repair shop', '', { for: 'dismantling work such as the change of engine' }),
    kanto('inspect.approval', 'must', 'inspection for change of construction', ''),
    forms(
      'papers.drive-data',
      'list',
      [
        'motor: place, number, kind, rated voltage, cooling',
        'motor: peak output and rated output with speed, peak torque with speed',
        'control: kind, method, voltage',
        'battery: kind, capacity and voltage of a module, number, pack voltage and energy, mass',
        'charger: fitting, control, supply voltage and current',
        'overcurrent protection',
        'device against unintended start',
        'reverse warning',
        'gearbox',
      ],
      '',
      { clause: 'form 4; annex 4, 4.1' },
    ),
    forms('papers.form', 'paper', 'check against every safety standard touched', '', { clause: 'form 3' }),
    strength('structure.safety-factor.break', 'min', 1.6, '1', { for: 'calculated parts', remark: 'some safety parts 2.0' }),
    strength('structure.safety-factor.yield', 'min', 1.3, '1', { for: 'calculated parts' }),
    items('papers.mount-strength', 'paper', 'strength calculation of the motor fixing', '', {
      for: 'motor heavier or of more torque than the engine, or new mounts',
    }),
    items('structure.motor-mount', 'must', 'as strong as the old engine mounts', '', {
      remark: 'counts as met on the old mounts with no more mass and torque than the engine; else a calculation goes with the notice',
    }),
    items('contact.cabin', 'must', 'IPXXD', '', { for: 'industry guideline' }),
    items('contact.elsewhere', 'must', 'IPXXB', '', { for: 'outside cabin and luggage space' }),
    items('contact.open', 'must', 'tool needed; conductive covers earthed to the body', '', { remark: 'service plug excepted' }),
    items('connector.safe-time', 'max', 1, 's', { for: 'charging connector' }),
    items('cable.colour', 'must', 'orange', '', { for: 'battery to power unit, outside enclosures' }),
    items('marking.triangle', 'must', 'warning of annex 110 of the detail notice', ''),
    guideline('disconnect.service', 'must', 'service plug, or a breaker worked without tool', ''),
    guideline('battery.location', 'must', 'away from the ends of the car, fixed against vibration and shock', ''),
    guideline('battery.gas', 'must', 'open cells ventilated so that gas cannot gather', ''),
    revised('battery.tests', 'fact', 'ten tests of UN R100', '', { remark: 'in Japanese law since 2016, in the guideline since 2020' }),
    revised('brakes.stop-lamp.rule', 'fact', 'stop lamp on regeneration, in the guideline since 2020', ''),
  ],
}
