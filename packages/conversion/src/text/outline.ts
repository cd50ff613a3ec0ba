import type { Issue } from '../issue.ts'
import { IssueList } from './issue-list.ts'
import { MAX_DEPTH, MAX_ISSUES, MAX_ITEMS, MAX_KEYS } from './limits.ts'
import { lineShape, lineStart } from './line.ts'
import { keyOf, type Level, lineProblem, tabProblem } from './line-problem.ts'
import { pathText } from './path.ts'

/** A stretch of whole lines that starts with a key in the first column: one top-level section with what hangs below it. */
export type Stretch = { readonly from: number; readonly to: number; readonly line: number }

export type Outline = {
  readonly sections: readonly Stretch[]
  /** What is wrong with single lines; other sections may still be sound. */
  readonly problems: IssueList
  /** Set when the text nests too deep or holds too much to be read at all. */
  readonly refusal: Issue | undefined
}

/**
 * Walks the lines of a text once: where its sections start, how deep it nests, how many keys it has, and which lines do not have the
 * form of the small YAML. Runs before the library sees anything, because the library's time and stack depend on what it is given.
 */
export function outlined(text: string, start: number): Outline {
  const sections: Stretch[] = []
  const problems = new IssueList()
  const levels: Level[] = []
  const count = { keys: 0, items: 0 }
  /** Brackets open from the line before, and the indent of the line that opened them: a line no deeper ends them, closed or not. */
  let open = 0
  let openedAt = 0
  /** Lines indented at least this far are a note's text, or hang below something already reported. */
  let skipFrom = Number.POSITIVE_INFINITY
  let inNote = false
  /** The last line that said something was a key whose value may still come. */
  let waits = false

  for (let from = start, line = 1, next = start; from < text.length; from = next, line++) {
    const newline = text.indexOf('\n', from)
    next = newline < 0 ? text.length : newline + 1
    const end = newline < 0 ? text.length : newline > from && text[newline - 1] === '\r' ? newline - 1 : newline
    const { first, tab, kind } = lineStart(text, from, end)
    const indent = first - from
    if (kind === 'blank') {
      // Where something may hang below, others read a line of nothing but a tab as its indentation.
      if (tab >= 0 && waits && !inNote && tab - from < skipFrom) problems.add({ line, column: tab - from + 1, path: '', ...tabProblem() })
      continue
    }
    if (indent < skipFrom && (inNote || kind === 'content')) {
      skipFrom = Number.POSITIVE_INFINITY
      inNote = false
    }
    if (inNote) continue
    if (kind === 'comment') {
      if (tab >= 0 && indent < skipFrom) problems.add({ line, column: tab - from + 1, path: '', ...tabProblem() })
      continue
    }

    const isContinued = open > 0 && indent > openedAt
    const shape = lineShape(text, first, end, isContinued ? open : 0)
    open = shape.open
    waits = !shape.hasValue && open === 0
    if (!isContinued) openedAt = indent
    if (indent === 0) sections.push({ from, to: text.length, line })

    const left = dropLevels(levels, indent)
    const depth = (levels.at(-1)?.depth ?? 0) + 1 + Math.max(0, shape.colons - 1) + shape.indicators
    count.keys += shape.keys + shape.indicators
    count.items += shape.commas
    const level: Level = { indent, depth, first, colon: shape.colon, hasValue: shape.hasValue }
    const path = (): string => pathText([...levels, level].map(above => keyOf(text, above)).filter(key => key !== ''))
    const refusal = tooMuch(depth + shape.deepest, count)
    if (refusal) return { sections, problems, refusal: { line, column: indent + 1, path: '', ...refusal } }
    if (problems.isFull) return { sections, problems, refusal: { line, column: 1, path: '', ...TOO_MUCH_IS_WRONG } }

    if (isContinued || indent >= skipFrom) continue
    if (tab >= 0) {
      problems.add({ line, column: tab - from + 1, path: path(), ...tabProblem() })
      continue
    }
    const problem = lineProblem({ text, from, first, end, shape, above: levels.at(-1), left })
    if (problem) {
      const { at, what, found, accepted, spoils } = problem
      problems.add({ line, column: at - from + 1, path: path(), what, found, accepted })
      skipFrom = spoils
    }
    levels.push(level)
    if (shape.opensNote) {
      inNote = true
      skipFrom = indent + 1
    }
  }
  return { sections: sections.map((s, i) => ({ ...s, to: sections[i + 1]?.from ?? s.to })), problems, refusal: undefined }
}

/** Leaves only the levels further out than this indent; gives the outermost one that ends here. */
function dropLevels(levels: Level[], indent: number): Level | undefined {
  let left: Level | undefined
  while ((levels.at(-1)?.indent ?? -1) >= indent) left = levels.pop()
  return left
}

const TOO_MUCH_IS_WRONG = {
  what: 'this does not look like a conversion; the rest was not read',
  found: `${MAX_ISSUES} mistakes`,
  accepted: '',
}

function tooMuch(depth: number, { keys, items }: { keys: number; items: number }): Pick<Issue, 'what' | 'found' | 'accepted'> | undefined {
  if (depth > MAX_DEPTH) return { what: 'the text nests too deep', found: `${depth} levels`, accepted: `up to ${MAX_DEPTH} levels` }
  if (keys > MAX_KEYS) return { what: 'the text has too many keys', found: `more than ${MAX_KEYS}`, accepted: `up to ${MAX_KEYS} keys` }
  if (items > MAX_ITEMS)
    return { what: 'the rows hold too many values', found: `more than ${MAX_ITEMS}`, accepted: `up to ${MAX_ITEMS} values` }
  return undefined
}
