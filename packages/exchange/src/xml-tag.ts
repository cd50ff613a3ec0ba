export type Attributes = ReadonlyMap<string, string>
export type Tag = { readonly name: string; readonly attributes: Attributes; readonly empty: boolean }

const NAME = /[^\s/=<>"'&]+/y
const ATTRIBUTE = /\s+([^\s/=<>"'&]+)\s*=\s*(?:"([^"]*)"|'([^']*)')/y
const ENTITIES: ReadonlyMap<string, string> = new Map([
  ['lt', '<'],
  ['gt', '>'],
  ['amp', '&'],
  ['apos', "'"],
  ['quot', '"'],
])

/** The character a reference stands for, without `&` and `;`; undefined when it is none of the five entities and no character XML allows. */
export function reference(name: string): string | undefined {
  if (!name.startsWith('#')) return ENTITIES.get(name)
  const digits = /^#(?:(\d{1,7})|x([0-9a-fA-F]{1,6}))$/.exec(name)
  if (!digits) return undefined
  const code = digits[1] === undefined ? Number.parseInt(digits[2]!, 16) : Number.parseInt(digits[1], 10)
  const allowed =
    code === 9 ||
    code === 10 ||
    code === 13 ||
    (code >= 0x20 && code < 0xd800) ||
    (code > 0xdfff && code < 0xfffe) ||
    (code > 0xffff && code <= 0x10ffff)
  return allowed ? String.fromCodePoint(code) : undefined
}

/** Name and attributes of an opening tag, given without its angle brackets; a sentence when it is malformed. Linear in its length. */
export function tagOf(markup: string): Tag | string {
  NAME.lastIndex = 0
  const name = NAME.exec(markup)?.[0]
  if (name === undefined) return 'a tag has no name'
  const attributes = new Map<string, string>()
  let at = name.length
  for (;;) {
    ATTRIBUTE.lastIndex = at
    const found = ATTRIBUTE.exec(markup)
    if (!found) break
    at = ATTRIBUTE.lastIndex
    if (attributes.has(found[1]!)) return `the attribute ${found[1]} stands twice`
    const value = resolved(found[2] ?? found[3]!)
    if (value === undefined) return `the attribute ${found[1]} holds an unknown entity`
    attributes.set(found[1]!, value)
  }
  const rest = markup.slice(at).trim()
  if (rest !== '' && rest !== '/') return 'a tag is malformed'
  return { name, attributes, empty: rest === '/' }
}

function resolved(value: string): string | undefined {
  if (!value.includes('&')) return value
  let text = ''
  let from = 0
  for (let at = value.indexOf('&'); at >= 0; at = value.indexOf('&', from)) {
    const end = value.indexOf(';', at)
    const character = end < 0 ? undefined : reference(value.slice(at + 1, end))
    if (character === undefined) return undefined
    text += value.slice(from, at) + character
    from = end + 1
  }
  return text + value.slice(from)
}
