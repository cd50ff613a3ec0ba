import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../tests/counts.ts'
import { stamped, unstamped } from './stamp.ts'

const ID = '0123456789abcdef'

describe('the last line of an exported text', () => {
  it('comes off again without a trace, whatever the text ends with', () =>
    fc.assert(
      fc.property(fc.string(), fc.constantFrom('', '\n', '\r\n', '\n\n'), fc.integer({ min: 1, max: 999 }), (text, end, revision) => {
        const back = unstamped(stamped(text + end, ID, revision))
        expect(back.text).toBe(text + end)
        expect(back.stamp).toMatchObject({ id: ID, revision })
      }),
      { numRuns: runs(2000) },
    ))
  it('is found in a text that was changed since, with other line ends and lines below', () => {
    const changed = stamped('a: 1\n', ID, 7).replace('a: 1', 'a: 2').replaceAll('\n', '\r\n')
    expect(unstamped(`${changed}\r\n`)).toMatchObject({ text: 'a: 2\r\n', stamp: { revision: 7 } })
  })
  it('is not seen where there is none', () => {
    for (const text of ['', 'a: 1\n', '# Ampwright: conversion x\n', `# Ampwright: conversion ${ID}, revision 1, 00\na: 1\n`])
      expect(unstamped(text)).toEqual({ text })
  })
})
