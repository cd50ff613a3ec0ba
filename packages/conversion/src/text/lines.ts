/** Offsets of whole lines, for splices that take or add lines. */

export const lineStartAt = (text: string, offset: number): number => text.lastIndexOf('\n', offset - 1) + 1

/** The offset behind the line's end mark, or the text's end. */
export function nextLineAt(text: string, offset: number): number {
  const newline = text.indexOf('\n', offset)
  return newline < 0 ? text.length : newline + 1
}

/** The line end used at this place; that of the text's first line where this line has none. */
export function lineEndNear(text: string, offset: number): '\n' | '\r\n' {
  const here = text.indexOf('\n', offset)
  const newline = here < 0 ? text.indexOf('\n') : here
  return newline > 0 && text[newline - 1] === '\r' ? '\r\n' : '\n'
}

/** What stands between a place and the end of its line. */
export const restOfLine = (text: string, offset: number): string => text.slice(offset, nextLineAt(text, offset)).trimEnd()

/** The characters in front of a place on its line. */
export const indentBefore = (text: string, offset: number): string => {
  const start = lineStartAt(text, offset)
  return text.slice(text.charCodeAt(start) === 0xfeff ? start + 1 : start, offset)
}

/**
 * Where the comments end that follow a line and are indented deeper than `indent`: they belong to what stands above them, and a note
 * put in front of them would swallow them.
 */
export function afterDeeperComments(text: string, from: number, indent: number): number {
  let kept = from
  for (let at = from; at < text.length; ) {
    const next = nextLineAt(text, at)
    let first = at
    while (text[first] === ' ') first++
    const isComment = text[first] === '#' && first - at > indent
    if (isComment) kept = next
    else if (text.slice(first, next).trim() !== '') break
    at = next
  }
  return kept
}
