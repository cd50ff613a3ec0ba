import { WORKSHOP_SECTIONS } from '@ampwright/conversion'
import { expect, it } from 'vitest'
import { addition, changesOf, FIELDS, followed, settled } from './fields.ts'

it('the form has every value of a piece that the file has', () => {
  const { fields } = WORKSHOP_SECTIONS.shelf.of
  expect(new Set(FIELDS.map(f => f.key))).toEqual(new Set([...Object.keys(fields).filter(k => k !== 'reserved'), 'note']))
  expect(FIELDS.find(f => f.key === 'price-is')?.oneOf).toEqual(fields['price-is'].oneOf)
})
it('a change names only what differs, with what was seen there', () => {
  expect(changesOf('a', { seen: { serial: '1', price: '3 €' }, values: { serial: '1', price: ' ', place: ' rack B ' } })).toEqual([
    { path: ['shelf', 'a', 'price'], was: '3 €', now: null },
    { path: ['shelf', 'a', 'place'], was: null, now: 'rack B' },
  ])
})
it('a new piece is one edit with what was typed', () => {
  expect(addition('a', { part: ' x@1 ', serial: '', price: '3 €' })).toEqual([
    { path: ['shelf', 'a'], was: null, now: { part: 'x@1', price: '3 €' } },
  ])
})
it('what somebody else changes meanwhile is followed where nothing was typed, and never undone', () => {
  const open = { seen: { serial: '1', price: '3 €' }, values: { serial: '1', price: '5 €' } },
    then = followed(open, { serial: '2', price: '4 €', place: 'rack A' })
  expect(then).toEqual({ seen: { serial: '2', price: '3 €', place: 'rack A' }, values: { serial: '2', price: '5 €', place: 'rack A' } })
  // Held against what was seen, this clashes; after both were shown it goes in the place of the other.
  expect(changesOf('a', then)).toEqual([{ path: ['shelf', 'a', 'price'], was: '3 €', now: '5 €' }])
  expect(changesOf('a', settled(then, { serial: '2', price: '4 €' }, ['price']))).toEqual([
    { path: ['shelf', 'a', 'price'], was: '4 €', now: '5 €' },
  ])
})
