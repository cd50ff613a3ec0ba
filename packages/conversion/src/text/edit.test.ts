import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { keys, readableTexts } from '../../../../tests/readable-texts.ts'
import { formatIssue } from '../issue.ts'
import { applyChange, applyEdit, applyEdits, type Change, compileEdit, type Now, renameKey } from './edit.ts'
import { readText } from './read.ts'
import { applySplice, invertSplice, type Splice } from './splice.ts'
import type { Group } from './tree.ts'

const LAPWING = [
  'schema: 1',
  'donor:',
  '  # weighed with 20 l of fuel',
  '  mass: 960 kg   # corner scales',
  '  tyre: "185/60 R14 82H"',
  'pack:',
  '  boxes:',
  '    front: { modules: 6, x: 60 mm }',
  '  note: |',
  '    sixteen modules,',
  '    one spare',
  'trips:',
  '',
].join('\n')

const after = (text: string, change: Change): string => {
  const applied = applyChange(text, change)
  return applied.ok ? applied.text : formatIssue(applied.problem)
}

describe('an edit', () => {
  it('changes one value and leaves its comment', () => {
    expect(after(LAPWING, { path: 'donor.mass', now: '958 kg' })).toBe(LAPWING.replace('960 kg', '958 kg'))
  })

  it('writes quotes only where the value needs them', () => {
    const withValue = (now: string): string => after('a:\n', { path: 'a', now })
    expect(withValue('9.1:1')).toBe('a: 9.1:1\n')
    expect(withValue('-10 °C')).toBe('a: -10 °C\n')
    expect(withValue('x: y')).toBe('a: "x: y"\n')
    expect(withValue('# 5')).toBe('a: "# 5"\n')
    expect(withValue(' 5 ')).toBe('a: " 5 "\n')
    expect(withValue('')).toBe('a: ""\n')
    expect(after('a: {x: 1}\n', { path: 'a.x', now: '1,5 m' })).toBe('a: {x: "1,5 m"}\n')
  })

  it('fills an empty key in front of its comment', () => {
    expect(after('a:   # later\nb: 1', { path: 'a', now: '5' })).toBe('a: 5   # later\nb: 1')
  })

  it('adds a key at the end of its group with the indent of its neighbours', () => {
    expect(after('a:\n    x: 1\n    # end\nb: 2\n', { path: 'a.y', now: '2' })).toBe('a:\n    x: 1\n    y: 2\n    # end\nb: 2\n')
  })

  it('makes the groups on the way', () => {
    expect(after(LAPWING, { path: 'trips.daily.speed', now: '50 km/h' })).toBe(`${LAPWING}  daily:\n    speed: 50 km/h\n`)
    expect(after('', { path: 'a.b', now: '1' })).toBe('a:\n  b: 1\n')
    expect(after('a: { }', { path: 'a.b.c', now: '1' })).toBe('a: { b: { c: 1 } }')
    expect(after('a: {b: }', { path: 'a.b.c', now: '1' })).toBe('a: {b: { c: 1 } }')
  })

  it('adds a line end where the last line has none, in the style of the file', () => {
    expect(after('a: 1\r\nb: 2', { path: 'c', now: '3' })).toBe('a: 1\r\nb: 2\r\nc: 3\r\n')
  })

  it('removes a key with its own comments and leaves those of others', () => {
    const text = 'a:\n  # about x\n  x: 1 # behind\n    # deeper\n  # about y\n  y: 2\n'
    expect(after(text, { path: 'a.x', now: null })).toBe('a:\n  # about x\n  # about y\n  y: 2\n')
  })

  it('removes the first, a middle and the last of a row with one comma each', () => {
    const text = 'a: { x: 1, y: 2 , z: 3 }'
    expect(after(text, { path: 'a.x', now: null })).toBe('a: { y: 2 , z: 3 }')
    expect(after(text, { path: 'a.y', now: null })).toBe('a: { x: 1, z: 3 }')
    expect(after(text, { path: 'a.z', now: null })).toBe('a: { x: 1, y: 2 }')
  })

  it('leaves a group that lost its last key as an empty key', () => {
    expect(after('a:\n  x: 1\nb: 2\n', { path: 'a.x', now: null })).toBe('a:\nb: 2\n')
    expect(after('a: 1\n', { path: 'a', now: null })).toBe('')
  })

  it('rewrites the lines of a note and nothing else', () => {
    const text = after(LAPWING, { path: 'pack.note', now: 'sixteen modules\n\n  two spare\n' })
    expect(text).toBe(LAPWING.replace('    sixteen modules,\n    one spare\n', '    sixteen modules\n\n      two spare\n'))
    expect(after('note: | # why\n  x\n  y\n', { path: 'note', now: '' })).toBe('note: "" # why\n')
    expect(after('note: short\nb: 1\n', { path: 'note', now: 'a\nb' })).toBe('note: |\n  a\n  b\nb: 1\n')
    expect(after('note: short # why\n', { path: 'note', now: 'a\nb' })).toBe('note: "a\\nb" # why\n')
  })

  it('writes named values as one row', () => {
    const now = { mass: '12 kg', x: '1,5 m' }
    expect(after('boxes:\n', { path: 'boxes.rear', now })).toBe('boxes:\n  rear: { mass: 12 kg, x: "1,5 m" }\n')
    expect(after('boxes: {}\n', { path: 'boxes.rear', now })).toBe('boxes: { rear: { mass: 12 kg, x: "1,5 m" } }\n')
  })

  it('changes an existing row value by value, keeping its form', () => {
    const now = { x: '2 m', z: '3 m' }
    expect(after('a: {x: 1 m , y: 1 m}\n', { path: 'a', now })).toBe('a: {x: 2 m , z: 3 m}\n')
    expect(after('a:\n  x: 1 m # here\n  y: 1 m\n', { path: 'a', now })).toBe('a:\n  x: 2 m # here\n  z: 3 m\n')
  })

  it('writes a list of values as one row', () => {
    expect(after('gears: [3.21, 1.95]\n', { path: 'gears', now: ['3,2', '1.9'] })).toBe('gears: ["3,2", 1.9]\n')
  })

  it('addresses keys with points by a list of keys or by quotes', () => {
    expect(after('a:\n  0.5 g: 1\n', { path: ['a', '0.5 g'], now: '2' })).toBe('a:\n  0.5 g: 2\n')
    expect(after('a:\n  0.5 g: 1\n', { path: 'a."0.5 g"', now: '2' })).toBe('a:\n  0.5 g: 2\n')
  })

  it('to the value that stands there changes no byte', () => {
    expect(after(LAPWING, { path: 'donor.tyre', now: '185/60 R14 82H' })).toBe(LAPWING)
  })
})

