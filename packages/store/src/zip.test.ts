import { spawnSync } from 'node:child_process'
import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../tests/counts.ts'
import { bundled, unbundled } from './bundle.ts'
import { StoreFault } from './fault.ts'
import { unzip, zip } from './zip.ts'

const names = fc.stringMatching(/^[a-zäß0-9]{1,12}(\/[a-z]{1,8})?\.csv$/)

describe('a zip file', () => {
  it('gives back what went in, byte for byte, and is the same each time', () =>
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.record({ name: names, bytes: fc.uint8Array({ maxLength: 400 }) }), { selector: e => e.name }),
        entries => {
          const file = zip(entries)
          expect(file.equals(zip(entries))).toBe(true)
          expect(unzip(file, 1e6).map(e => ({ name: e.name, bytes: Uint8Array.from(e.bytes) }))).toEqual(entries)
        },
      ),
      { numRuns: runs(1000) },
    ))
  it('is refused with one message, and nothing else happens, when it is torn or not one', () =>
    fc.assert(
      fc.property(fc.nat(), fc.nat(255), fc.boolean(), fc.uint8Array({ maxLength: 60 }), (at, byte, cut, rubbish) => {
        const whole = zip([
          { name: 'a.csv', bytes: Buffer.from('x,y\n'.repeat(40)) },
          { name: 'b/c.csv', bytes: Buffer.from([1, 2, 3]) },
        ])
        const torn = cut ? whole.subarray(0, at % whole.length) : Buffer.from(whole)
        if (!cut) torn[at % torn.length] = byte
        for (const file of [torn, Buffer.from(rubbish)])
          try {
            unzip(file, 1000)
          } catch (e) {
            expect(e).toBeInstanceOf(StoreFault)
          }
      }),
      { numRuns: runs(4000) },
    ))
  it('is not unpacked beyond what is accepted, whatever it says of itself', () => {
    const bomb = zip([{ name: 'zeros.csv', bytes: Buffer.alloc(3_000_000) }])
    expect(bomb.length).toBeLessThan(10_000)
    expect(() => unzip(bomb, 1_000_000)).toThrow('it unpacks to too much')
    const lying = Buffer.from(bomb)
    lying.writeUInt32LE(10, lying.length - 22 - 46 - 9 + 24)
    expect(() => unzip(lying, 1_000_000)).toThrow('no bundle that can be read')
  })
  it('is read by another reader of zip files, where one is there', () => {
    const folder = mkdtempSync(join(tmpdir(), 'ampwright-')),
      file = join(folder, 'a.zip')
    writeFileSync(
      file,
      zip([
        { name: 'lög/b.csv', bytes: Buffer.from('x,y\n'.repeat(40)) },
        { name: 'empty.csv', bytes: Buffer.alloc(0) },
      ]),
    )
    const other = spawnSync(
      'python3',
      [
        '-c',
        `import zipfile,sys\nz=zipfile.ZipFile(sys.argv[1])\nassert z.testzip() is None\nprint([(i.filename, len(z.read(i))) for i in z.infolist()])`,
        file,
      ],
      { encoding: 'utf8' },
    )
    expect(other.error !== undefined || other.stdout.trim() === "[('lög/b.csv', 160), ('empty.csv', 0)]", other.stderr).toBe(true)
  })
})

describe('a bundle', () => {
  const text = 'schema: 1\r\ncar: Wren # kept\r\n',
    files = { 'attachments/log.csv': Buffer.from('a,b\n1,2\n'), 'photo 1.jpg': Buffer.from([0, 255, 3]) }
  it('gives back text and files byte for byte, and where they came from', () => {
    const back = unbundled(bundled('Wren', { text, files, from: { id: '0123456789abcdef', revision: 4 } }))
    expect(back.text).toBe(text)
    expect(Object.entries(back.files).map(([name, bytes]) => [name, Buffer.from(bytes)])).toEqual(Object.entries(files))
    expect(back.from).toEqual({ id: '0123456789abcdef', revision: 4 })
  })
  it.each([
    [
      'a name that leaves its folder',
      [
        { name: 'a.conversion.yaml', bytes: Buffer.from('') },
        { name: '../x', bytes: Buffer.from('') },
      ],
      'name of a file',
    ],
    [
      'an absolute name',
      [
        { name: 'a.conversion.yaml', bytes: Buffer.from('') },
        { name: '/etc/x', bytes: Buffer.from('') },
      ],
      'name of a file',
    ],
    ['no text', [{ name: 'x.csv', bytes: Buffer.from('') }], '0 conversion texts'],
    ['two texts', ['a', 'b'].map(n => ({ name: `${n}.conversion.yaml`, bytes: Buffer.from('') })), '2 conversion texts'],
    ['a text that is not UTF-8', [{ name: 'a.conversion.yaml', bytes: Buffer.from([0xff, 0xfe]) }], 'not UTF-8'],
    [
      'a newer format',
      [
        { name: 'a.conversion.yaml', bytes: Buffer.from('') },
        { name: 'ampwright.json', bytes: Buffer.from('{"format":2}') },
      ],
      'newer format',
    ],
  ])('is refused with %s', (_, entries, why) => {
    expect(() => unbundled(zip(entries))).toThrow(why)
  })
  it('is refused where a file in it is not what it was', () => {
    const about = { format: 1, files: { 'x.csv': 'ab'.repeat(32) } }
    const entries = [
      { name: 'a.conversion.yaml', bytes: Buffer.from('') },
      { name: 'ampwright.json', bytes: Buffer.from(JSON.stringify(about)) },
      { name: 'x.csv', bytes: Buffer.from('1') },
    ]
    expect(() => unbundled(zip(entries))).toThrow('«x.csv» is not what it was')
  })
})
