import { type RuleSet, rowsFrom } from './requirement.ts'

const order = rowsFrom({ work: 'fr-order-2020', date: '2020-04', read: 'T' })
const quoted = rowsFrom({ work: 'fr-order-2020', date: '2020-04', read: 'Q' })
const undated = rowsFrom({ work: 'fr-order-2020', via: ['fr-transport-press'], read: 'Q' })
const amended = rowsFrom({ work: 'fr-order-2023', date: '2023-10', read: 'T' })
const code = rowsFrom({ work: 'fr-code-route', date: '2026-03', read: 'T' })

/** France: approved device for a vehicle type, fitted by an authorised installer. */
export const fr: RuleSet = {
  id: 'fr',
  name: 'France',
  base: 'un',
  note: 'Order of 13 March 2020 as first published. The limits of Annex III points 4, 5 and 8 were changed in October 2023 and could not be read.',
  rows: [
    order('route.allowed', 'fact', 'yes, as a type of converted vehicles (prototype approval)', '', { clause: 'Art. 3 2°' }),
    order('route.kit', 'must', 'approved devices only', '', { clause: 'Art. 3 4°' }),
    quoted('route.single-car', 'fact', 'practically closed since the order of 4 August 2023', '', {
      work: 'fr-question-15951',
      date: '2023',
      for: 'single reception',
      remark: 'Art. 13 of the order of 19 July 1954',
    }),
    order('sign.install', 'who', 'installer present in France and authorised by the maker of the device', '', { clause: 'Art. 3 4°' }),
    order('sign.technical', 'who', 'UTAC by its test reports; for R10, R85, R100 also forms of another contracting state', '', {
      clause: 'Art. 4',
    }),
    order('sign.approval', 'who', 'national reception centre (CNRV), asked by the maker of the device', '', { clause: 'Art. 3 2°' }),
    quoted('donor.category', 'fact', ['M', 'N', 'L', 'special-purpose vehicles', 'breakdown vehicles'], '', {
      via: ['fr-order-2023', 'fr-abstract-2020'],
      clause: 'Art. 2; notice of 2023',
      date: '2023-10',
      remark: 'the last two since October 2023',
    }),
    quoted('donor.age.min', 'min', 5, 'years', {
      via: ['fr-abstract-2020', 'fr-press-2020'],
      for: 'M, N',
      clause: 'Art. 2',
      remark: 'from first registration to conversion',
    }),
    quoted('donor.age.min@l', 'min', 3, 'years', { via: ['fr-abstract-2020', 'fr-press-2020'], for: 'L', clause: 'Art. 2' }),
    order('donor.age.min@waived', 'fact', 'lifted by a technical agreement of the vehicle maker', '', { clause: 'Art. 3 1°' }),
    quoted('donor.registered', 'must', 'definitive French series', '', { via: ['fr-abstract-2020'], clause: 'Art. 2' }),
    quoted('donor.excluded', 'must-not', ['registered as a collection vehicle', 'farm machine'], '', {
      via: ['fr-abstract-2020', 'fr-press-2020'],
      clause: 'Art. 2',
    }),
    quoted('power.ratio', 'range', [0.65, 1], '1', {
      via: ['fr-press-2020', 'fr-technical-summary'],
      for: 'cars',
      clause: 'Annex III',
      remark: 'bands by category were revised in 2023',
    }),
    quoted('power.ratio@l', 'range', [0.3, 1], '1', {
      work: 'fr-order-2023',
      via: ['fr-converter-note'],
      for: 'L',
      date: '2023-10',
      remark: 'lower end was 0.40 before',
    }),
    quoted('mass.kerb.ratio', 'range', [0.8, 1.2], '1', {
      via: ['fr-technical-summary', 'fr-transport-press'],
      clause: 'Annex III',
      remark: 'one trade source names the upper end alone',
    }),
    quoted('mass.gross.change', 'must-not', true, '', {
      via: ['fr-technical-summary', 'fr-transport-press'],
      clause: 'Annex III',
      remark: 'its distribution included',
    }),
    order('axle.share.shift', 'max', 10, '%', {
      clause: 'Annex III',
      read: 'from memory',
      remark: 'the Belgian text modelled on it has the same figure',
    }),
    quoted('dims.change', 'must-not', true, '', { via: ['fr-technical-summary'], clause: 'Annex III' }),
    undated('crash.proof', 'fact', 'simplified, no crash test', '', {
      for: 'limits on mass, share and size kept',
    }),
    order('obd.telltale', 'must-not', 'lights up', '', {
      for: 'fault lamp of the donor diagnosis, converted car in use',
      clause: 'Annex III 3.1',
    }),
    order('tamper', 'must', 'device protected against tampering', '', { clause: 'Annex III 3.2', remark: 'opening of the point read' }),
    order('emc.rule', 'must', 'UN R10', '', { clause: 'Art. 4' }),
    order('power.measure', 'must', 'UN R85', '', { clause: 'Art. 4' }),
    order('battery.approval', 'must', 'UN R100', '', { clause: 'Art. 4' }),
    order('brakes.rule', 'fact', 'UN R13 and R13-H', '', { clause: 'recitals' }),
    amended('avas.rule', 'fact', 'UN R138', '', { clause: 'recitals' }),
    order('plate.conversion', 'must', ['maker of the device', 'VIN', 'approval number', 'reason: conversion to electric'], '', {
      clause: 'Art. 4',
      remark: 'beside the plate of the vehicle maker, in the same format',
    }),
    order(
      'papers.declaration',
      'paper',
      [
        'installer',
        'maker and type of the device',
        'approval number',
        'component numbers',
        'make, type, year, VIN',
        'mass in running order',
        'maximum masses',
      ],
      '',
      { clause: 'Annex II, first half', remark: 'attestation; a copy goes to the maker of the device' },
    ),
    order('papers.report', 'paper', ['application', 'list of installers', 'how they are authorised', 'model of the plate'], '', {
      clause: 'Art. 4',
    }),
    amended('papers.user', 'paper', 'greenhouse gas avoided in ten years, told to the buyer', '', { clause: 'Annex IV, notice' }),
    quoted('sign.install.check', 'fact', 2, 'years', {
      via: ['fr-abstract-2020'],
      remark: 'authority and check of installers by the maker of the device',
    }),
    code('inspect.approval', 'must', 'a notable transformation asks for a new reception', '', { clause: 'R321-16' }),
    code('register.notify', 'max', 1, 'month', { clause: 'R322-8', remark: 'after conversion, online, by the owner' }),
    code('register.drive-until', 'max', 1, 'month', { clause: 'R322-8', remark: 'on the provisional certificate from the declaration' }),
    code('register.penalty', 'fact', 'fine of class 4', '', { for: 'not declared', clause: 'R322-8 III' }),
    code('inspect.first', 'fact', 48, 'months', { for: 'light vehicles', clause: 'R323-22', remark: 'within the six months before' }),
    code('inspect.then', 'fact', 24, 'months', {
      for: 'light vehicles',
      clause: 'R323-22',
      remark: 'before a sale if older than six months; collection vehicles every 60 months',
    }),
  ],
}
