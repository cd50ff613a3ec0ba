import { NAMED, type RuleSet, rowsFrom } from './requirement.ts'

const vts = rowsFrom({ work: 'ch-vts', date: '2026-01', read: 'T' })
const canton = rowsFrom({ work: 'ch-canton', read: 'S' })

/** Switzerland: report of a recognised test body, then re-inspection by the canton. */
export const ch: RuleSet = {
  id: 'ch',
  name: 'Switzerland',
  base: 'un',
  note: 'VTS as applicable on 1 January 2026. Annexes 7 and 12 were not open.',
  rows: [
    vts('route.allowed', 'fact', 'yes; a drive unit foreign to the epoch of the car is a deep change', '', { clause: 'Art. 4(3) a' }),
    vts('law.as-of', 'must', 'law on the day of the re-inspection', '', { for: 'deep change', clause: 'Art. 4(3)' }),
    canton('sign.technical', 'who', 'test body recognised by ASTRA', '', {
      via: ['ch-vts'],
      clause: 'VTS Art. 34b(3)',
      date: '2026-01',
      remark: 'conformity assessment or attestation',
    }),
    vts('sign.approval', 'who', 'cantonal authority, traffic experts', '', { clause: 'Art. 34, 34b(1)' }),
    vts('register.notify', 'must', 'holder reports the change; re-inspection before the car is used again', '', {
      clause: 'Art. 34(2)',
      remark:
        'class, dimensions, weights, emissions, transmission or axle ratio, steering, brakes, restraints out of service, every other essential change',
    }),
    vts('speed.max.drop', 'must-not', true, '', {
      for: 'after first registration',
      clause: 'Art. 48(4), (5) e',
      remark: 'unless the car is matched to an existing conformity assessment or attestation',
    }),
    vts('power.measure', 'must', 'UN R85: highest net power', '', {
      for: 'cars',
      clause: 'Art. 46(2), (3)',
      remark: 'motorcycles: 30 minutes; IEC 60034-1 may be accepted',
    }),
    vts('mass.gross.lower', 'must-not', true, '', { for: 'guaranteed mass', clause: 'Art. 42(2)' }),
    vts('mass.gross.raise.trigger', 'trigger', 'new guarantee of the maker', '', {
      for: 'gross, axle, towed or train mass raised',
      clause: 'Art. 42(1)',
    }),
    vts('mass.gross.guarantee', 'who', 'converter, once a recognised test body confirms safety in operation and on the road', '', {
      for: 'no guarantee of the maker',
      clause: 'Art. 41(5)',
    }),
    vts('plate.motor', 'must', 'name or mark of the maker and power in kW', '', {
      clause: 'Art. 51(1)',
      remark: 'lasting, legible when fitted',
    }),
    vts('disconnect.key', 'must', 'switch cuts the traction current and keeps out the unauthorised', '', { clause: 'Art. 51(2)' }),
    vts('fuse.main', 'must', true, '', { for: 'overload', clause: 'Art. 51(2)' }),
    vts('brakes.regen', 'must', 'at full braking the traction current cuts out by itself or helps to brake', '', {
      clause: 'Art. 51(3)',
      remark: 'recuperation is allowed; one brake is a friction brake',
    }),
    vts('brakes.rule', 'must', '661/2009, UN R13 or R13-H', '', { for: 'M, N', clause: 'Art. 103(1)' }),
    vts('lvd.scope', 'fact', '50 to 1000 V AC, 75 to 1500 V DC, and battery voltages below', '', {
      work: 'ch-nev',
      clause: 'Art. 1',
      date: '2023-01',
    }),
    canton('lvd.proof', 'must', 'proof under NEV', '', {
      work: 'ch-astra-2020',
      via: ['ch-canton'],
      date: '2020-06',
      remark: 'no exceptions since 1 June 2020, conversions included',
    }),
    canton('emc.rule', 'must', 'UN R10, by Annex 12 VTS', '', {
      work: 'ch-vts',
      via: ['ch-canton'],
      clause: 'Art. 80(3)',
      date: '2026-01',
      remark: 'what Annex 12 says is from the canton',
    }),
    vts('cable.secure', 'must', 'sized, insulated, kept from chafing and ignition, fused where needed', '', { clause: 'Art. 80(1)' }),
    vts('battery.box', 'must', 'no leak, short circuit or fire to be feared', '', { clause: 'Art. 80(2)' }),
    vts('speedo.rule', 'must', 'UN R39; readable at night up to top speed, never under-reads', '', { clause: 'Art. 55' }),
    vts('speedo.over', 'max', NAMED.speedometerOverRead, 'km/h', { for: 'M, N, 40 to 120 km/h', clause: 'Art. 55(2) b' }),
    vts('defrost.rule', 'must', 'device against mist and ice', '', { for: 'closed cabin', clause: 'Art. 81(3)' }),
    vts('avas.duty', 'fact', 'allowed, not asked for', '', { clause: 'Art. 82(1bis)', remark: 'state of the art as in 540/2014' }),
    canton('papers.report', 'paper', ['data and approval of the donor', 'description of the change', 'changed masses'], ''),
    vts('inspect.first', 'fact', [60, 72], 'months', { for: 'private car', clause: 'Art. 33(2) c' }),
    vts('inspect.then', 'fact', '36, then 24', 'months', { for: 'private car', clause: 'Art. 33(2) c' }),
  ],
}
