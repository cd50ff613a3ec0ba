import type { Issue } from '../issue.ts'
import { pathText } from '../text/path.ts'
import { entryAt, isEmptyValue, type TextTree } from '../text/tree.ts'
import type { ShelfPiece } from './piece.ts'

const ID = /^[0-9a-f]{16}$/

/** What is wrong with pieces beyond single values: what they leave unsaid, and what does not go together. */
export function shelfFaults(tree: TextTree, pieces: readonly ShelfPiece[], file: string | undefined): readonly Issue[] {
  const out: Issue[] = []
  /** At the key of a piece, or at one of its values. */
  function say(p: ShelfPiece, below: readonly string[], what: string, found: string, accepted: string, harm?: 'note'): void {
    const at = entryAt(tree, ['shelf', p.key, ...below]) ?? entryAt(tree, ['shelf', p.key]),
      { line, column } = at?.keyAt ?? { line: 1, column: 1 }
    const path = pathText(['shelf', p.key, ...below])
    out.push({ ...(file === undefined ? {} : { file }), line, column, path, what, found, accepted, ...(harm ? { harm } : {}) })
  }
  const seen = new Map<string, ShelfPiece>()
  for (const p of pieces) {
    const { node } = entryAt(tree, ['shelf', p.key]) ?? {}
    // What is no group of lines was said already.
    if (node?.kind !== 'group' && !(node && isEmptyValue(node))) continue
    if (p.part === undefined && p.what === undefined)
      say(p, [], 'nothing says what this piece is', 'neither `part` nor `what`', 'a record (part: class-name@1) or plain words (what: …)')
    if (p.quoteUntil !== undefined && p.pricedOn !== undefined && p.quoteUntil < p.pricedOn)
      say(p, ['quote-until'], 'the quote ends before it was given', `«${p.quoteUntil}»`, `${p.pricedOn} or later`)
    if (p.quoteUntil !== undefined && p.priceIs === 'paid')
      say(p, ['quote-until'], 'a price that is paid has no last day', `«${p.quoteUntil}»`, 'nothing here, or `price-is: quoted`', 'note')
    if (p.reserved?.conversion !== undefined && !ID.test(p.reserved.conversion))
      say(p, ['reserved', 'conversion'], 'id of a conversion', `«${p.reserved.conversion}»`, '16 figures and letters a to f, or nothing')
    if (p.serial === undefined) continue
    const mark = JSON.stringify([p.part ?? p.what, p.serial]),
      other = seen.get(mark)
    if (other) say(p, ['serial'], `the same serial number as «${other.key}»`, `«${p.serial}»`, 'one entry for one piece', 'note')
    else seen.set(mark, p)
  }
  return out
}
