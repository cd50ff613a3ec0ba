import { describe, expect, test } from 'vitest'
import { KEYS, keyMeaning, VARIANTS } from './keys.ts'
import { NAMED, type Reading, type Requirement, type SetId } from './requirement.ts'
import { RULE_SETS } from './sets.ts'
import { WORKS } from './works.ts'

/*
 * How many rows each set must have, counted in the tables the sets were written from and not in this code:
 * rows in all, then official text, authority's page, digest, quoted, from memory, common practice.
 * The deceleration with an unbraked trailer, one row each of `un` and `de`, was counted in the table on trailers.
 */
const COUNTED: Record<SetId, readonly number[]> = {
  un: [56, 9, 0, 35, 0, 12, 0],
  de: [39, 30, 0, 0, 9, 0, 0],
  fr: [37, 23, 0, 0, 13, 1, 0],
  be: [12, 6, 1, 0, 5, 0, 0],
  it: [45, 44, 0, 0, 1, 0, 0],
  es: [11, 10, 0, 0, 1, 0, 0],
  nl: [15, 12, 2, 0, 1, 0, 0],
  ch: [27, 23, 4, 0, 0, 0, 0],
  gb: [14, 0, 7, 0, 3, 4, 0],
  ie: [8, 0, 5, 0, 2, 1, 0],
  au: [25, 5, 4, 0, 12, 4, 0],
  nz: [9, 6, 3, 0, 0, 0, 0],
  us: [19, 5, 8, 0, 2, 4, 0],
  ca: [2, 0, 0, 0, 1, 1, 0],
  'ca-qc': [14, 0, 3, 0, 11, 0, 0],
  jp: [22, 4, 1, 0, 17, 0, 0],
  in: [13, 9, 0, 0, 4, 0, 0],
  za: [2, 1, 0, 0, 1, 0, 0],
  practice: [16, 0, 0, 3, 1, 0, 12],
}

/** Works that are quotations themselves. */
const QUOTATIONS = `
  de-radio-2014 fr-question-15951 es-trade-blog nl-association gb-owner-letter gb-certificate-press gb-campaign-letter ie-press
  au-dealer-notice us-users-register ca-email-2010 qc-press qc-builder qc-newspaper jp-kanto jp-form-2-guide jp-guideline-items
  jp-guideline jp-guideline-2020 in-gsr-167 in-agency in-gsr-629 za-camper-report`

/** Figures that protect people, written down a second time. */
const PROTECTING: readonly (readonly [SetId, string, unknown, string])[] = [
  ['un', 'connector.safe-time', 1, 's'],
  ['un', 'bond.max', 0.1, 'Ω'],
  ['un', 'bond.current', 0.2, 'A'],
  ['un', 'insulation.dc', 100, 'Ω/V'],
  ['un', 'insulation.ac', 500, 'Ω/V'],
  ['un', 'insulation.dc-and-ac-joined', 500, 'Ω/V'],
  ['un', 'insulation.dc-and-ac-joined@protected-ac', 100, 'Ω/V'],
  ['un', 'insulation.inlet', 1e6, 'Ω'],
  ['un', 'battery.shock.long', [20, 28], 'g'],
  ['un', 'battery.shock.lat', [8, 15], 'g'],
  ['un', 'battery.edge.front', 420, 'mm'],
  ['un', 'battery.edge.rear', 300, 'mm'],
  ['un', 'battery.propagation', 5, 'min'],
  ['un', 'brakes.service', 6.43, 'm/s²'],
  ['un', 'brakes.trailer', 5.4, 'm/s²'],
  ['de', 'brakes.trailer', 5, 'm/s²'],
  ['un', 'brakes.stop-lamp.off', 0.7, 'm/s²'],
  ['un', 'brakes.stop-lamp.on', 1.3, 'm/s²'],
  ['de', 'fault.movement', 0.1, 'm'],
  ['de', 'brakes.secondary', 44, '% of service'],
  ['be', 'axle.share.shift', 10, '%'],
  ['it', 'axle.share.crash-equivalence', [-20, 20], '%'],
  ['it', 'mass.total.crash-equivalence', 8, '% rise'],
  ['au', 'battery.restraint.any', 20, 'times weight'],
  ['au', 'leakage.max', 20, 'mA'],
  ['jp', 'structure.safety-factor.break', 1.6, '1'],
  ['jp', 'structure.safety-factor.yield', 1.3, '1'],
  ['practice', 'battery.restraint.side', 15, 'times weight'],
  ['practice', 'battery.restraint.vertical', 10, 'times weight'],
]
const MARKS: readonly Reading[] = ['T', 'S', 'D', 'Q', 'from memory', 'common practice']

const everyRow = RULE_SETS.flatMap(set => set.rows.map(row => ({ set, row, name: `${set.id} ${nameOf(row)}` })))

function nameOf({ key, variant }: Requirement): string {
  return variant === undefined ? key : `${key}@${variant}`
}

