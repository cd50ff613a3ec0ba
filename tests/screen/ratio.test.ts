import { describe, expect, it } from 'vitest'
import { benchOfFile } from './bench-of-file.ts'
import { settled } from './browser.ts'

const bench = benchOfFile()

describe('the total ratio', () => {
  it('is dragged along its window in the drawing: the headline says at once what it would be, and nothing is kept until it is taken', async () => {
    const page = await bench.window(),
      first = await bench.text(bench.demo)
    await page.goto(`${bench.url}/c/${bench.demo}/drive`)
    await settled(page)
    const plot = page.locator('.plot.held'),
      tried = page.locator('.handle')
    await plot.locator('svg').waitFor()
    await plot.scrollIntoViewIfNeeded()
    const box = await plot.boundingBox()
    if (box === null) throw new Error('the window of ratios is not shown')
    await page.mouse.move(box.x + 0.3 * box.width, box.y + box.height / 2)
    await page.mouse.down()
    for (let k = 0.3; k < 0.6; k += 0.05) await page.mouse.move(box.x + k * box.width, box.y + box.height / 2)
    await page.mouse.up()
    await expect.poll(() => tried.innerText(), { timeout: 20_000 }).toMatch(/gear: (third|second)[\s\S]*Time, sprint\s+11\.39\Ds → /)
    expect(await bench.text(bench.demo)).toBe(first)

    const slider = tried.getByRole('slider')
    await slider.focus()
    const before = await slider.getAttribute('aria-valuetext')
    for (let n = 0; n < 6; n++) await slider.press('ArrowLeft')
    await expect.poll(() => slider.getAttribute('aria-valuetext')).not.toBe(before)

    await tried.getByRole('button', { name: 'Keep it' }).click()
    await expect.poll(() => bench.text(bench.demo), { timeout: 20_000 }).toMatch(/gear: (third|second)/)
    await settled(page)
    await page.getByRole('button', { name: 'Undo' }).click()
    await expect.poll(() => bench.text(bench.demo), { timeout: 20_000 }).toBe(first)
    expect(bench.complaints).toEqual([])
  })
})
