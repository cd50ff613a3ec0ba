import { type RuleSet, rowsFrom } from './requirement.ts'

const decree = rowsFrom({ work: 'it-dm-141', date: '2022-09', read: 'T' })
const annexE = rowsFrom({ work: 'it-dm-141', clause: 'Annex E 2', date: '2022-09', read: 'T' })

/** Italy: approved conversion system for vehicle families. The clearest single text read; it shows what a European approval asks. */
export const it: RuleSet = {
  id: 'it',
  name: 'Italy',
  base: 'un',
  note: 'In force since 1 October 2022 in place of DM 219/2015 (Art. 10). Art. 3(2) is missing from the copy; the forms are pictures.',
  rows: [
    // route and people
    decree('route.allowed', 'fact', 'yes, with an approved conversion system', '', {
      for: 'L, M1, M1G, M2, M2G, M3, M3G, N1, N1G',
      clause: 'Art. 1, 4',
    }),
    decree('route.kit', 'must', 'national approval of the system for one or more vehicle families', '', { clause: 'Art. 4(2)' }),
    decree('route.single-car', 'fact', 'the decree holds no procedure for it', ''),
    decree(
      'route.foreign-approval',
      'fact',
      'equivalent systems of EU and EEA states, once a technical service has checked the papers',
      '',
      {
        clause: 'Art. 8',
      },
    ),
    decree('law.as-of', 'must', 'R10, R100, R101 and low voltage as mandatory for new types on the day of application', '', {
      clause: 'Annex E 1.1, 2 f',
      remark: 'other changed parts: the rule the base car was approved to',
    }),
    decree('sign.install', 'who', 'service network of the system maker, or a vehicle repair business under law 122/1992', '', {
      via: ['it-craft-notes'],
      clause: 'Art. 2, 6(1)',
      read: 'Q',
      remark: 'the words on repair businesses are quoted',
    }),
    decree('sign.technical', 'who', 'technical service', '', { clause: 'Art. 4(1)' }),
    decree('sign.approval', 'who', 'directorate general for motorisation', '', { clause: 'Art. 4(4)' }),

    // donor, mass, power
    decree('mass.gross.guarantee', 'must', 'consent of the car maker, or proof of equal safety by a technical service', '', {
      for: 'changes listed in DPR 495/1992 Art. 236(2), beyond those Art. 3(2) frees',
      clause: 'Art. 3(3), (4)',
      remark: 'gross and axle masses, axles, wheelbase, track, overhang, frame, brakes, maximum power, motor fixing',
    }),
    annexE('donor.condition', 'must', 'in good condition, periodic inspection in order', '', {
      remark: 'declared by the system maker, later by the installer',
    }),
    annexE('emc.donor', 'must', 'base car approved to UN R10, or to 72/245/EEC as amended by 2004/104/EC or later', '', {
      remark: 'else the whole converted car is tested to R10',
    }),
    annexE('power.ratio', 'range', [0.65, 1], '1', { for: 'propshaft, final drive or ratios changed', clause: 'Annex E 1.3' }),
    annexE('torque.ratio', 'max', 1, '1', { for: 'propshaft, final drive or ratios changed', clause: 'Annex E 1.3' }),
    annexE('torque.ratio@driveline-kept', 'range', [0.65, 1], '1', {
      for: 'driveline unchanged',
      clause: 'Annex E 1.3',
      remark: 'the band then holds for torque alone',
    }),
    annexE('power.measure', 'must', 'motor approved to UN R85', '', { clause: 'Annex E 2 e' }),

    // rules the car is tested to
    annexE('emc.rule', 'must', 'UN R10', '', { clause: 'Annex E 2 a' }),
    annexE('battery.approval', 'must', 'UN R100', '', { clause: 'Annex E 2 b' }),
    annexE('energy.rule', 'must', 'UN R101: energy use and range', '', { for: 'M1, N1', clause: 'Annex E 2 c' }),
    annexE('lvd.proof', 'must', 'directive 2014/35/EU', '', { for: 'where it applies', clause: 'Annex E 2 d' }),
    annexE('steering.rule', 'must', 'UN R79: effort', '', { for: 'if changed', clause: 'Annex E 2 f1' }),
    annexE('brakes.rule', 'must', 'UN R13 or R13-H', '', { for: 'if changed, or if regenerating', clause: 'Annex E 2 f2' }),
    annexE('interior.rule', 'must', 'UN R21', '', { for: 'M1, if changed', clause: 'Annex E 2 f3' }),
    annexE('speedo.rule', 'must', 'UN R39', '', { for: 'if changed', clause: 'Annex E 2 f4' }),
    annexE('controls.rule', 'must', 'UN R121', '', { for: 'if changed', clause: 'Annex E 2 f5' }),
    annexE('defrost.rule', 'must', 'Regulation (EU) 672/2010', '', { for: 'M1, if changed', clause: 'Annex E 2 f6' }),
    annexE('heat.rule', 'must', 'UN R122', '', { for: 'if changed', clause: 'Annex E 2 f7' }),
    annexE('mass.rule', 'must', 'Regulation (EU) 1230/2012', '', { for: 'M1', clause: 'Annex E 2 f8' }),
    annexE('lamps.rule', 'must', 'UN R48: fitting and aim', '', { for: 'if changed', clause: 'Annex E 2 f14' }),
    annexE('crash.proof', 'must', 'UN R94 and UN R95', '', {
      for: 'R94: M1 below 2.5 t; R95: M1 and N1 whose lowest seat has its R point below 700 mm',
      clause: 'Annex E 2 f12, f13',
      remark: 'counts as met within the bands on axle mass and total mass, if the base car was approved to them',
    }),
    annexE('axle.share.crash-equivalence', 'range', [-20, 20], '%', { for: 'mass on each axle against the original' }),
    annexE('mass.total.crash-equivalence', 'max', 8, '% rise', { for: 'total mass' }),

    // safety equipment
    decree('safety-systems.keep', 'must', 'mandatory active and passive safety devices unmodified', '', {
      clause: 'Annex E 3',
      remark: 'else their approval tests are repeated',
    }),
    decree('avas.duty', 'must', true, '', {
      for: 'M, N',
      clause: 'Annex E 3, Annex D 3',
      remark: 'L: allowed, may stop at 20 km/h',
    }),
    decree('avas.rule', 'must', 'Annex VIII of 540/2014, or UN R138', '', { clause: 'Annex E 3' }),
    decree('park.device', 'must', 'parking safety device that signals by light, sound or mechanism when it is not set', '', {
      clause: 'Annex E 3',
    }),
    decree('fuel.removed', 'must', 'petrol, diesel and gas tanks out or made unusable before fitting', '', { clause: 'Annex E 3' }),
    decree('engine.refit', 'must-not', true, '', { for: 'return to combustion', clause: 'Art. 6(4)' }),
    decree('marking.triangle', 'must', 'warning signs of UN R100, fitted by the installer', '', { clause: 'Art. 6(2)', remark: 'L: R136' }),

    // papers
    decree('plate.motor', 'must', 'approval mark, legible and indelible', '', { for: 'on the drive', clause: 'Art. 5(3)' }),
    decree(
      'papers.declaration',
      'paper',
      ['declaration of the installer, Annex G', 'certificate of conformity of the system, Annex F'],
      '',
      { clause: 'Art. 5(4), 6(2)' },
    ),
    decree('papers.user', 'paper', ['use', 'maintenance', 'installation', 'disposal'], '', { clause: 'Art. 5(6)' }),
    decree('papers.rescue', 'paper', 'rescue card', '', { clause: 'Art. 5(6)' }),
    decree('battery.producer', 'who', 'system maker, as producer under legislative decree 188/2008', '', { clause: 'Art. 5(2)' }),
    decree('inspect.approval', 'must', 'visit and test, then the circulation document is updated', '', {
      via: ['it-highway-code'],
      clause: 'Art. 6(3); highway code Art. 78',
    }),
    decree('register.penalty', 'fact', [430, 1731], '€', {
      work: 'it-highway-code',
      for: 'driving unrecorded',
      clause: 'Art. 78(3), (4)',
      remark: 'and the document is withdrawn',
    }),
  ],
}
