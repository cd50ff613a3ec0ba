import { describe, expect, it } from 'vitest'
import { formatIssue } from '../issue.ts'
import { readText } from '../text/read.ts'
import { entryAt } from '../text/tree.ts'
import { CURRENT_SCHEMA, MIGRATIONS } from './list.ts'
import { migrate } from './migrate.ts'
import { type Migration, migrationFault } from './migration.ts'

/** Versions that never existed: in 0 the donor car had a `weight`, in 1 the modules were counted beside the boxes. */
const weightToMass: Migration = {
  from: 0,
  to: 1,
  says: 'the weight of the donor car is called its mass',
  edits: tree => (entryAt(tree, ['donor', 'weight']) ? [{ path: 'donor.weight', key: 'mass' }] : []),
}
const modulesIntoPack: Migration = {
  from: 1,
  to: 2,
  says: 'the number of modules stands with the pack',
  edits: tree => {
    const node = entryAt(tree, ['modules'])?.node
    return node?.kind === 'value'
      ? [
          { path: 'pack.modules', now: node.source },
          { path: 'modules', now: null },
        ]
      : []
  },
}
const INVENTED = { current: 2, migrations: [weightToMass, modulesIntoPack] }

const BEFORE = 'schema: 0 # first draft\ndonor:\n  weight:  960 kg   # with 20 l\n\n# salvaged\nmodules: 16\npack:\n  chemistry: NMC\n'
const AFTER = 'schema: 2 # first draft\ndonor:\n  mass:  960 kg   # with 20 l\n\n# salvaged\npack:\n  chemistry: NMC\n  modules: 16\n'

const problemOf = (text: string, ways?: typeof INVENTED): string => {
  const migrated = migrate(text, ways)
  return migrated.ok ? 'none' : formatIssue(migrated.problem)
}

describe('the migrations of this program', () => {
  it('have no gaps and lead to the current schema', () => {
    expect(migrationFault(MIGRATIONS, CURRENT_SCHEMA)).toBeUndefined()
  })
})

describe('a list of migrations', () => {
  it('with a gap, a jump or a wrong end is a fault that is named', () => {
    const step = (from: number, to: number): Migration => ({ from, to, says: '', edits: () => [] })
    expect(migrationFault([step(0, 1), step(1, 2)], 2)).toBeUndefined()
    expect(migrationFault([step(0, 1), step(2, 3)], 3)).toBe('no migration starts at 1: the next one starts at 2')
    expect(migrationFault([step(0, 2)], 2)).toBe('the migration from 0 must lead to 1, not to 2')
    expect(migrationFault([step(0, 1)], 2)).toBe('the last migration leads to 1, but the current schema is 2')
    expect(() => migrate('schema: 0\n', { current: 3, migrations: [step(0, 1), step(2, 3)] })).toThrow('no migration starts at 1')
  })
})

describe('an older file', () => {
  it('is brought up to date step by step, its comments and spacing kept', () => {
    const migrated = migrate(BEFORE, INVENTED)
    expect(migrated).toMatchObject({ ok: true, text: AFTER, applied: [weightToMass.says, modulesIntoPack.says], notes: [] })
    expect(migrated.ok && migrated.reading).toEqual(readText(AFTER))
  })

  it('starts with the step for its own version', () => {
    const migrated = migrate(BEFORE.replace('schema: 0', 'schema: 1').replace('weight', 'mass'), INVENTED)
    expect(migrated).toMatchObject({ ok: true, text: AFTER, applied: [modulesIntoPack.says] })
  })

  it('that is up to date stays as it is, and twice is the same as once', () => {
    expect(migrate(AFTER, INVENTED)).toMatchObject({ ok: true, text: AFTER, applied: [] })
  })

  it('stays whole where a step cannot be made', () => {
    const taken = 'schema: 0\ndonor:\n  weight: 1 kg\n  mass: 2 kg\n'
    expect(problemOf(taken, INVENTED)).toMatch(/^3:3 donor\.weight: the step from schema 0 to 1 .* cannot be made: this name is taken/)
  })

  it('must be free of mistakes before a step is made', () => {
    expect(problemOf(`${BEFORE}pack:\n`, INVENTED)).toMatch('a key is given twice')
    expect(migrate('schema: 2\na: 1\na: 2\n', INVENTED)).toMatchObject({ ok: true, applied: [] })
  })

  it('older than the oldest step is refused', () => {
    expect(problemOf('schema: 0\n')).toBe('1:9 schema: this file is schema 0; the oldest this Ampwright can bring up to date is 1')
  })
})

describe('the schema line', () => {
  it('of a newer program gives one clear message', () => {
    expect(problemOf('schema: 7\n')).toBe('1:9 schema: this file is schema 7; this Ampwright reads up to 1: update Ampwright')
  })

  it('that is missing is asked for with what to write', () => {
    expect(problemOf('donor:\n')).toBe('1:1 schema: the file does not say which schema it is written in; accepted a first line `schema: 1`')
  })

  it('is not needed in an empty file, but noted', () => {
    expect(migrate('# nothing yet\n')).toMatchObject({ ok: true, applied: [], notes: [{ path: 'schema', harm: 'note' }] })
  })

  it('must be a whole number', () => {
    for (const bad of ['one', '1.0', '-1', '', '[1]', '{ a: 1 }', '99999999999']) {
      expect(problemOf(`schema: ${bad}\n`)).toMatch(/^1:\d+ schema: the schema is a whole number; found .*; accepted `schema: 1`$/)
    }
  })

  it('of a file refused as a whole is not asked for', () => {
    expect(problemOf('schema: 1\u0000\n')).toMatch('a control character')
  })
})