describe('the rule sets as data', () => {
  test.each(RULE_SETS.map(set => [set.id, set] as const))('%s holds the counted rows, mark by mark', (id, { rows }) => {
    expect([rows.length, ...MARKS.map(mark => rows.filter(row => row.read === mark).length)]).toEqual(COUNTED[id])
  })

  test.each(PROTECTING)('%s %s is %s %s', (id, name, value, unit) => {
    expect(everyRow.find(({ name: at }) => at === `${id} ${name}`)?.row).toMatchObject({ value, unit })
  })

  test('there are nineteen sets and 386 rows', () => {
    expect(RULE_SETS.map(set => set.id).sort()).toEqual(Object.keys(COUNTED).sort())
    expect(everyRow).toHaveLength(386)
  })

  test('every key a set uses has a meaning, and every key with a meaning is used', () => {
    const known = new Set<string>(KEYS.map(({ key }) => key))
    const used = new Set<string>(everyRow.map(({ row }) => row.key))
    expect([...used].filter(key => !known.has(key))).toEqual([])
    expect([...known].filter(key => !used.has(key))).toEqual([])
  })

  test('keys are lower case, joined by dots, and stand once', () => {
    expect(new Set(KEYS.map(({ key }) => key)).size).toBe(KEYS.length)
    expect(KEYS.map(({ key }) => key).filter(key => !/^[a-z0-9-]+(\.[a-z0-9-]+)*$/.test(key))).toEqual([])
    for (const { key, meaning, harm, gate } of KEYS) expect(keyMeaning(key)).toEqual({ key, meaning, harm, gate })
  })

  test('every variant is explained, and every explained variant is used', () => {
    const used = new Set(everyRow.flatMap(({ row }) => row.variant ?? []))
    expect([...used].sort()).toEqual(Object.keys(VARIANTS).sort())
  })

  test('every work a row cites is in the list of works, and every work is cited', () => {
    const cited = new Set<string>(everyRow.flatMap(({ row }) => [row.work, ...(row.via ?? [])]))
    expect([...cited].filter(id => !(id in WORKS))).toEqual([])
    expect(Object.keys(WORKS).filter(id => !cited.has(id))).toEqual([])
    const titles = Object.values(WORKS).map(({ title }) => title)
    expect(titles.filter((title, at) => titles.indexOf(title) !== at)).toEqual([])
  })

  test('no set says two things to one key and variant', () => {
    const names = everyRow.map(({ name }) => name)
    expect(names.filter((name, at) => names.indexOf(name) !== at)).toEqual([])
  })

  test('every base exists, and the United Nations regulations are under every European set', () => {
    const ids = RULE_SETS.map(set => set.id)
    expect(RULE_SETS.flatMap(({ base }) => base ?? []).filter(base => !ids.includes(base))).toEqual([])
    const onUn = RULE_SETS.filter(({ base }) => base === 'un').map(({ id }) => id)
    expect(onUn.sort()).toEqual(['be', 'ch', 'de', 'es', 'fr', 'gb', 'ie', 'it', 'nl'])
    expect(RULE_SETS.filter(({ baseOnly }) => baseOnly).map(({ id }) => id)).toEqual(['gb', 'ie'])
    expect(RULE_SETS.find(({ id }) => id === 'ca-qc')?.base).toBe('ca')
  })

  test('a figure to compare is a number; the few limits in words are these', () => {
    const inWords = everyRow.filter(({ row: { test, value } }) => ['max', 'min', 'range'].includes(test) && typeof value === 'string')
    expect(inWords.map(({ name }) => name).sort()).toEqual([
      'ca-qc donor.built.to',
      'ca-qc mass.axle.max',
      'ca-qc mass.gross.max',
      'ch speedo.over',
      'de tow.mass',
      'gb structure.keep-share',
      'in donor.built.from',
      'in mass.axle.max',
      'in mass.kerb.ratio@goods',
      'us post-crash.isolation.dc',
    ])
  })

  test('a range has its lower end below its upper, and nothing else has two ends but facts', () => {
    const pairs = everyRow.filter(({ row: { value } }) => Array.isArray(value) && typeof value[0] === 'number')
    for (const { row, name } of pairs) {
      const [low, high] = row.value as readonly [number, number]
      expect(low, name).toBeLessThan(high)
      expect(['range', 'fact'], name).toContain(row.test)
    }
    expect(everyRow.filter(({ row }) => row.test === 'range' && !pairs.some(pair => pair.row === row))).toEqual([])
  })

  test('a figure to compare has a unit', () => {
    const bare = everyRow.filter(({ row: { value, unit } }) => typeof value === 'number' && unit === '')
    expect(bare.map(({ name }) => name)).toEqual([])
  })

  test('a list has items, each said once', () => {
    for (const { row, name } of everyRow.filter(({ row: { value, test } }) => test === 'list' || Array.isArray(value))) {
      const items = row.value as readonly unknown[]
      expect(new Set(items).size, name).toBe(items.length)
      expect(items.length, name).toBeGreaterThan(0)
    }
  })

  test('a row quoted by others names who quotes it, unless the work is itself the quotation', () => {
    const quotations = new Set<string>(QUOTATIONS.split(/\s+/))
    const bare = everyRow.filter(({ row }) => row.read === 'Q' && !row.via?.length && !quotations.has(row.work))
    expect(bare.map(({ name }) => name)).toEqual([])
  })

  test('what a row names instead of numbering stands in the rows it is for', () => {
    const naming = (name: string) => everyRow.filter(({ row }) => row.value === name).map(({ name: at }) => at)
    expect(naming(NAMED.makerGross)).toEqual(['au mass.gross.exceed.trigger', 'ca-qc mass.gross.max'])
    expect(naming(NAMED.makerAxles)).toEqual(['ca-qc mass.axle.max'])
    expect(naming(NAMED.moreSeats)).toEqual(['nl seats.change'])
    expect(naming(NAMED.speedometerOverRead)).toEqual(['ch speedo.over'])
  })

  test('a date is a day, a month, a year, an edition, or several of these', () => {
    const one = /^(\d{4}(-\d{2}(-\d{2})?)?|\d{2} series|archived|consolidated|undated|later|1993 and before|until replaced)$/
    const odd = everyRow.filter(({ row }) => row.date?.split('; ').some(part => !one.test(part)))
    expect(odd.map(({ name, row }) => `${name}: ${row.date}`)).toEqual([])
  })
})
