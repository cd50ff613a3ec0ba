import { describe, expect, test } from 'vitest'
import { KEYS } from './keys.ts'
import type { Reading, SetId } from './requirement.ts'
import { decides, limitsFor, RULE_SETS, ruleSet } from './sets.ts'

describe('looking up a limit', () => {
  test('a set answers before its base', () => {
    expect(limitsFor('de')('brakes.service')).toMatchObject({ from: 'de', fellBack: false, requirement: { value: 5 } })
    expect(limitsFor('fr')('brakes.service')).toMatchObject({ from: 'un', fellBack: false, requirement: { value: 6.43 } })
  })

  test('where neither set nor base has the key, common practice stands in and says so', () => {
    expect(limitsFor('de')('power.ratio')).toMatchObject({ from: 'practice', fellBack: true, requirement: { value: 1.2 } })
    expect(limitsFor('za')('bond.max')).toMatchObject({ from: 'practice', fellBack: true, requirement: { value: 0.1 } })
    expect(limitsFor('un')('ask.before')).toMatchObject({ from: 'practice', fellBack: true })
    expect(limitsFor('practice')('power.ratio')).toMatchObject({ from: 'practice', fellBack: false })
  })

  test('falling back is flagged for every set and key that comes from practice, and for nothing else', () => {
    for (const { id } of RULE_SETS)
      for (const { key } of KEYS) {
        const found = limitsFor(id)(key)
        if (found) expect(found.fellBack, `${id} ${key}`).toBe(found.from === 'practice' && id !== 'practice')
      }
  })

  test('a key nobody answers gives nothing', () => {
    expect(limitsFor('de')('torque.ratio')).toBeUndefined()
    expect(limitsFor('us')('fee')).toBeUndefined()
  })

  test('a variant goes before the general row, which stands in for a variant the set lacks', () => {
    expect(limitsFor('be')('power.ratio', 'le60kw')?.requirement).toMatchObject({ variant: 'le60kw', value: 1.2 })
    expect(limitsFor('be')('power.ratio')?.requirement.value).toEqual([0.65, 1])
    expect(limitsFor('fr')('power.ratio', 'le60kw')?.requirement.value).toEqual([0.65, 1])
    expect(limitsFor('us')('fee', 'va')?.requirement.value).toBe(40)
    expect(limitsFor('ca-qc')('route.allowed', 'on')).toMatchObject({ from: 'ca-qc', requirement: { key: 'route.allowed' } })
  })

  test('a variant of the base is found where the set is silent', () => {
    const joined = limitsFor('it')('insulation.dc-and-ac-joined', 'protected-ac')
    expect(joined).toMatchObject({ from: 'un', fellBack: false, requirement: { value: 100 } })
    expect(limitsFor('it')('insulation.dc-and-ac-joined')?.requirement.value).toBe(500)
  })

  test('in Britain and Ireland the base holds only inside an approval, and the answer says when', () => {
    expect(limitsFor('gb')('bond.max')).toMatchObject({ from: 'un', onlyWhen: ruleSet('gb')?.baseOnly })
    expect(limitsFor('ie')('bond.max')?.onlyWhen).toMatch(/new car/)
    expect(limitsFor('gb')('structure.points')).not.toHaveProperty('onlyWhen')
    expect(limitsFor('gb')('power.ratio')).not.toHaveProperty('onlyWhen')
    expect(limitsFor('fr')('bond.max')).not.toHaveProperty('onlyWhen')
  })

  test('a name from outside is looked up softly, a wrong one in code stops at once', () => {
    expect(ruleSet('ca-qc')?.name).toBe('Québec')
    expect(ruleSet('xx')).toBeUndefined()
    expect(ruleSet('constructor')).toBeUndefined()
    expect(() => limitsFor('xx' as SetId)).toThrow(/xx does not exist/)
  })
})

describe('what a reading mark may decide', () => {
  const said = (read: Reading) => (['S1', 'S2', 'S3'] as const).map(harm => decides({ read }, harm))

  test('a limit from memory never decides what protects people, and only warns elsewhere', () => {
    expect(said('from memory')).toEqual(['warning only', 'warning only', 'no'])
  })

  test('a quoted limit warns whatever the harm', () => {
    expect(said('Q')).toEqual(['warning only', 'warning only', 'warning only'])
  })

  test('text, page, digest and common practice decide', () => {
    for (const read of ['T', 'S', 'D', 'common practice'] as const) expect(said(read)).toEqual(['yes', 'yes', 'yes'])
  })

  test('the French axle share, which is from memory and protects people, decides nothing; the quoted Belgian one warns', () => {
    const mark = (set: SetId) => decides(limitsFor(set)('axle.share.shift')!.requirement, 'S3')
    expect([mark('fr'), mark('be'), mark('practice')]).toEqual(['no', 'warning only', 'yes'])
  })
})
