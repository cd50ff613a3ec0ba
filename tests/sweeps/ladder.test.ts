import {
  applyEdit,
  applyEdits,
  type Conversion,
  isUsable,
  pathText,
  readConversion,
  readText,
  type TextGroup,
  type TextNode,
} from '@ampwright/conversion'
import { describe, expect, it } from 'vitest'
import { assessText, CARS, lookUps, said, textOf } from '../cars.ts'

function leavesOf(group: TextGroup, path: readonly string[] = []): readonly { path: string; source: string }[] {
  return [...group.entries].flatMap(([key, { node }]: [string, { node: TextNode }]) =>
    node.kind === 'group'
      ? leavesOf(node, [...path, key])
      : node.kind === 'value'
        ? [{ path: pathText([...path, key]), source: node.source }]
        : [],
  )
}

describe.each(CARS)('sweep “ladder” over %s', car => {
  it('climbs from an empty file to the full one: never an exception, each step removes the gap it promised', () => {
    const full = textOf(car),
      { tree } = readText(full)
    if (!tree) throw new Error('unreadable sample')
    const wanted = new Map(leavesOf(tree).map(l => [l.path, l.source]))
    let text = `schema: ${wanted.get('schema')}\n`,
      proposed = 0
    wanted.delete('schema')
    // Names that others point to come with their map: references are filled last.
    const put = (path: string): void => {
      const edit = applyEdit(text, { path, now: wanted.get(path) as string })
      if (!edit.ok) throw new Error(`${path}: ${edit.problem.what}`)
      text = edit.text
      wanted.delete(path)
    }
    let reading: Conversion['text'] | undefined
    const readable = (now: string): boolean => {
      const read = readConversion(now, { lookUps, ...(reading ? { before: reading } : {}) })
      reading = read.text
      return isUsable(read)
    }
    const usable = (path: string): boolean => {
      const edit = applyEdit(text, { path, now: wanted.get(path) as string })
      return edit.ok && readable(edit.text)
    }
    /** Puts in so many values that can stand; what others must come before goes to the end of the queue. */
    const climb = (n: number): void => {
      const first = [...wanted.keys()].slice(0, n),
        together = applyEdits(
          text,
          first.map(path => ({ path, now: wanted.get(path) as string })),
        )
      if (together.ok && readable(together.text)) {
        text = together.text
        for (const path of first) wanted.delete(path)
        return
      }
      for (let puts = 0, waiting = 0; puts < n && wanted.size; ) {
        const [path, source] = [...wanted][0] as [string, string]
        if (waiting < wanted.size && !(path.endsWith('.kind') && !path.startsWith('drive')) && !usable(path)) {
          wanted.delete(path)
          wanted.set(path, source)
          waiting++
          continue
        }
        put(path)
        puts++
        waiting = 0
      }
    }
    // One step in twenty is judged in the short run; every value is put in either way.
    const stride = process.env['AMPWRIGHT_LONG'] === '1' ? 1 : 20
    while (wanted.size) {
      const promised = assessText(text).assessment.gaps.find(g => wanted.has(g.path) && usable(g.path))
      if (promised) {
        proposed++
        put(promised.path)
        expect(
          assessText(text).assessment.gaps.some(g => g.path === promised.path),
          `${promised.path} was given and is still asked for`,
        ).toBe(false)
      }
      const others = promised ? stride - 1 : stride
      if (others > 0 && wanted.size) climb(others)
    }
    expect(proposed).toBeGreaterThan(0)
    expect([...said(assessText(text).assessment)].sort()).toEqual([...said(assessText(full).assessment)].sort())
  })
})
