import { describe, expect, it } from 'vitest'
import { HAZARDS } from './hazards.ts'
import type { Harm } from './rule.ts'
import { RULES } from './rules.ts'

const STAGES = [
  'brief',
  'donor',
  'drive',
  'pack',
  'fit',
  'high voltage',
  'signals',
  'thermal',
  'brakes & steering',
  'driveline',
  'build',
  'prove',
  'papers',
  'service',
]
/** How many entries each letter of the catalogue has, counted in the catalogue the list was written from; how many of them S1, S2, S3. */
const COUNTED: Readonly<Record<string, number>> = { A: 16, B: 8, C: 16, D: 7, E: 12, F: 10, G: 6, H: 8, I: 5, J: 7, K: 2, L: 4, M: 2, N: 3 }
const HARMS: Readonly<Record<Harm, number>> = { S1: 15, S2: 50, S3: 41 }
const RANK: Readonly<Record<Harm, number>> = { S1: 1, S2: 2, S3: 3 }

describe('the failure catalogue', () => {
  it('holds 106 entries, numbered without a hole from A1 to N3', () => {
    expect(HAZARDS).toHaveLength(106)
    expect(HAZARDS.map(h => h.id)).toEqual(
      Object.entries(COUNTED).flatMap(([letter, n]) => Array.from({ length: n }, (_, i) => `${letter}${i + 1}`)),
    )
  })
  it('has the harms the catalogue counts', () => {
    for (const harm of ['S1', 'S2', 'S3'] as const) expect(HAZARDS.filter(h => h.harm === harm).length, harm).toBe(HARMS[harm])
  })
  it('names stages of the job and ways to be caught that exist, none twice', () => {
    for (const { id, stages, caughtBy } of HAZARDS) {
      for (const stage of stages) expect(STAGES, id).toContain(stage)
      for (const way of caughtBy) expect(['rule', 'test', 'drawing'], id).toContain(way)
      expect(new Set(stages).size, id).toBe(stages.length)
      expect(new Set(caughtBy).size, id).toBe(caughtBy.length)
    }
  })
  it('says cause and effect in words of its own for each, none repeated', () => {
    expect(new Set(HAZARDS.map(h => h.cause)).size).toBe(106)
    for (const { id, cause, effect } of HAZARDS) expect(Math.min(cause.length, effect.length), id).toBeGreaterThan(5)
  })
})

describe('rules and the failure catalogue', () => {
  const byId = new Map(HAZARDS.map(h => [h.id, h]))
  const named = RULES.flatMap(rule => rule.hazards.map(id => ({ rule, id })))

  it('names only hazards that exist, and those only once in a rule', () => {
    expect(named.filter(({ id }) => !byId.has(id)).map(({ rule, id }) => `${rule.id}: ${id}`)).toEqual([])
    for (const { id, hazards } of RULES) expect(new Set(hazards).size, id).toBe(hazards.length)
  })
  it('gives a rule at least the harm of the worst hazard it catches', () => {
    const tame = named.filter(({ rule, id }) => RANK[rule.harm] < RANK[byId.get(id)?.harm ?? 'S1'])
    expect(tame.map(({ rule, id }) => `${rule.id} is ${rule.harm}, ${id} is ${byId.get(id)?.harm}`)).toEqual([])
  })
  it('catches by a rule only what the catalogue says a rule can catch', () => {
    expect(named.filter(({ id }) => !byId.get(id)?.caughtBy.includes('rule')).map(({ rule, id }) => `${rule.id}: ${id}`)).toEqual([])
  })
})
