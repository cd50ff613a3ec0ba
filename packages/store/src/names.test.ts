import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../tests/counts.ts'
import { dataFolder } from './data-folder.ts'
import { fileName, isFileName, slugOf } from './names.ts'

describe('the name of a file beside a conversion', () => {
  it.each(['attachments/valley-road.gpx', 'photo 1.jpg', 'Größe.csv', 'a', '2026-05-12 (rear).csv'])('may be %s', name =>
    expect(isFileName(name)).toBe(true),
  )
  it.each([
    '',
    '.',
    '..',
    '../x',
    'a/../b',
    '/a',
    'a/',
    'a//b',
    'a\\b',
    'C:x',
    'a\u0000b',
    'con',
    'NUL.csv',
    '.hidden',
    'a.',
    'a ',
    'x.conversion.yaml',
    'a/b/c/d/e',
    'x'.repeat(121),
    'a\nb',
    '%2e%2e/x',
  ])('may not be %j', name => {
    expect(isFileName(name)).toBe(false)
    expect(() => fileName(name)).toThrow('accepted: letters')
  })
  it('never leads out of its folder', () =>
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          fc.array(fc.constantFrom('.', '..', '/', '\\', 'a', ' '), { maxLength: 8 }).map(parts => parts.join('')),
        ),
        name => {
          if (isFileName(name)) expect(name.split('/').every(part => part !== '..' && part !== '.' && part !== '')).toBe(true)
        },
      ),
      { numRuns: runs(4000) },
    ))
})

describe('the folder name of a copy', () => {
  it.each([
    ['Lapwing roadster', 'lapwing-roadster'],
    ['Größe 12 / Ö', 'gro-e-12-o'],
    ['…', 'conversion'],
    ['CON', 'conversion-con'],
    ['../../etc', 'etc'],
    ['', 'conversion'],
  ])('of %j is %s', (name, slug) => expect(slugOf(name)).toBe(slug))
  it('is always small letters, figures and dashes', () =>
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), name => {
        expect(slugOf(name)).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/)
        expect(slugOf(name).length).toBeLessThanOrEqual(72)
      }),
      { numRuns: runs(2000) },
    ))
})

describe('the data folder', () => {
  const home = '/u'
  it('is what was asked for, then what the environment says, then the usual place of the system', () => {
    expect(dataFolder('/d', { platform: 'linux', env: { AMPWRIGHT_DATA: '/e' }, home })).toBe('/d')
    expect(dataFolder(undefined, { platform: 'linux', env: { AMPWRIGHT_DATA: '/e' }, home })).toBe('/e')
    expect(dataFolder(undefined, { platform: 'linux', env: {}, home })).toBe('/u/.local/share/ampwright')
    expect(dataFolder(undefined, { platform: 'linux', env: { XDG_DATA_HOME: '/x' }, home })).toBe('/x/ampwright')
    expect(dataFolder(undefined, { platform: 'linux', env: { XDG_DATA_HOME: 'relative' }, home })).toBe('/u/.local/share/ampwright')
    expect(dataFolder(undefined, { platform: 'darwin', env: {}, home })).toBe('/u/Library/Application Support/ampwright')
    expect(dataFolder(undefined, { platform: 'win32', env: {}, home })).toBe('/u/AppData/Local/ampwright')
  })
})