describe('an edit is refused', () => {
  const refusal = (text: string, change: Change): string => {
    const applied = applyChange(text, change)
    return applied.ok ? 'accepted' : applied.problem.what
  }

  it('where it would replace a group by a value, or a value by a group on the way', () => {
    expect(refusal(LAPWING, { path: 'donor', now: '5' })).toBe('a group stands here')
    expect(refusal(LAPWING, { path: 'donor.mass.front', now: '5' })).toBe('a single value stands where a group is needed')
  })

  it('where there is nothing to remove or rename', () => {
    expect(refusal(LAPWING, { path: 'donor.length', now: null })).toBe('there is nothing of this name')
    expect(refusal(LAPWING, { path: 'trips.daily', now: null })).toBe('there is nothing of this name')
    expect(refusal(LAPWING, { path: 'donor.length', key: 'width' })).toBe('there is nothing of this name')
  })

  it('where the key or value cannot be written', () => {
    for (const key of ['__proto__', 'constructor', '', 'a: b', '#', 'a\nb', '"q"', '{', ' a']) {
      expect(refusal('a: 1\n', { path: ['b', key], now: '1' })).toBe('this name or value cannot be written in the file')
      expect(refusal('a: 1\n', { path: 'a', key })).toBe('this cannot be a key')
    }
    for (const now of ['a\u0000', '\ud800', 'a\r\nb', '\ufeff']) {
      expect(refusal('a: 1\n', { path: 'a', now })).toBe('this name or value cannot be written in the file')
    }
  })

  it('where the path is none', () => {
    for (const path of ['', '.', 'a.', '"', 'a"b', []]) expect(refusal('a: 1\n', { path, now: '1' })).toBe('this is not a path')
  })

  it('while the file has errors, naming the first', () => {
    expect(refusal('a: 1\na: 2\n', { path: 'b', now: '1' })).toMatch(
      'the file must be mended before it can be edited: a key is given twice',
    )
  })

  it('where the file would nest too deep', () => {
    expect(refusal('a: 1\n', { path: Array.from({ length: 40 }, (_, i) => `k${i}`), now: '1' })).toMatch(
      'unreadable: the text nests too deep',
    )
  })

  it('saying where in the file', () => {
    const applied = applyEdit(LAPWING, { path: 'donor.mass.front', now: '5' })
    expect(applied).toMatchObject({ ok: false, problem: { line: 4, column: 3, path: 'donor.mass.front' } })
  })
})

