import { describe, expect, it } from 'vitest'
import { benchOfFile } from './bench-of-file.ts'
import { settled } from './browser.ts'

const bench = benchOfFile()

/** What the demo is wrong in, and the remedy on the screen that cures it. */
const CURES: readonly (readonly [finding: RegExp, remedy: RegExp])[] = [
  [/^failing: Ride height and lamp aim/, /Springs that ride as before/],
  [/^failing: Climbs as wanted/, /third|gear/i],
  [/^failing: Every load case stays within the permitted masses/, /Move 3 modules/],
  [/^failing: Something takes the place of the engine’s brake assist/, /vacuum pump/],
]

describe('the Lapwing put right on the screen', () => {
  it('previews each remedy on the whole car before it is taken, and ends with less failing', async () => {
    const page = await bench.window()
    await page.goto(`${bench.url}/c/${bench.demo}/findings`)
    await settled(page)
    const failing = async (): Promise<number> => page.locator('article.find:has(.out.failing)').count()
    const before = await failing()
    expect(before).toBe(10)
    for (const [finding, remedy] of CURES) {
      const article = page.locator('article.find').filter({ has: page.locator('.out.failing') })
      const labels = await article.evaluateAll(list => list.map(a => a.getAttribute('aria-label') ?? ''))
      const at = labels.findIndex(l => finding.test(l))
      expect(at, `${finding} among ${labels.join(' | ')}`).toBeGreaterThanOrEqual(0)
      const one = article.nth(at),
        item = one
          .locator('li')
          .filter({ hasText: remedy })
          .filter({ has: page.getByRole('button', { name: 'Preview' }) })
      expect(await item.count(), `${finding}: a remedy to preview`).toBeGreaterThan(0)
      await item.first().getByRole('button', { name: 'Preview' }).click()
      const preview = one.locator('.preview')
      await preview.waitFor({ timeout: 60_000 })
      expect(await preview.innerText()).toMatch(/Cures [1-9]\d*, worsens \d+/)
      await preview.getByRole('button', { name: 'Take it' }).click()
      await settled(page)
    }
    expect(await failing()).toBeLessThan(before)
    expect(await page.locator('.headline').innerText()).toMatch(/8\.\d+.s/)
  })
  it('says of a finding that it does not apply, keeps it in view, and takes that back', async () => {
    const page = await bench.window()
    await page.goto(`${bench.url}/c/${bench.demo}/findings`)
    await settled(page)
    const one = page.locator('article.find:has(.out.failing)').first(),
      title = (await one.getAttribute('aria-label'))?.replace('failing: ', '') as string
    await one.getByText('It does not apply to this car').click()
    await one.getByRole('button', { name: 'Set aside' }).click()
    expect(await one.getByRole('alert').first().innerText()).toMatch(/your name is empty/)
    await one.locator('form:visible').getByLabel('Your name').fill('Noor')
    await one.getByLabel('Why it does not apply').fill('never on this road')
    await one.getByRole('button', { name: 'Set aside' }).click()
    const aside = page.locator(`article.find[aria-label="said not to apply: ${title}"]`)
    await aside.waitFor({ timeout: 30_000 })
    expect(await aside.isVisible()).toBe(true)
    expect(await aside.innerText()).toMatch(
      /because never on this road, said by Noor on .*\. It would be failing otherwise\. Lapses as soon as/,
    )
    expect(await page.getByText('1 said not to apply').count()).toBe(1)
    await aside.getByRole('button', { name: /Take back/ }).click()
    await page.locator(`article.find[aria-label="failing: ${title}"]`).first().waitFor({ timeout: 30_000 })
    expect(await aside.count()).toBe(0)
  })
  it('accepts a finding only with a name, a reason and a day, and says so', async () => {
    const page = await bench.window()
    await page.goto(`${bench.url}/c/${bench.demo}/findings`)
    await settled(page)
    const one = page.locator('article.find:has(.out.failing)').first(),
      title = await one.getAttribute('aria-label')
    await one.getByText('Accept it as it is').click()
    await one.getByRole('button', { name: 'Accept' }).click()
    expect(await one.getByRole('alert').first().innerText()).toMatch(/your name is empty/)
    await one.locator('details[open]').getByLabel('Your name').fill('Ines')
    await one.getByLabel('Why it may stay so').fill('shown to the inspector, who agrees')
    await one.getByLabel('What it holds for, until when').fill('first registration')
    await one.getByRole('button', { name: 'Accept' }).click()
    await settled(page)
    await expect.poll(async () => page.locator('article.find:has(.out.accepted)').count(), { timeout: 30_000 }).toBe(1)
    expect(await page.locator('article.find:has(.out.accepted)').getAttribute('aria-label')).toBe(title?.replace('failing', 'accepted'))
  })
  it('has nothing to complain about', () => expect(bench.complaints).toEqual([]))
})
