import { describe, expect, it } from 'vitest'
import { SALOON } from '../../../../tests/saloon.ts'
import { sampled } from '../../../../tests/sweeps/sampled.ts'
import type { Concept } from './concept.ts'
import { allConcepts } from './concepts.ts'
import { conversionText } from './conversion-text.ts'

/** Answers that are asked for under another name while they are open. */
const CALLED: Readonly<Record<string, string>> = {
  'donor.body': 'donor.drag-area',
  'donor.removed.engine.x': 'engine, not taken off',
  'donor.removed.tank.x': 'fuel tank, not taken off',
  'brief.goals.range.distance': 'brief.goals',
}
/** Answers nothing else rests on: a name, one gear fewer, a goal nobody has, what the rule set does not ask of a car this old. */
const RESTS_NOTHING =
  /^(car|donor\.category|donor\.first-registered|donor\.gearbox\.gears\.\w+|brief\.workshop|brief\.goals\.(top-speed|pull-away)\.\w+)$/

const names = ({ gaps, leftOut }: Concept, wanted: string): boolean =>
  gaps.some(g => g.path === wanted) || leftOut.some(l => l.what === wanted)

describe('an answer left open', () => {
  const paths = Object.keys(SALOON)
  it.each([...new Set(['donor.engine-position', ...sampled(paths, 'missing answers')])])(
    '%s stops nothing, and is named by every concept that would use it',
    path => {
      expect(paths).toContain(path)
      const { [path]: _, ...rest } = SALOON,
        all = allConcepts(conversionText(rest))
      if (all.asked.length) {
        expect(all.asked.map(g => g.path)).toEqual([path])
        return
      }
      expect(all.concepts.map(c => c.id)).toEqual(['gearbox-one-gear', 'gearbox-shifting', 'reduction'])
      if (RESTS_NOTHING.test(path)) return
      for (const c of all.concepts) expect(names(c, CALLED[path] ?? path), `${c.id}: ${path}`).toBe(true)
    },
  )

  it('of everything leaves only the layout to be asked', () => {
    const all = allConcepts(conversionText({}))
    expect(all.asked.map(g => g.path)).toEqual(['donor.engine-position'])
    expect(all.verdict.worth).toBe('cannot be said')
  })

  it('of everything but the layout still makes every concept, each of them full of questions', () => {
    const all = allConcepts(conversionText({ 'donor.engine-position': 'transverse front', 'donor.driven-wheels': 'front' }))
    expect(all.concepts.map(c => c.id)).toEqual(['drive-unit', 'gearbox-one-gear', 'gearbox-shifting'])
    for (const c of all.concepts) {
      expect(c.gaps.length).toBeGreaterThan(20)
      expect(c.failing.filter(f => f.harm === 'S3')).toEqual([])
      expect(c.unsearched.map(u => u.planned)).toEqual(['the smallest pack', 'the weakest motor', 'the smallest charger'])
    }
    expect(all.verdict.worth).toBe('go on')
  })

  it('of a layout nobody builds is said', () => {
    const all = allConcepts('schema: 1\ndonor:\n  engine-position: rear\n  driven-wheels: front\n')
    expect(all.verdict).toMatchObject({ worth: 'cannot be said', why: 'no car is built with this engine position and these driven wheels' })
  })
})
