import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { Page } from '@playwright/test'
import { describe, expect, it } from 'vitest'
import { benchOfFile } from './bench-of-file.ts'
import { settled } from './browser.ts'

const bench = benchOfFile()

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')
const post = async (path: string, body: object): Promise<{ id: string; message?: string }> =>
  (await (
    await fetch(`${bench.url}${path}`, { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) })
  ).json()) as { id: string; message?: string }
const piece = (page: Page, key: string) => page.locator(`[data-piece="${key}"]`)
const onShelf = async (size?: { width: number; height: number }): Promise<Page> => {
  const page = await bench.window(size)
  await page.goto(`${bench.url}/shelf`)
  await page.locator('[data-piece]').first().waitFor()
  return page
}
const atMotor = async (id: string): Promise<Page> => {
  const page = await bench.window()
  await page.goto(`${bench.url}/c/${id}/parts?place=drive.units.main.motor.part`)
  await settled(page)
  return page
}
const keys = (page: Page): Promise<(string | null)[]> =>
  page.locator('[data-piece]').evaluateAll(rows => rows.map(r => r.getAttribute('data-piece')))

describe('the shelf', () => {
  it('is reached from the start page, and says of each piece what it is, costs, where it lies and whom it is kept for', async () => {
    const page = await bench.window()
    await page.goto(bench.url)
    await page.getByRole('link', { name: 'Shelf of parts' }).click()
    await expect
      .poll(() => piece(page, 'modules-saloon').innerText())
      .toMatch(/× 16[\s\S]*380\s€ each[\s\S]*paid 2026-05-29[\s\S]*battery cabinet[\s\S]*Lapwing roadster/)
    expect(await piece(page, 'dc-dc-2300').innerText()).toMatch(/Wren hatchback[\s\S]*No such car is here any more/)
  })
  it('takes a new piece, keeps out a price without its currency with what is accepted, and gives the piece away and back', async () => {
    const page = await onShelf()
    await page.getByRole('button', { name: 'Put a piece on the shelf' }).click()
    const form = page.getByRole('form', { name: 'A new piece' })
    await form.getByLabel('Record of the catalogue').fill('motor-pm-100kw@1')
    await form.getByLabel('Serial number').fill('EM-77')
    await form.getByLabel('Price of one piece').fill('990')
    await form.getByLabel('Price of one piece').press('Enter')
    await expect.poll(() => form.getByRole('alert').allInnerTexts()).toEqual([expect.stringMatching(/needs its unit.*accepted .*€/)])
    expect(await form.getByLabel('Serial number').inputValue()).toBe('EM-77')
    await form.getByLabel('Price of one piece').fill('990 €')
    await form.getByLabel('That price is').selectOption('paid')
    await form.getByRole('button', { name: 'Put it on the shelf' }).click()
    await expect.poll(() => piece(page, 'motor-pm-100kw').innerText()).toMatch(/EM-77[\s\S]*990\s€/)
    await page.getByRole('button', { name: /^Take away.*charger-offer/ }).click()
    await expect.poll(() => keys(page)).not.toContain('charger-offer')
    await page.getByRole('button', { name: 'Take it back' }).click()
    await expect.poll(() => keys(page)).toContain('charger-offer')
  })
  it('changes a piece; what another window changed meanwhile stays, and where both changed the same both values are shown', async () => {
    const page = await onShelf()
    await page.getByRole('button', { name: /^Change.*vacuum-pump/ }).click()
    const form = page.getByRole('form', { name: 'Change vacuum-pump' })
    await form.getByLabel('Condition').fill('opened')
    await post('/api/shelf/edits', {
      edits: [
        { path: 'shelf.vacuum-pump.condition', was: 'new, boxed', now: 'used' },
        { path: 'shelf.vacuum-pump.place', was: 'drawer 4', now: 'drawer 5' },
      ],
    })
    await expect.poll(() => form.getByLabel('Where it lies').inputValue()).toBe('drawer 5')
    await form.getByRole('button', { name: 'Keep the change' }).click()
    await expect.poll(() => page.getByRole('alert').allInnerTexts()).toEqual([expect.stringMatching(/yours «opened», theirs «used»/)])
    await form.getByRole('button', { name: 'Keep the change' }).click()
    await expect.poll(() => piece(page, 'vacuum-pump').innerText()).toMatch(/drawer 5[\s\S]*opened/)
  })
  it('is taken along as the file it is', async () => {
    const page = await onShelf()
    const [saved] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: 'Take the file along' }).click()])
    expect(saved.suggestedFilename()).toBe('own.workshop.yaml')
    const kept = (await (await fetch(`${bench.url}/api/shelf`)).json()) as { text: string }
    expect(readFileSync(await saved.path(), 'utf8')).toBe(kept.text)
    await page.close()
  })
  it('is searched by words, by class and by what is free', async () => {
    const page = await onShelf()
    await page.getByLabel('Search the shelf').fill('lathe')
    await expect.poll(() => keys(page)).toEqual(['coupler-blank'])
    await page.getByLabel('Search the shelf').fill('')
    await page.getByLabel('Class of parts').selectOption('charger')
    await expect.poll(() => keys(page)).toEqual(['charger-6600', 'charger-offer'])
    await page.getByLabel('Class of parts').selectOption('')
    await page.getByLabel('Free or kept').selectOption('kept for Lapwing roadster')
    await expect.poll(() => keys(page)).toEqual(['modules-saloon'])
  })
  it('keeps a piece for a car and frees it again', async () => {
    const page = await onShelf()
    await page.getByLabel('Car to keep charger-6600 for').selectOption({ label: 'Lapwing roadster' })
    await page.getByRole('button', { name: /^Reserve.*charger-6600/ }).click()
    await expect.poll(() => piece(page, 'charger-6600').innerText()).toContain('Lapwing roadster')
    await page.getByRole('button', { name: /^Free it.*charger-6600/ }).click()
    await expect.poll(() => page.getByLabel('Car to keep charger-6600 for').count()).toBe(1)
  })
  it('fits a phone, and axe finds nothing while a piece is changed', async () => {
    const page = await onShelf({ width: 360, height: 780 })
    await page.getByRole('button', { name: /^Change.*motor-saloon/ }).click()
    await page.getByRole('form', { name: 'Change motor-saloon' }).waitFor()
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(360)
    await page.evaluate(AXE)
    const found = await page.evaluate(async () => {
      const axe = (window as unknown as { axe: { run: (what: object, how: object) => Promise<{ violations: { id: string }[] }> } }).axe
      return (await axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] })).violations
    })
    expect(found.map(v => v.id)).toEqual([])
  })
})

