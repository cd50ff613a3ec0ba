import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { Refusal } from './issue.ts'
import { XmlReader } from './xml.ts'
import { reference, tagOf } from './xml-tag.ts'

/** What a document tells, as one line; or its issue, as one line. */
function told(text: string, size = text.length, wanted = true): string {
  const events: string[] = []
  const reader = new XmlReader({
    open: (name, attributes) => {
      events.push(`<${name}${[...attributes].map(([k, v]) => ` ${k}=${v}`).join('')}>`)
      return wanted
    },
    close: (name, content) => void events.push(`${content}</${name}>`),
  })
  try {
    for (let i = 0; i < text.length; i += size) reader.take(text.slice(i, i + size))
    reader.end()
  } catch (refusal) {
    if (!(refusal instanceof Refusal)) throw refusal
    const { line, column, what, found } = refusal.issue
    return `${line}:${column} ${what}; found ${found}`
  }
  return events.join('')
}

const rich = `<?xml version="1.0" encoding="utf-8"?>
<!-- a > b, - -- -->
<r a='1 > 0' b="&lt;&#x41;&#66;&quot;">one &amp; <c/>two<d
 e = "f" ></d ><![CDATA[ <x> ]] ]]]>three</r>
<?after?>
`

describe('XML', () => {
  test('is told element by element', () => {
    expect(told(rich)).toBe('<r a=1 > 0 b=<AB"><c></c><d e=f></d>one & two <x> ]] ]three</r>')
  })

  test('is the same however the text is cut', () => {
    const whole = told(rich)
    for (let size = 1; size < rich.length; size++) expect(told(rich, size)).toBe(whole)
  })

  test('is refused with the place and what stands there', () => {
    const cases: readonly [string, string][] = [
      ['<!DOCTYPE a [<!ENTITY x "y">]><a/>', '1:1 a document type or declaration is not accepted; found "<!D"'],
      ['<a>\n <!ELEMENT b>', '2:2 a document type or declaration is not accepted; found "<!E"'],
      ['<a>&lol;</a>', '1:4 an entity is not known; found "&lol;"'],
      ['<a>fish & chips are good</a>', '1:9 a reference is not closed; found "& chips are go"'],
      ['<a b="&lol;"/>', '1:1 the attribute b holds an unknown entity; found "<a b="&lol;"/>"'],
      ['<a b="1" b="2"/>', '1:1 the attribute b stands twice; found "<a b="1" b="2"/>"'],
      ['<a b=1/>', '1:1 a tag is malformed; found "<a b=1/>"'],
      ['<a><b></a>', '1:7 a closing tag does not fit; found "</a>"'],
      ['<a></a></a>', '1:8 a closing tag closes nothing; found "</a>"'],
      ['<a/><b/>', '1:5 a second document begins; found <b>'],
      ['<a/>\n xy', '2:2 text stands outside the document; found "x"'],
      ['&amp;<a/>', '1:1 text stands outside the document; found "&"'],
      ['<![CDATA[x]]><a/>', '1:1 text stands outside the document; found "<![CDATA["'],
      ['<a>\n<b>', '2:4 <b> of line 2 is never closed; found the end of the file'],
      ['<a><!-- ', '1:9 the file ends inside a comment; found the end of the file'],
      ['<a b="', '1:7 the file ends inside a tag; found the end of the file'],
      ['<a b="1"<c/>', '1:1 a tag is not closed; found "<a b="1""'],
      ['<a b="1><c/>', '1:1 a value or tag is not closed; found "<a b="1>"'],
      ['<>', '1:1 a tag is empty; found "<>"'],
      ['</a>', '1:1 a closing tag closes nothing; found "</a>"'],
      ['<a>\0</a>', '1:4 a control character is not accepted; found "\\u0000"'],
      ['', '1:1 the file holds no document; found the end of the file'],
      ['<?xml version="1.0" encoding="ISO-8859-1"?><a/>', '1:1 the encoding is not accepted; found "ISO-8859-1"'],
    ]
    for (const [text, issue] of cases) {
      expect(told(text)).toBe(issue)
      expect(told(text, 1)).toBe(issue)
    }
  })

  test('is refused when nested too deeply or too long in one place, and passes over long text nobody wants', () => {
    expect(told(`${'<a>'.repeat(64)}${'</a>'.repeat(64)}`)).toMatch(/^<a>/)
    expect(told('<a>'.repeat(1_000_000))).toBe('1:193 elements are nested too deeply; found more than 64')
    const long = 'x'.repeat(70_000)
    expect(told(`<a>${long}</a>`, 1000)).toMatch(/^1:1 a text is too long/)
    expect(told(`<a>${long}<![CDATA[${long}]]><!--${long}--></a>`, 1000, false)).toBe('<a></a>')
    expect(told(`<a ${long}>`, 1000)).toMatch(/^1:1 a tag is too long/)
    expect(told(`<a b="${long}"/>`)).toMatch(/^1:1 a tag is too long/)
    expect(told(`<?${long}?><a/>`, 1000)).toMatch(/^1:1 a tag is too long/)
  })

  test('of any make takes an answer or an issue, never another exception, and time in proportion to its length', () => {
    const soup = fc.array(
      fc.constantFrom(
        '<',
        '>',
        '/',
        '!',
        '--',
        '[CDATA[',
        ']]',
        '?',
        '&',
        ';',
        '#',
        '"',
        "'",
        '=',
        ' ',
        '\n',
        'a',
        'xml',
        '<a>',
        '</a>',
        '<a b="c"/>',
      ),
      { maxLength: 60 },
    )
    fc.assert(
      fc.property(soup, fc.integer({ min: 1, max: 9 }), (parts, size) => {
        const text = parts.join('')
        expect(told(text, size)).toBe(told(text))
      }),
      { numRuns: 3000 },
    )
    const started = performance.now()
    for (const part of ['<', '&', '<a ', '"', '<!-', ']]', '<a b="', 'encoding=', '  ', '-->', '<?'])
      told(`<?xml ${part.repeat(200_000)}`, 4096)
    for (const part of ['&', ' b="', '"', ']]', ' ']) told(`<a>${part.repeat(200_000)}`, 4096)
    expect(performance.now() - started).toBeLessThan(5000)
  })
})

describe('references and tags', () => {
  test('stand for five entities and for characters XML allows', () => {
    expect(['lt', 'gt', 'amp', 'apos', 'quot', '#65', '#x1F697', '#xE9'].map(reference)).toEqual(['<', '>', '&', "'", '"', 'A', '🚗', 'é'])
    expect(['nbsp', '#0', '#xD800', '#x110000', '#xFFFF', '#', '#x', '#12a', '__proto__', ''].map(reference)).toEqual(
      Array.from({ length: 10 }),
    )
  })

  test('have names and attributes', () => {
    expect(tagOf('g:trkpt lat="1"\n\tlon=\'2\' /')).toEqual({
      name: 'g:trkpt',
      attributes: new Map([
        ['lat', '1'],
        ['lon', '2'],
      ]),
      empty: true,
    })
    expect(tagOf('')).toBe('a tag has no name')
    expect(tagOf('a b')).toBe('a tag is malformed')
  })
})
