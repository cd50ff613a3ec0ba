import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type Bench, openBench, settled } from './browser.ts'

let bench: Bench
beforeAll(async () => {
  bench = await openBench()
}, 120_000)
afterAll(async () => {
  await bench?.close()
}, 60_000)

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')
type Violation = {
  readonly id: string
  readonly help: string
  readonly nodes: readonly { readonly html: string; readonly failureSummary?: string }[]
}

describe('accessibility (axe, WCAG 2.2 AA)', () => {
  const pages = [
    '/',
    '/new',
    '/shelf',
    '/handbook',
    '/handbook/wheel-force',
    ...[
      'brief',
      'donor',
      'drive',
      'pack',
      'findings',
      'coast-down',
      'modules',
      'files',
      'parts',
      'handbook',
      'survey',
      'letter',
      'revisions',
      'high-voltage',
    ].map(p => `/c/ID/${p}`),
  ]
  for (const theme of ['light', 'dark'] as const)
    it.each(pages)(`finds nothing on %s, ${theme}`, async path => {
      const page = await bench.window()
      await page.emulateMedia({ colorScheme: theme })
      await page.goto(bench.url + path.replace('ID', bench.demo))
      await page.getByRole('heading', { level: 1 }).waitFor()
      if (path.startsWith('/c/')) await settled(page)
      await page.evaluate(AXE)
      const found = await page.evaluate(async () => {
        const axe = (window as unknown as { axe: { run: (what: object, how: object) => Promise<{ violations: Violation[] }> } }).axe
        return (await axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] })).violations
      })
      expect(
        found.map(
          v =>
            `${v.id}: ${v.help}: ${v.nodes
              .slice(0, 3)
              .map(n => n.html.slice(0, 200))
              .join(' | ')}`,
        ),
      ).toEqual([])
    })
})
