import { applyEdit, fieldAt, readConversion } from '@ampwright/conversion'
import { describe, expect, it } from 'vitest'
import { CARS, leafPaths, textOf, typedFacts } from '../cars.ts'
import { Looking } from '../looking.ts'
import { sampled } from './sampled.ts'

describe.each(CARS)('sweep “remove” over %s', car => {
  const text = textOf(car),
    looking = new Looking(text),
    { conversion, assessment: base } = looking.at(text),
    before = leafPaths(base)
  const facts = sampled(typedFacts(conversion), car)

  it.each(facts.map(f => [f.path] as const))('without %s nothing throws, nothing is silently replaced, and what used it names it', path => {
    const edit = applyEdit(text, { path, now: null })
    if (!edit.ok) throw new Error(edit.problem.what)
    const read = readConversion(edit.text)
    // What others point to by name cannot leave alone: the file then says who points there, instead of assessing.
    const dangling = read.issues.filter(
      i => i.what.startsWith('names something in') && path.startsWith(i.what.slice(19).split(' or ')[0] as string),
    )
    if (dangling.length) return expect(dangling[0]?.found).toContain(path.slice(path.lastIndexOf('.') + 1))
    const { assessment: a, conversion: c } = looking.at(edit.text)
    const after = leafPaths(a),
      gaps = new Set([...a.gaps.map(g => g.path), ...a.findings.flatMap(f => f.gaps.map(g => g.path))])
    const assumed = (c.facts as readonly { path: string; origin?: { how: string } }[]).some(
      f => f.path.replace(/#.*/, '') === path && f.origin !== undefined && f.origin.how !== 'measured',
    )
    // A thing taken out of a set is gone with its figures; a field whose schema says what leaving it out means may be left out.
    const optional =
      fieldAt(path.replace(/[^.]+$/, 'some-other-name')) !== undefined || fieldAt(path)?.says?.startsWith('Left out:') === true
    for (const f of a.figures.values()) if (typeof f.value === 'number') expect(Number.isNaN(f.value), f.id).toBe(false)
    for (const [id, used] of before) {
      if (!used.has(path)) continue
      const now = after.get(id)
      if (optional) continue
      if (!now) expect(gaps.has(path), `${id} is gone without ${path}, and no gap names it`).toBe(true)
      else if (!now.has(path))
        expect(
          gaps.has(path) || [...now].some(p => !used.has(p)),
          `${id} stands without ${path}, on nothing else instead, and no gap names it`,
        ).toBe(true)
      else expect(assumed, `${id} still rests on ${path}, which is gone`).toBe(true)
    }
  })
})
