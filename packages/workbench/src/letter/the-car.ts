import { isGap, type LedgerItem, type Named } from '@ampwright/engine'
import { partCalled } from './called.ts'
import {
  fact,
  factWhereAsked,
  factWhereKnown,
  figure,
  isOpen,
  type LetterLine,
  type LetterPart,
  type Matter,
  open,
  type Piece,
  quoted,
  row,
  rowIf,
  type Said,
} from './pieces.ts'

/** The donor car as its papers and its owner describe it. */
export function donorCar(k: Matter): LetterPart {
  const { donor: d, brief } = k.m
  return {
    heading: 'The car',
    columns: ['as it is'],
    lines: [
      ...row('Car', fact(k, k.m.car)),
      ...row('Category', fact(k, d.category)),
      ...row('First registered', fact(k, d.firstRegistered)),
      ...rowIf('Built', factWhereAsked(k, d.built)),
      ...rowIf('Registered in', factWhereAsked(k, d.registeredIn)),
      ...row('Body', fact(k, d.body)),
      ...row('Engine position', fact(k, d.enginePosition)),
      ...row('Fuel', fact(k, d.engine.fuel)),
      ...row('Driven wheels', fact(k, d.drivenWheels)),
      ...rowIf('Historic vehicle', factWhereAsked(k, d.historic)),
      ...rowIf('In good condition, inspection in order', factWhereAsked(k, d.roadworthy)),
      ...row('Work done by', fact(k, brief.workshop)),
      ...row('Day the finished car is presented', fact(k, brief.convertedOn)),
    ],
  }
}

/** What leaves the car, each with its mass where it was weighed. */
export const takenOut = (k: Matter): LetterPart => ({
  heading: 'What is taken out',
  lines: listed(k, k.m.donor.removed, { open: 'parts taken out', path: 'donor.removed' }),
})

/** What goes into it: motors and their way to the wheels, battery boxes, everything else. */
export function putIn(k: Matter): LetterPart {
  return {
    heading: 'What is put in',
    lines: [...motors(k), ...listed(k, k.m.donor.added, { open: 'other parts put in', path: 'donor.added' })],
  }
}

/** Motors by their unit, with the axle they drive and how. */
export function motors(k: Matter): readonly LetterLine[] {
  const units = Object.entries(k.m.drive.units)
  if (units.length === 0) return [open({ open: 'motor, inverter and their way to an axle', path: 'drive.units' })]
  return units.flatMap(([name, u]): readonly LetterLine[] => {
    const kind = fact(k, u.motor.kind),
      axle = fact(k, u.axle),
      through = fact(k, u.through),
      gear = factWhereAsked(k, u.gear),
      mass = factWhereAsked(k, u.motor.mass)
    const pieces: Piece[] = [
      'Motor ',
      quoted(name),
      ...after(': ', kind),
      ...after('; axle driven: ', axle),
      ...after('; through ', through),
    ]
    return [
      { is: 'item', pieces: [...pieces, ...after('; gear ', gear), ...after('; ', mass)] },
      ...[kind, axle, through].flatMap(x => (isOpen(x) ? [open(x)] : [])),
    ]
  })
}
const after = (words: string, x: Said | ReturnType<typeof fact> | undefined): readonly Piece[] =>
  x === undefined || isOpen(x) ? [] : [words, x]

function listed(k: Matter, items: Named<LedgerItem>, none: { readonly open: string; readonly path: string }): readonly LetterLine[] {
  const all = Object.entries(items)
  if (all.length === 0) return [open(none)]
  return all.map(([name, { mass }]) => ({
    is: 'item',
    pieces: [quoted(partCalled(name)), isGap(mass) ? ', mass not known yet' : ', ', ...(isGap(mass) ? [] : [fact(k, mass) as Said])],
  }))
}

/** The pack: what it is, how much it holds, at what voltage, and where it sits. */
export function battery(k: Matter): LetterPart {
  const { pack, brief } = k.m,
    boxes = Object.entries(pack.boxes)
  return {
    heading: 'The battery',
    columns: ['as planned'],
    lines: [
      ...row('Chemistry', fact(k, pack.module.chemistry, 'chemistry of the cells')),
      ...row('Modules', fact(k, pack.module.state, 'whether the modules are new or used')),
      ...row('Nominal voltage', figure(k, 'voltage-window.nominal', 'nominal voltage of the battery')),
      ...row('Highest voltage, every cell full', figure(k, 'pack.highest', 'highest voltage of the battery')),
      ...row('Energy it holds', figure(k, 'pack-mass.stored', 'energy of the battery')),
      ...row('Mass with its boxes', figure(k, 'pack-mass.with-boxes', 'mass of the battery with its boxes')),
      ...row('Main fuse', fact(k, pack.limits.fuse)),
      ...row('Battery management system fitted', fact(k, pack.bms.fitted, 'whether a battery management system is fitted')),
      ...row('Way to the approval of the battery', fact(k, brief.packApproval, 'way to the approval of the battery')),
      ...(boxes.length === 0 ? [open({ open: 'battery boxes and where they sit', path: 'pack.boxes' })] : []),
      ...boxes.flatMap(([name, box]) => [
        ...row(['Box ', quoted(name), ', place'], fact(k, box.where)),
        ...row(['Box ', quoted(name), ', behind the front axle'], fact(k, box.x)),
        ...row(['Box ', quoted(name), ', mass'], figure(k, `ledger.box@${name}`, `mass of battery box ${name}`)),
      ]),
    ],
  }
}

/** Where it is charged: what an insurer of the building asks. */
export function charging(k: Matter): LetterPart {
  const places = Object.entries(k.m.charging.places)
  return {
    heading: 'Where it is charged',
    columns: ['as planned'],
    lines: [
      ...row('Power of the charger', fact(k, k.m.charging.charger.power)),
      ...(places.length === 0 ? [open({ open: 'places where it is charged', path: 'charging.places' })] : []),
      ...places.flatMap(([name, p]) => [
        ...row(quoted(partCalled(name)), fact(k, p.socket, `socket (${partCalled(name)})`)),
        ...rowIf([quoted(partCalled(name)), ', voltage'], factWhereKnown(k, p.voltage)),
        ...rowIf([quoted(partCalled(name)), ', current'], factWhereKnown(k, p.current)),
        ...rowIf([quoted(partCalled(name)), ', extension lead or adaptor in between'], factWhereKnown(k, p.extension)),
      ]),
    ],
  }
}
