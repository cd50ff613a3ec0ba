import { applyEdit, pathText, readText, type TextGroup, type TextNode } from '@ampwright/conversion'
import { describe, expect, it } from 'vitest'
import { assessText, CARS, said, textOf } from '../cars.ts'

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
      proposed = 0,
      step = 0
    wanted.delete('schema')
    // Names that others point to come with their map: references are filled last.
    const put = (path: string): void => {
      const edit = applyEdit(text, { path, now: wanted.get(path) as string })
      if (!edit.ok) throw new Error(`${path}: ${edit.problem.what}`)
      text = edit.text
      wanted.delete(path)
    }
    const usable = (path: string): boolean => {
      const edit = applyEdit(text, { path, now: wanted.get(path) as string })
      if (!edit.ok) return false
      try {
        assessText(edit.text)
        return true
      } catch (e) {
        if (/:\d+ |accepted/.test(String(e))) return false
        throw e
      }
    }
    // One step in eight is judged in the short run; every value is put in either way.
    const stride = process.env['AMPWRIGHT_LONG'] === '1' ? 1 : 8
    while (wanted.size) {
      const ask = step++ % stride === 0
      const gaps = ask ? assessText(text).assessment.gaps : []
      const promised = gaps.find(g => wanted.has(g.path) && usable(g.path))
      if (promised) {
        proposed++
        put(promised.path)
        expect(
          assessText(text).assessment.gaps.some(g => g.path === promised.path),
          `${promised.path} was given and is still asked for`,
        ).toBe(false)
        continue
      }
      const next =
        [...wanted.keys()].find(p => (p.endsWith('.kind') && !p.startsWith('drive')) || usable(p)) ?? ([...wanted.keys()][0] as string)
      put(next)
    }
    expect(proposed).toBeGreaterThan(0)
    expect([...said(assessText(text).assessment)].sort()).toEqual([...said(assessText(full).assessment)].sort())
  })
})
