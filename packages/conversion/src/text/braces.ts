import { isScalar, type Pair, type ParsedNode, Scalar } from 'yaml'
import { asFound } from '../issue.ts'
import type { Source } from './source.ts'
import type { Value } from './tree.ts'

/** An entry of a map as the library gives it. */
export type Item = Pair<ParsedNode, ParsedNode | null>

/** Where the colon of an entry stands; undefined for an entry between braces that has none. */
export const colonOf = (item: Item | undefined): number | undefined =>
  item?.srcToken?.sep?.find(token => token.type === 'map-value-ind')?.offset

/**
 * Reports the entries `first` to `last` between braces, which have no colon; `before` is the entry in front of them. Gives its key
 * where it turns out that a comma split its value.
 *
 * The usual cause is a comma inside a value: `{ x: 1,5 m }` is, to the library, x = 1 and a key "5 m". Nothing of that may pass unsaid.
 */
export function reportMissingColon(
  source: Source,
  before: Item | undefined,
  first: Item,
  last: Item,
  path: readonly string[],
): string | undefined {
  const from = first.key.range[0]
  const to = last.key.range[1]
  const text = source.text.slice(from, to)
  const value = before?.value
  const glued = /^([^\s:"']+):([^\s:].*)$/.exec(text)
  if (glued) {
    source.say(from, path, { what: 'a colon needs a space behind it', found: asFound(text), accepted: asFound(`${glued[1]}: ${glued[2]}`) })
  } else if (before && isScalar(before.key) && isScalar(value) && value.type === Scalar.PLAIN && value.range[1] > value.range[0]) {
    const key = String(before.key.value)
    const whole = asFound(source.text.slice(value.range[0], to))
    const what = 'between braces a comma ends a value: a value that contains a comma must be quoted'
    source.say(value.range[0], [...path, key], { what, found: whole, accepted: `${key}: ${whole}` })
    return key
  } else {
    source.say(from, path, { what: 'an entry between braces has no colon', found: asFound(text), accepted: '`{ key: value }`' })
  }
  return undefined
}

/** In `[1,5, 2,5]` a decimal comma and a comma between values look the same: figures must be set apart by a space, or quoted. */
export function reportTightComma(source: Source, items: readonly Value[], path: readonly string[]): void {
  for (const [i, right] of items.entries()) {
    const left = items[i - 1]
    if (left === undefined || left.quoted || right.quoted || right.at.offset !== left.at.end + 1) continue
    if (!/\d$/.test(left.source) || !/^\d/.test(right.source)) continue
    const accepted = `[${left.source}, ${right.source}] or ["${left.source},${right.source}"]`
    const what = 'a comma between two figures can be read in two ways'
    source.say(left.at.offset, path, { what, found: asFound(`${left.source},${right.source}`), accepted })
    return
  }
}
