import type { Page } from '@playwright/test'
import { describe, expect, it } from 'vitest'
import { benchOfFile } from './bench-of-file.ts'
import { field, settled } from './browser.ts'

const bench = benchOfFile()

const BUDGET = 'brief.budget'
/** What a clash calls it. */
const CALLED = 'Parts budget'
const pair = async (): Promise<[Page, Page]> => {
  const [a, b] = [await bench.window(), await bench.window()]
  for (const page of [a, b]) {
    await page.goto(`${bench.url}/c/${bench.demo}/brief`)
    await settled(page)
  }
  return [a, b]
}
const enter = async (page: Page, path: string, text: string): Promise<void> => {
  await field(page, path).fill(text)
  await field(page, path).press('Enter')
}
const notice = (page: Page) => page.locator('.note.bad', { hasText: CALLED })
const shows = (page: Page, path: string, text: string) =>
  expect.poll(async () => field(page, path).inputValue(), { timeout: 20_000 }).toBe(text)

/** `late` commits first and its edit lies on the way until `early` has saved: both began from the same text. */
async function clash(early: Page, late: Page, mine: string, theirs: string): Promise<void> {
  let letGo = (): void => {}
  const held = new Promise<void>(go => {
    letGo = go
  })
  await late.route('**/edits', async route => {
    await held
    await route.continue()
  })
  await enter(late, BUDGET, mine)
  await enter(early, BUDGET, theirs)
  await settled(early)
  letGo()
  await notice(late).waitFor()
  await late.unroute('**/edits')
}

describe('two windows on one car', () => {
  it('shows both values where both changed the same, and keeps theirs when told to', async () => {
    const [a, b] = await pair()
    await clash(a, b, '21000 €', '19000 €')
    expect(await notice(b).innerText()).toMatch(/Yours: 21000 €; theirs: 19000 €/)
    expect(await bench.text(bench.demo)).toContain('budget: 19000 €')
    await b.getByRole('button', { name: 'Keep theirs' }).click()
    await settled(b)
    expect(await notice(b).count()).toBe(0)
    await shows(b, BUDGET, '19000 €')
    expect(await bench.text(bench.demo)).toContain('budget: 19000 €')
  })
  it('says nothing more of a place that was typed over since', async () => {
    const [a, b] = await pair()
    await clash(a, b, '21500 €', '19500 €')
    expect(await notice(b).innerText()).not.toContain(BUDGET)
    await enter(b, BUDGET, '20500 €')
    await settled(b)
    await expect.poll(async () => notice(b).count(), { timeout: 20_000 }).toBe(0)
    await expect.poll(async () => bench.text(bench.demo), { timeout: 20_000 }).toContain('budget: 20500 €')
  })
  it('takes mine when told to, in both windows, and undo gives theirs back', async () => {
    const [a, b] = await pair()
    await clash(a, b, '22000 €', '17000 €')
    expect(await notice(b).innerText()).toMatch(/Yours: 22000 €; theirs: 17000 €/)
    await b.getByRole('button', { name: 'Take mine' }).click()
    await expect.poll(async () => bench.text(bench.demo), { timeout: 20_000 }).toContain('budget: 22000 €')
    await settled(b)
    expect(await notice(b).count()).toBe(0)
    await shows(a, BUDGET, '22000 €')
    await b.getByRole('button', { name: 'Undo' }).click()
    await expect.poll(async () => bench.text(bench.demo), { timeout: 20_000 }).toContain('budget: 17000 €')
    await shows(b, BUDGET, '17000 €')
  })
  it('does not lose what is typed and not committed when theirs arrives', async () => {
    const [a, b] = await pair()
    await enter(b, BUDGET, '20000 kg')
    await b.locator(`.field:has([data-path="${BUDGET}"]) .error`).first().waitFor()
    await enter(a, BUDGET, '18500 €')
    await notice(b).waitFor()
    expect(await notice(b).innerText()).toMatch(/Yours: 20000 kg; theirs: 18500 €/)
    await shows(b, BUDGET, '18500 €')
    await b.getByRole('button', { name: 'Take mine' }).click()
    await notice(b)
      .getByText(/found kg|20000 kg/)
      .waitFor()
    expect(await bench.text(bench.demo)).toContain('budget: 18500 €')
  })
  it('has only the clashes to complain about', () => {
    expect(bench.complaints.filter(c => !c.includes('409'))).toEqual([])
  })
})