describe('a piece of the shelf', () => {
  it('is chosen for the Lapwing with its price, and kept for it; another car is refused and told whose it is', async () => {
    const { id: other } = await post('/api/conversions', { sample: 'badger' }),
      mine = await atMotor(bench.demo),
      theirs = await atMotor(other)
    // Both look at it while it is free.
    for (const page of [mine, theirs]) {
      await page.getByLabel('Class of parts').first().selectOption('motor-pm')
      await page.getByRole('button', { name: /^Choose this piece.*motor-saloon/ }).click()
      await page.getByRole('button', { name: 'Preview on the whole car' }).click()
      await page.getByRole('button', { name: 'Take it', exact: true }).waitFor({ timeout: 120_000 })
    }
    expect(await mine.getByLabel(/^Put its price, 1\s350\s€ paid 2026-05-22, in the place of 1500 ± 300 €/).isChecked()).toBe(true)
    await mine.getByRole('button', { name: 'Take it', exact: true }).click()
    await settled(mine)
    await expect.poll(() => bench.text(bench.demo)).toContain('part: motor-pm-100kw@1')
    expect(await bench.text(bench.demo)).toContain(
      'price: 1350 € (measured, paid 2026-05-22, breaker, one wrecked saloon, shelf motor-saloon)',
    )
    await expect.poll(() => mine.getByRole('region', { name: 'On the shelf of the workshop' }).innerText()).toContain('EM-20417')

    const before = await bench.text(other)
    await theirs.getByText('reserved for Lapwing roadster').first().waitFor()
    await theirs.getByRole('button', { name: 'Take it', exact: true }).click()
    await expect
      .poll(() => theirs.getByRole('alert').allInnerTexts())
      .toEqual([expect.stringContaining('«motor-saloon» is reserved for Lapwing roadster. Nothing was changed')])
    expect(await bench.text(other)).toBe(before)
    expect(await theirs.getByRole('button', { name: /^Choose this piece.*motor-saloon/ }).count()).toBe(0)

    await mine.getByRole('link', { name: 'Shelf of parts' }).click()
    await expect.poll(() => piece(mine, 'motor-saloon').innerText()).toContain('Lapwing roadster')
    await mine.getByRole('link', { name: 'Back to the parts of Lapwing roadster' }).click()
    await mine.waitForURL(`**/c/${bench.demo}/parts`)
  })
  it('kept for a car that is deleted is said to be without one', async () => {
    const { id } = await post('/api/conversions', { sample: 'otter' })
    await post('/api/shelf/reserve', { piece: 'inverter-saloon', conversion: id })
    await fetch(`${bench.url}/api/conversions/${id}`, { method: 'DELETE', headers: { 'x-ampwright': '1' } })
    const page = await onShelf()
    await expect.poll(() => piece(page, 'inverter-saloon').innerText()).toMatch(/Otter estate[\s\S]*No such car is here any more/)
  })
  it('complained of nothing but what was refused', () => {
    expect(bench.complaints.filter(c => !/40[49]|422/.test(c))).toEqual([])
  })
})
