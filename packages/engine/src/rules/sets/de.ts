import { type RuleSet, rowsFrom } from './requirement.ts'

const stvzo = rowsFrom({ work: 'stvzo', date: '2022-03', read: 'T' })
const fzv = rowsFrom({ work: 'fzv-2011', date: '2022-03', read: 'T' })
const merkblatt = rowsFrom({ work: 'merkblatt-764', via: ['de-builder-list'], date: '2012-02', read: 'Q' })
const heard = rowsFrom({ work: 'de-radio-2014', date: '2014-08', read: 'Q' })

/** Germany: new operating permit for the single car on the report of a recognised expert. */
export const de: RuleSet = {
  id: 'de',
  name: 'Germany',
  base: 'un',
  note: 'StVZO and FZV as of March 2022. The FZV was replaced on 1 September 2023: paragraph numbers moved, the duties are recalled as the same.',
  rows: [
    stvzo('route.allowed', 'fact', 'yes, by a new operating permit for the single car', '', {
      clause: '§19(2), §21',
      remark: 'the old permit ends when the kind of vehicle changes, danger is to be expected, or exhaust or noise get worse',
    }),
    stvzo('route.single-car', 'fact', true, '', { via: ['eg-fgv'], clause: '§21(1); EG-FGV §13(1)' }),
    stvzo('route.series', 'trigger', 20, '% of the small-series limit per year', {
      work: 'eg-fgv',
      for: 'new M1 of one type',
      clause: '§13(2)',
      remark: 'beyond it, small-series approval',
    }),
    stvzo('sign.install.condition', 'must', 'approval of the whole car follows without delay', '', {
      for: 'makers, importers and trade that do a change which ends the permit',
      clause: '§19(2) sentences 3, 4',
    }),
    stvzo('sign.technical', 'who', 'officially recognised expert, or technical service named for whole vehicles', '', { clause: '§21(1)' }),
    stvzo('sign.approval', 'who', 'authority named by state law', '', { clause: '§21(1)' }),
    stvzo('law.as-of', 'fact', 'first on the road before 3 July 2021: rules of the first registration, with retrofit duties', '', {
      for: 'general equipment',
      clause: '§72(1)',
    }),
    merkblatt('law.as-of@electric', 'fact', 'examined on the base of UN R100 and R10', '', { for: 'electric part' }),
    stvzo('papers.report', 'paper', ['technical description', 'rules met', 'changes that ended the permit'], '', { clause: '§21(1)' }),
    stvzo('papers.tests', 'paper', 'test record behind each result', '', { clause: '§21(2)' }),
    stvzo('papers.keep', 'min', 10, 'years', { for: 'report and records', clause: '§21(2)' }),
    merkblatt(
      'inspect.items',
      'list',
      [
        'motor fixing',
        'high-voltage layout',
        'cable run',
        'kerb mass',
        'top speed',
        'towed mass, checked or deleted',
        'seats',
        'handling, empty and laden',
        'documents',
        'plate data',
      ],
      '',
      { via: ['de-builder-list', 'de-association-page'] },
    ),
    merkblatt('fault.movement', 'max', 0.1, 'm', { for: 'unbraked standing car, any fault' }),
    merkblatt('disconnect.key', 'must', 'key switch', ''),
    merkblatt('battery.warning', 'must', 'state of charge shown', ''),
    merkblatt('cable.colour', 'must', 'orange, double insulated', ''),
    merkblatt('contact.cabin', 'must', 'IPXXD', '', { for: 'cabin and boot' }),
    merkblatt('structure.body', 'trigger', 'Merkblatt 751 as well', '', { for: 'body changed' }),
    stvzo('hv.no-harm', 'must', 'electricity neither injures nor damages in normal traffic', '', {
      for: 'electrically driven cars',
      clause: '§62',
    }),
    stvzo('emc.rule', 'must', 'directive 72/245/EEC as amended by 95/54/EC, or UN R10', '', {
      for: 'faster than 25 km/h',
      clause: '§55a and its annex',
    }),
    stvzo('brakes.rule', 'must', 'EU braking directive in place of the national figures', '', {
      for: 'cars faster than 25 km/h',
      clause: '§41(18)',
    }),
    stvzo('brakes.service', 'min', 5, 'm/s²', { for: 'cars still under the national figures', clause: '§41(4)' }),
    stvzo('brakes.trailer', 'min', 5, 'm/s²', { for: 'cars still under the national figures', clause: '§41(4), (12)' }),
    stvzo('brakes.secondary', 'min', 44, '% of service', {
      for: 'cars still under the national figures',
      clause: '§41(4a)',
      remark: 'after a partial failure, without leaving the lane',
    }),
    stvzo('brakes.park', 'min', 1.5, 'm/s²', {
      for: 'cars still under the national figures',
      clause: '§41(5)',
      remark: 'mechanical parts only, no engine braking',
    }),
    stvzo('brakes.regen', 'fact', 'with stored electric energy one of the two brake systems may be electric', '', {
      for: 'cars still under the national figures',
      clause: '§41(7)',
    }),
    stvzo('speedo.rule', 'must', 'in direct view of the driver, in km/h, directive 75/443/EEC', '', {
      for: 'faster than 30 km/h',
      clause: '§57(1), (2) and annex',
    }),
    stvzo('odometer.error', 'max', 4, '%', {
      for: 'distance counter',
      clause: '§57(3)',
      remark: 'sign lost in the copy, taken to hold both ways',
    }),
    stvzo('immobiliser', 'must', 'device against unauthorised use, and immobiliser', '', {
      for: 'cars under directive 95/56/EC',
      clause: '§38a(1)',
    }),
    stvzo('tow.mass', 'max', 'least of the permitted gross mass of the car, the value of its maker, and 3500 kg', '', {
      for: 'braked trailer',
      clause: '§42(1)',
      remark: 'off-road cars: one and a half times the gross mass',
    }),
    stvzo('plate.maker', 'must', ['maker', 'type', 'VIN', 'gross mass', 'axle loads'], '', {
      clause: '§59(1)',
      remark: 'corrected when masses change',
    }),
    fzv('register.notify', 'must', 'without delay, with both parts of the registration certificate', '', { clause: '§13(1)' }),
    fzv(
      'register.fields',
      'list',
      [
        'displacement, rated power, fuel or energy source',
        'higher top speed',
        'axle loads, gross mass, drawbar and towed mass',
        'noise and exhaust figures that affect tax',
      ],
      '',
      { clause: '§13(1) no. 3, 4, 6, 9' },
    ),
    stvzo('register.drive-only', 'must', 'trips tied to the new permit, on the old plates or on red ones', '', {
      for: 'after the permit has ended',
      clause: '§19(5)',
    }),
    fzv('register.plate-e', 'fact', 'on application with proof; a conversion fits the definition of a purely battery-electric car', '', {
      via: ['emog'],
      clause: '§9a; EmoG §2 no. 1, 2',
      remark: 'only electric machines convert, the store recharges from outside',
    }),
    stvzo('inspect.first', 'fact', 36, 'months', { for: 'private car', clause: 'Annex VIII 2.1.2.1.1' }),
    stvzo('inspect.then', 'fact', 24, 'months', { for: 'private car', clause: 'Annex VIII 2.1.2.1.2' }),
    stvzo('inspect.items@periodic', 'list', ['whole electric drive against its given specifications'], '', {
      for: 'main inspection',
      clause: 'Annex VIIIa 6.8.7',
    }),
    heard('fee', 'fact', 4000, '€', {
      for: 'ten-year-old car, single inspection',
      remark: 'up to this much',
    }),
  ],
}
