import { choice, date, group, mapOf, type Node, part, quantity, words } from '../schema/field.ts'

/** What a workshop bought, was given or was offered, piece by piece. */
const shelf = mapOf(
  'shelf',
  'piece',
  group('piece', {
    part: part(),
    what: words('what it is', { says: 'In plain words, where the catalogue has no record of it.' }),
    serial: words('serial number', { says: 'As it stands on the plate.' }),
    pieces: quantity('count', 'number of pieces', 'n', {
      least: 1,
      says: 'Of a lot that lies together and is reserved together. Left out: one.',
    }),
    price: quantity('money', 'price of one piece', 'k', { least: 0, says: 'Paid, or quoted.' }),
    'price-is': choice('what the price is', ['paid', 'quoted']),
    'priced-on': date('day it was paid or quoted'),
    from: words('who sold or quoted it'),
    'quote-until': date('last day the quote holds'),
    place: words('where it lies'),
    condition: words('condition'),
    reserved: group('reservation', {
      car: words('car it is reserved for'),
      conversion: words('id of that conversion', {
        says: 'As the workbench names it; without it the name of the car says which is meant.',
      }),
    }),
  }),
  'Own parts: what lies there or is on offer, and for which car it is kept.',
)

/** The sections of a workshop file, by their keys, in the order they are read. */
export const WORKSHOP_SECTIONS = {
  workshop: words('name of the workshop'),
  shelf,
} satisfies Readonly<Record<string, Node>>
