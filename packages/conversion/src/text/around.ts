import { lineStart } from './line.ts'

/**
 * A section with the given lines (numbers within it, from 1) and what hangs below them blanked out, so that the rest can still be read; every other character keeps
 * its place. Undefined when the line of the section's own key is among them.
 */
export function aroundLines(section: string, faulty: ReadonlySet<number>): string | undefined {
  if (faulty.has(1)) return undefined
  let out = '',
    hangsFrom = Number.POSITIVE_INFINITY
  for (let from = 0, line = 1, next = 0; from < section.length; from = next, line++) {
    const newline = section.indexOf('\n', from)
    next = newline < 0 ? section.length : newline + 1
    const end = newline < 0 ? section.length : newline,
      { first, tab, kind } = lineStart(section, from, end),
      indent = first - from
    // How far in a tab goes is anybody's guess: nothing counts as hanging below it.
    if (kind === 'content' && indent < hangsFrom) hangsFrom = faulty.has(line) && tab < 0 ? indent + 1 : Number.POSITIVE_INFINITY
    const keep = !faulty.has(line) && (kind !== 'content' || indent < hangsFrom)
    out += keep ? section.slice(from, next) : ' '.repeat(end - from) + section.slice(end, next)
  }
  return out
}
