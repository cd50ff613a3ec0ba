import { applyEdit, readQuantity, spellQuantity } from '@ampwright/conversion'
import { type Fact, isFigure, kindOf } from '@ampwright/engine'
import { describe, expect, it } from 'vitest'
import { CARS, type Car, leafPaths, moved, said, textOf, typedFacts } from '../cars.ts'
import { Looking } from '../looking.ts'
import { sampled } from './sampled.ts'
import { UNMOVED, UNMOVING } from './unmoved.ts'

/** The file with one number moved by one per cent, or undefined for what is no free number. Down where up is out of what is accepted, as with a full charge. */
const nudged = (looking: Looking, text: string, fact: Fact): string | undefined =>
  by(looking, text, fact, 1.01) ?? by(looking, text, fact, 0.99)
function by(looking: Looking, text: string, fact: Fact, factor: number): string | undefined {
  if (typeof fact.value !== 'number') return undefined
  const kind = fact.shows ?? kindOf(fact.unit)
  if (kind === undefined || kind === 'count') return undefined
  const to = fact.value === 0 ? factor - 1 : fact.value * factor
  const now = spellQuantity(Number(to.toPrecision(6)), kind)
  const half =
    fact.half === undefined
      ? ''
      : // A plain share takes a plain ±: a sign of per cent behind it would hold for both.
        ` ± ${kind === 'share' && !now.includes('%') ? Number(fact.half.toPrecision(6)) : spellQuantity(Number(fact.half.toPrecision(6)), kind === 'temperature' ? 'temperature difference' : kind)}`
  const spelled = `${now}${half}`
  const edit = applyEdit(text, { path: fact.path, now: readQuantity(spelled, kind).ok ? spelled : now })
  return edit.ok && looking.usable(edit.text) ? edit.text : undefined
}

const explained = (list: readonly { at: RegExp; because: string }[], path: string): boolean => list.some(e => e.at.test(path))

describe.each(CARS)('sweep “nudge” and “honest working” over %s', (car: Car) => {
  const text = textOf(car),
    looking = new Looking(text),
    { conversion, assessment: base } = looking.at(text),
    before = said(base),
    leavesBefore = leafPaths(base)
  const numbers = sampled(typedFacts(conversion), car).filter(f => nudged(looking, text, f) !== undefined)

  it.each(numbers.map(fact => ({ path: fact.path, fact })))(
    'moving $path by one per cent moves something, and only figures that name it',
    ({ path, fact }) => {
      const { assessment } = looking.at(nudged(looking, text, fact) as string),
        after = said(assessment),
        leavesAfter = leafPaths(assessment)
      const changed = moved(before, after)
      if (changed.length === 0)
        return expect(explained(UNMOVED, path), `${path} moves nothing and no reason is given in unmoved.ts`).toBe(true)
      const wrong = changed
        .filter(k => k.startsWith('figure '))
        .map(k => k.slice(7))
        .filter(id => !leavesBefore.get(id)?.has(path) && !leavesAfter.get(id)?.has(path))
      expect(wrong, `figures moved by ${path} that do not name it`).toEqual([])
      const using = [...leavesBefore].filter(([, l]) => l.has(path)).map(([id]) => id)
      if (using.length)
        expect(
          changed.some(k => k.startsWith('figure ') && using.includes(k.slice(7))),
          `${path} is named by ${using[0]} and moves none of the figures that name it`,
        ).toBe(true)
    },
  )

  it('every figure rests on some fact of the file', () => {
    const alone = [...base.figures.values()]
      .filter(f => isFigure(f) && ![...(leavesBefore.get(f.id) ?? [])].some(p => !p.startsWith('standard.') && !p.startsWith('class.')))
      .map(f => f.id)
    expect(alone.filter(id => !explained(UNMOVING, id))).toEqual([])
  })
})
