import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { fileOf } from '../cars.ts'
import { benchOfFile } from './bench-of-file.ts'
import { field, settled, turnTo } from './browser.ts'

const bench = benchOfFile()

const headline = (text: string): RegExp => new RegExp(text)

describe('the workbench in a browser', () => {
  it('shows the demo as the command line tells it', async () => {
    const page = await bench.window()
    await page.goto(`${bench.url}/c/${bench.demo}/drive`)
    await settled(page)
    expect(await page.locator('.headline').innerText()).toMatch(headline('11\\.39.s'))
    expect(await page.getByRole('link', { name: /All findings/ }).innerText()).toMatch(/▲\s*10/)
  })
  it('commits what is typed, saves it, and undoes to the very first text', async () => {
    const page = await bench.window(),
      first = await bench.text(bench.demo)
    expect(first).toBe(readFileSync(fileOf('lapwing'), 'utf8'))
    await page.goto(`${bench.url}/c/${bench.demo}/drive`)
    await settled(page)
    await field(page, 'drive.units.main.gear').selectOption('third')
    await settled(page)
    expect(await page.locator('.headline').innerText()).toMatch(headline('8\\.79.s'))
    await field(page, 'drive.regeneration.power').fill('30 kW')
    await field(page, 'drive.regeneration.power').press('Enter')
    await settled(page)
    const share = field(page, 'drive.regeneration.torque-share')
    await share.fill('25 %')
    await share.blur()
    await settled(page)
    expect(await bench.text(bench.demo)).toContain('torque-share: 25 %, power: 30 kW')
    const undo = page.getByRole('button', { name: 'Undo' })
    for (let n = 0; n < 3; n++) {
      await undo.click()
      await settled(page)
    }
    expect(await undo.isDisabled()).toBe(true)
    expect(await bench.text(bench.demo)).toBe(first)
    expect(await page.locator('.headline').innerText()).toMatch(headline('11\\.39.s'))
    for (let n = 0; n < 3; n++) {
      await page.getByRole('button', { name: 'Redo' }).click()
      await settled(page)
    }
    expect(await page.locator('.headline').innerText()).toMatch(headline('8\\.79.s'))
    for (let n = 0; n < 3; n++) {
      await undo.click()
      await settled(page)
    }
    expect(await bench.text(bench.demo)).toBe(first)
  })
  it('takes a part out with its shape, in one step; and says what stays because something else names it', async () => {
    const page = await bench.window(),
      first = await bench.text(bench.demo)
    const takeOut = async (what: string): Promise<void> => {
      const button = page.locator(`[aria-label="Take out ${what}"]`)
      // Groups of fields fold: the entry stands in one of them.
      await button.evaluate(e => {
        for (let d = e.closest('details'); d; d = d.parentElement?.closest('details') ?? null) d.open = true
      })
      await button.click()
      await settled(page)
    }
    await page.goto(`${bench.url}/c/${bench.demo}/donor`)
    await settled(page)
    await takeOut('part put in junction-box')
    const less = await bench.text(bench.demo)
    expect(less).not.toContain('junction-box')
    expect(less).toContain('service-plug: { kind: service disconnect, x: 2600 mm')
    await page.getByRole('button', { name: 'Undo' }).click()
    await settled(page)
    expect(await bench.text(bench.demo)).toBe(first)
    await turnTo(page, 'brief')
    await takeOut('load case driver')
    await page
      .getByRole('alert')
      .filter({ hasText: 'It is not taken out: brief.conditions.load, trips.named.mixed.load name it; put something else there first' })
      .waitFor()
    expect(await bench.text(bench.demo)).toBe(first)
    await page.close()
  })
  it('keeps what cannot be read in the field, says why, and changes nothing', async () => {
    const page = await bench.window(),
      first = await bench.text(bench.demo)
    await page.goto(`${bench.url}/c/${bench.demo}/donor`)
    await settled(page)
    for (const [path, wrong, says] of [
      ['donor.wheelbase', '2310 kg', /kg/],
      ['donor.wheelbase', '2,310 mm', /2,310/],
      ['donor.wheelbase', 'long', /long/],
      ['donor.tyre', '185/60', /185\/60/],
      ['donor.drag-area', '-1 m2', /-1|least/],
    ] as const) {
      const input = field(page, path)
      await input.fill(wrong)
      await input.press('Enter')
      const error = page.locator(`.field:has([data-path="${path}"]) .error`).first()
      await error.waitFor()
      expect(await error.innerText()).toMatch(says)
      expect(await input.inputValue()).toBe(wrong)
      expect(await input.getAttribute('aria-invalid')).toBe('true')
      await input.press('Escape')
      await error.waitFor({ state: 'detached' })
    }
    expect(await bench.text(bench.demo)).toBe(first)
  })
  it('keeps what was typed a moment ago when the page is left by the browser’s own way back', async () => {
    const page = await bench.window(),
      first = await bench.text(bench.demo)
    await page.goto(`${bench.url}/c/${bench.demo}/drive`)
    await settled(page)
    await page.getByRole('link', { name: /^Donor/ }).click()
    await field(page, 'donor.wheelbase').fill('2315 mm')
    await page.goBack()
    await expect.poll(async () => bench.text(bench.demo), { timeout: 20_000 }).toContain('wheelbase: 2315 mm')
    await page.getByRole('button', { name: 'Undo' }).click()
    await expect.poll(async () => bench.text(bench.demo), { timeout: 20_000 }).toBe(first)
  })
  it('says what was not kept when a page is left with a value that cannot be read', async () => {
    const page = await bench.window()
    await page.goto(`${bench.url}/c/${bench.demo}/donor`)
    await settled(page)
    await field(page, 'donor.wheelbase').fill('2310 kg')
    await page.getByRole('link', { name: /^Brief/ }).click()
    await page.locator('.note.bad', { hasText: /Wheelbase stays as it was.*kg/i }).waitFor()
  })
  it('leaves the undo key to what is being typed', async () => {
    const page = await bench.window(),
      first = await bench.text(bench.demo)
    await page.goto(`${bench.url}/c/${bench.demo}/donor`)
    await settled(page)
    await field(page, 'donor.wheelbase').fill('2320 mm')
    await field(page, 'donor.wheelbase').press('Enter')
    await settled(page)
    await field(page, 'donor.tyre').fill('185/')
    await field(page, 'donor.tyre').press('Control+z')
    await field(page, 'donor.tyre').press('Escape')
    await settled(page)
    expect(await bench.text(bench.demo)).toContain('wheelbase: 2320 mm')
    await field(page, 'donor.tyre').press('Control+z')
    await expect.poll(async () => bench.text(bench.demo), { timeout: 20_000 }).toBe(first)
  })
  it('says that a conversion is not there, and not that the server is away', async () => {
    const page = await bench.browser.newPage()
    await page.goto(`${bench.url}/c/aaaaaaaaaaaaaaaa/drive`)
    await page.getByText('There is no such conversion here.').waitFor()
    expect(await page.locator('body').innerText()).not.toMatch(/server away/i)
    await page.close()
  })
  it('merges two windows on different fields', async () => {
    const [a, b] = [await bench.window(), await bench.window()]
    for (const page of [a, b]) {
      await page.goto(`${bench.url}/c/${bench.demo}/brief`)
      await settled(page)
    }
    await field(a, 'brief.budget').fill('19000 €')
    await field(b, 'brief.luggage').fill('50 kg')
    await field(a, 'brief.budget').press('Enter')
    await field(b, 'brief.luggage').press('Enter')
    await settled(a)
    await settled(b)
    await expect.poll(async () => field(a, 'brief.luggage').inputValue(), { timeout: 20_000 }).toBe('50 kg')
    await expect.poll(async () => field(b, 'brief.budget').inputValue(), { timeout: 20_000 }).toBe('19000 €')
    const text = await bench.text(bench.demo)
    expect(text).toContain('budget: 19000 €')
    expect(text).toContain('luggage: 50 kg')
  })
  it('works at the width of a phone without moving sideways', async () => {
    const page = await bench.window({ width: 360, height: 740 })
    await page.goto(`${bench.url}/c/${bench.demo}/brief`)
    await settled(page)
    for (const name of ['brief', 'donor', 'drive', 'pack', 'findings']) {
      if (name !== 'brief') await turnTo(page, name)
      expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth), name).toBeLessThanOrEqual(0)
    }
  })
  it('opens a working down to the wheel scales', async () => {
    const page = await bench.window()
    await page.goto(`${bench.url}/c/${bench.demo}/donor`)
    await settled(page)
    await page.locator('.headline button', { hasText: 'Kerb mass' }).click()
    const dialog = page.getByRole('dialog')
    await dialog.locator('button.turn').first().waitFor()
    for (let n = 0; n < 40 && !(await dialog.innerText()).includes('wheel scales'); n++) {
      const folded = dialog.locator('button.turn[aria-expanded="false"]').first()
      if ((await folded.count()) === 0) break
      await folded.click()
      await page.waitForTimeout(40)
    }
    expect(await dialog.innerText()).toContain('wheel scales')
  })
  it('has nothing to complain about', () => {
    expect(bench.complaints).toEqual([])
  })
})