describe('a renaming', () => {
  it('changes the key alone', () => {
    expect(after(LAPWING, { path: 'pack.boxes.front', key: 'nose' })).toBe(LAPWING.replace('front:', 'nose:'))
    const compiled = renameKey('"a" : 1', 'a', 'b')
    expect(compiled).toEqual({ ok: true, splice: { at: 0, out: '"a"', in: 'b' } })
  })

  it('is refused where the name is taken', () => {
    expect(renameKey('a: 1\nb: 2\n', 'a', 'b')).toMatchObject({ ok: false, problem: { what: 'this name is taken', found: '"b"' } })
  })

  it('is refused where only the old name may hold such text', () => {
    expect(renameKey('note: |\n  x\n', 'note', 'memo')).toMatchObject({ ok: false })
  })
})

describe('several edits', () => {
  it('are made all or none', () => {
    const applied = applyEdits(LAPWING, [
      { path: 'donor.mass', now: '1 kg' },
      { path: 'donor.mass.x', now: '1' },
    ])
    expect(applied).toMatchObject({ ok: false, change: { path: 'donor.mass.x' } })
  })

  it('see what those before them did, and are undone in turn', () => {
    const applied = applyEdits(LAPWING, [
      { path: 'trips.a.speed', now: '50 km/h' },
      { path: 'trips.a', key: 'b' },
      { path: 'trips.b.speed', now: '60 km/h' },
    ])
    if (!applied.ok) throw new Error(formatIssue(applied.problem))
    expect(applied.text).toBe(`${LAPWING}  b:\n    speed: 60 km/h\n`)
    expect(applied.inverse.reduce((text, splice) => applySplice(text, splice) ?? '', applied.text)).toBe(LAPWING)
  })
})

describe('random edits of random files', () => {
  const paths = (group: Group, above: readonly string[] = []): (readonly string[])[] =>
    [...group.entries.values()].flatMap(({ key, node }) => {
      const path = [...above, key]
      return [path, ...(node.kind === 'group' ? paths(node, path) : [])]
    })

  const single = [
    '1234 kg',
    '12,5 ± 1 mm',
    'a: b',
    '# x',
    '- 5',
    '',
    '[x',
    '*a',
    'yes',
    'two\nlines',
    'a\n\n  b\n',
    ' lead',
    '\n',
    '😀 x',
    '}',
  ]
  const nows: fc.Arbitrary<Now> = fc.oneof(
    fc.constantFrom(...single, null, null),
    fc.array(fc.constantFrom('1', '1,5', 'a b'), { maxLength: 3 }),
    fc.dictionary(keys, fc.constantFrom('1', '1,5 m', 'x'), { maxKeys: 3 }),
  )
  const steps = fc.array(fc.record({ pick: fc.nat(), kind: fc.nat(4), key: keys, now: nows }), { minLength: 1, maxLength: 6 })

  type Step = { readonly pick: number; readonly kind: number; readonly key: string; readonly now: Now }

  const changeOf = (tree: Group, { pick, kind, key, now }: Step): Change => {
    const all = paths(tree)
    const base = all[pick % Math.max(1, all.length)] ?? []
    if (kind === 0 && base.length > 0) return { path: base, key }
    if (kind === 1) return { path: [...base, key], now }
    if (kind === 2) return { path: [...base.slice(0, -1), key, 'deep'], now }
    return { path: base.length > 0 ? base : [key], now }
  }

  it('and then their inverses restore the text byte for byte', () => {
    const tally = { made: 0, refused: 0 }
    fc.assert(
      fc.property(readableTexts, steps, (text, drawn) => {
        let reading = readText(text)
        expect(reading.issues.map(formatIssue)).toEqual([])
        const undo: Splice[] = []
        for (const step of drawn) {
          const now = reading.text ?? ''
          if (reading.tree === undefined) throw new Error('an edited file must stay readable')
          const change = JSON.parse(JSON.stringify(changeOf(reading.tree, step))) as Change
          const applied = applyChange(now, change, reading)
          if (!applied.ok) {
            tally.refused++
            expect(applied.problem.what).not.toMatch(/unreadable|change more than/)
            continue
          }
          tally.made++
          expect(applySplice(now, applied.splice)).toBe(applied.text)
          expect(JSON.parse(JSON.stringify(applied.inverse))).toEqual(invertSplice(applied.splice))
          expect(readText(applied.text)).toEqual(applied.reading)
          undo.unshift(applied.inverse)
          reading = applied.reading
        }
        expect(undo.reduce((edited, splice) => applySplice(edited, splice) ?? 'moved', reading.text ?? '')).toBe(text)
      }),
      { numRuns: runs(20_000) },
    )
    expect(tally.made).toBeGreaterThan(tally.refused)
  })

  it('compile to the splice that applying them makes', () => {
    const compiled = compileEdit(LAPWING, { path: 'donor.mass', now: '958 kg' })
    expect(compiled).toEqual({ ok: true, splice: { at: LAPWING.indexOf('960'), out: '960 kg', in: '958 kg' } })
  })
})
