import fc from 'fast-check'

/** What a random file holds: values as they are written, notes as lists of lines, and named things. */
type Written = string | readonly string[] | { readonly [key: string]: Written }

const KEYS = ['mass', 'wheelbase', 'tyre', 'box-rear', 'x', 'y', 'cells', 'ratio', 'at', 'note', '1000 rpm', '0.5']
const PLAIN = [
  '1180 kg',
  '0.62 ± 0.04 m2',
  '9.1:1',
  '-10 °C',
  '185/60 R14 82H',
  '1180 kg (measured, scales)',
  '25 %',
  '1,5 m',
  'yes',
  '5"',
  '😀',
]
const OTHER = ['', '~', '2024-05-12', '"quoted # no comment"', "'it''s'", '"a\\tb: \\"c\\""', '""', '[3.21, 1.95]', '[]', '[ "1,5 m" , b ]']

export const keys: fc.Arbitrary<string> = fc.constantFrom(...KEYS)
const values = fc.constantFrom(...PLAIN, ...OTHER)
const noteLines = fc.array(fc.constantFrom('two lines', '  further in', '', '# no comment', 'a: b', '- c', '[{', '"open'), {
  minLength: 1,
  maxLength: 4,
})

const tree = fc.letrec<{ group: { [key: string]: Written } }>(tie => ({
  group: fc.dictionary(keys, fc.oneof({ depthSize: 'small', maxDepth: 3 }, values, values, noteLines, tie('group')), { maxKeys: 5 }),
})).group

/** Where a file is laid out freely: each draw decides on one comment, empty line or odd space. */
type Draw = () => number

function lines(group: { readonly [key: string]: Written }, indent: string, step: string, draw: Draw): string[] {
  return Object.entries(group).flatMap(([key, written]) => {
    const above = [...(draw() === 0 ? [`${indent}# about ${key}`] : []), ...(draw() === 1 ? [''] : [])]
    const below = draw() === 3 ? [`${indent}# end of ${key}`] : draw() === 4 ? [`${indent}${step} # deeper`] : []
    const named = `${indent}${key}${draw() === 5 ? ' ' : ''}:`
    return [...above, ...body(key, written, named, indent, step, draw), ...below]
  })
}

function body(key: string, written: Written, named: string, indent: string, step: string, draw: Draw): string[] {
  const comment = draw() < 2 ? '   # behind' : ''
  const space = draw() === 2 ? '   ' : ' '
  if (typeof written === 'string') return [(written === '' ? named : named + space + written) + comment]
  if (isLines(written)) {
    const own = written.map(line => (line === '' ? '' : `${indent}${step}${line}`))
    const first = written.find(line => line !== '')
    return key !== 'note' || first === undefined || first.startsWith(' ') ? [`${named} "${'text'}"`] : [`${named} |${comment}`, ...own]
  }
  if (Object.keys(written).length === 0) return [named + (draw() < 5 ? '' : `${space}{}`) + comment]
  const flow = draw() < 4 ? inBraces(written, draw() < 5) : undefined
  return flow === undefined ? [named + comment, ...lines(written, indent + step, step, draw)] : [named + space + flow + comment]
}

/** The group in one line, or nothing where something in it cannot stand there. */
function inBraces(group: { readonly [key: string]: Written }, wide: boolean): string | undefined {
  const entries = Object.entries(group).map(([key, written]) => {
    if (isLines(written)) return undefined
    if (typeof written !== 'string') return `${key}: ${inBraces(written, wide) ?? '1'}`
    return /^[^"'[].*,/.test(written) ? undefined : `${key}: ${written}`
  })
  if (entries.includes(undefined)) return undefined
  return wide ? `{ ${entries.join(' , ')} }` : `{${entries.join(', ')}}`
}

const isLines = (written: Written): written is readonly string[] => Array.isArray(written)

/**
 * Random files that a person might have written: groups in lines and in braces, comments everywhere, odd spacing, both line ends, two
 * or four columns of indent, empty and quoted values, rows, notes, with or without a line end at the end or a byte order mark.
 */
export const readableTexts: fc.Arbitrary<string> = fc
  .record({
    group: tree,
    draws: fc.infiniteStream(fc.nat(9)),
    lineEnd: fc.constantFrom('\n', '\r\n'),
    step: fc.constantFrom('  ', '    '),
    closed: fc.boolean(),
    mark: fc.constantFrom('', '', '', '\ufeff'),
  })
  .map(({ group, draws, lineEnd, step, closed, mark }) => {
    const draw: Draw = () => draws.next().value ?? 0
    const text = lines(group, '', step, draw).join(lineEnd)
    return mark + text + (closed && text !== '' ? lineEnd : '')
  })
