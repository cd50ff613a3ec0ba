import { applyEdits } from '@ampwright/conversion'
import { describe, expect, it } from 'vitest'
import { conversionOf, lookUps, textOf } from '../../../tests/cars.ts'
import { allConcepts } from './guided/concepts.ts'
import { handlesLeft } from './handles-left.ts'

describe('a handle whose shape goes', () => {
  const text = textOf('lapwing'),
    { model } = conversionOf(text)
  it('stays where it is and is part of nothing, others are let alone', () => {
    expect(handlesLeft(model, ['boot-box', 'junction-box'])).toEqual([{ path: ['fit', 'handles', 'service-plug', 'part-of'], now: null }])
    expect(handlesLeft(model, ['boot-box'])).toEqual([])
  })
  it('keeps no concept from being taken', () => {
    const { concepts } = allConcepts(text, lookUps.attachments)
    expect(concepts.length).toBeGreaterThan(0)
    for (const c of concepts) {
      const done = applyEdits(text, c.edits)
      if (!done.ok) throw new Error(done.problem.what)
      const { handles } = conversionOf(done.text).model.fit
      expect(handles['service-plug'], c.id).toMatchObject({ partOf: { gap: true }, x: { value: 2.6 } })
    }
  })
})
