import { describe, expect, it } from 'vitest'
import { benchOfFile } from './bench-of-file.ts'
import { settled } from './browser.ts'

const bench = benchOfFile()

describe('arranging the battery', () => {
  it('shows several arrangements, tries one on the whole car, and changes nothing before it is taken', async () => {
    const page = await bench.window({ width: 360, height: 740 }),
      first = await bench.text(bench.demo)
    await page.goto(`${bench.url}/c/${bench.demo}/fit`)
    await settled(page)
    const section = page.getByRole('region', { name: 'Arrange the battery' })
    await section.getByText('How to look').click()
    await section.getByLabel(/steps; more/).fill('1')
    await section.getByRole('button', { name: 'Look for arrangements' }).press('Enter')
    const table = section.getByRole('region', { name: 'Arrangements side by side' })
    await table.waitFor({ timeout: 240_000 })
    await section.getByRole('button', { name: 'Look for arrangements', disabled: false }).waitFor({ timeout: 240_000 })
    expect(await table.innerText()).toMatch(/38\.5.kWh/)
    expect(await section.innerText()).toMatch(/never hold more than 16/)
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0)
    await table.getByRole('button', { name: 'Preview arrangement 2', exact: true }).click()
    const preview = section.locator('.preview')
    await preview.waitFor({ timeout: 240_000 })
    expect(await preview.innerText()).toMatch(/Rear axle|Kerb mass/)
    expect(await bench.text(bench.demo)).toBe(first)
    await preview.getByRole('button', { name: 'Take it' }).click()
    await expect.poll(() => bench.text(bench.demo), { timeout: 60_000 }).toContain('assumed, sheet of the box')
    await settled(page)
    expect(bench.complaints).toEqual([])
  }, 600_000)
  it('is stopped at once', async () => {
    const page = await bench.window()
    await page.goto(`${bench.url}/c/${bench.demo}/fit`)
    await settled(page)
    const section = page.getByRole('region', { name: 'Arrange the battery' })
    await section.getByRole('button', { name: 'Look for arrangements' }).click()
    await section.getByRole('button', { name: 'Stop', disabled: false }).click()
    await section.getByRole('button', { name: 'Look for arrangements', disabled: false }).waitFor()
    expect(bench.complaints).toEqual([])
  }, 120_000)
})
