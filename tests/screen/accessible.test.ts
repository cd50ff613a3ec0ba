import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { Page } from '@playwright/test'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { benchOfFile } from './bench-of-file.ts'
import { settled, turnTo } from './browser.ts'

const bench = benchOfFile()

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')
type Violation = {
  readonly id: string
  readonly help: string
  readonly nodes: readonly { readonly html: string; readonly failureSummary?: string }[]
}

describe('accessibility (axe, WCAG 2.2 AA)', () => {
  const inBothThemes = async (page: Page): Promise<void> => {
    await page.emulateMedia({ colorScheme: 'light' })
    expect(await violations(page)).toEqual([])
    // In the other theme only colours are others.
    await page.emulateMedia({ colorScheme: 'dark' })
    expect(await violations(page, ['color-contrast'])).toEqual([])
  }
  it.each(['/', '/new', '/shelf', '/handbook', '/handbook/wheel-force'])('finds nothing on %s, light and dark', async path => {
    const page = await bench.window()
    await page.goto(bench.url + path)
    await page.getByRole('heading', { level: 1 }).waitFor()
    await inBothThemes(page)
  })
  describe('in a car', () => {
    let car: Page
    beforeAll(async () => {
      car = await bench.window()
      await car.goto(`${bench.url}/c/${bench.demo}/brief`)
      await settled(car)
    }, 120_000)
    afterAll(() => car.context().close())
    it.each([
      'brief',
      'donor',
      'drive',
      'pack',
      'high-voltage',
      'brakes-steering',
      'findings',
      'coast-down',
      'modules',
      'files',
      'parts',
      'handbook',
      'survey',
      'letter',
      'revisions',
      'signals',
    ])('finds nothing on %s, light and dark', async slug => {
      if (slug !== 'brief') await turnTo(car, slug)
      await inBothThemes(car)
    })
  })
  for (const colorScheme of ['light', 'dark'] as const)
    it(`finds nothing on what is not saved yet and on long work, ${colorScheme}`, async () => {
      const page = await bench.window()
      await page.emulateMedia({ colorScheme })
      await page.goto(`${bench.url}/c/${bench.demo}/donor`)
      await settled(page)
      await page.locator('[data-path="donor.wheelbase"]').first().fill('2310 kg')
      await page.reload()
      await settled(page)
      await page.locator('.field .again').first().waitFor()
      expect(await violations(page)).toEqual([])
      await page.goto(`${bench.url}/`)
      await page.getByRole('button', { name: 'Look everything through' }).click()
      await page.getByText(/each is as it was kept/).waitFor()
      expect(await violations(page)).toEqual([])
      // Long work that stands still, as no test can have it.
      await page.evaluate(bar => document.querySelector('main')?.insertAdjacentHTML('beforeend', bar), RUNNING)
      expect(await violations(page)).toEqual([])
    })
})

/** The line of a job that runs. */
const RUNNING = `<div class="note job-now" role="group" aria-label="Everything as one file"><span class="job-what">Everything as one file: copying the database, 37 %</span>
<progress max="100" value="37" aria-label="Everything as one file: copying the database"></progress><button type="button">Cancel</button></div>`

/** What axe finds on a page, one line each: by all rules of WCAG 2.2 AA, or by some. */
async function violations(
  page: Page,
  rules: readonly string[] = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'],
): Promise<readonly string[]> {
  await page.evaluate(AXE)
  const found = await page.evaluate(async runOnly => {
    const axe = (window as unknown as { axe: { run: (what: object, how: object) => Promise<{ violations: Violation[] }> } }).axe
    return (await axe.run(document, { runOnly })).violations
  }, rules)
  return found.map(
    v =>
      `${v.id}: ${v.help}: ${v.nodes
        .slice(0, 3)
        .map(n => n.html.slice(0, 200))
        .join(' | ')}`,
  )
}
