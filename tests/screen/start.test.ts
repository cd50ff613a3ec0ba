import { readFileSync } from 'node:fs'
import type { Page } from '@playwright/test'
import { describe, expect, it } from 'vitest'
import { fileOf } from '../cars.ts'
import { benchOfFile } from './bench-of-file.ts'
import { field, settled } from './browser.ts'

const bench = benchOfFile()

const start = async (size?: { width: number; height: number }): Promise<Page> => {
  const page = await bench.window(size)
  await page.goto(`${bench.url}/`)
  await page.locator('[data-conversion]').first().waitFor()
  return page
}
const row = (page: Page, id: string) => page.locator(`[data-conversion="${id}"]`)
const ids = async (page: Page): Promise<string[]> =>
  page.locator('[data-conversion]').evaluateAll(list => list.map(li => li.getAttribute('data-conversion') ?? ''))
const had = async (page: Page, press: () => Promise<void>): Promise<{ name: string; bytes: Buffer }> => {
  const [download] = await Promise.all([page.waitForEvent('download'), press()])
  return { name: download.suggestedFilename(), bytes: readFileSync(await download.path()) }
}
const give = async (page: Page, button: string, name: string, bytes: Buffer): Promise<void> =>
  page.getByLabel(button).setInputFiles({ name, mimeType: 'application/octet-stream', buffer: bytes })
const post = async (path: string, body: object): Promise<{ id: string }> =>
  (await (
    await fetch(`${bench.url}${path}`, { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) })
  ).json()) as { id: string }
const edited = (id: string, path: string, was: string, now: string) => post(`/api/conversions/${id}/edits`, { edits: [{ path, was, now }] })

describe('the start page', () => {
  it('says how each conversion stands, and what stood in its way when it was last open here', async () => {
    const page = await start(),
      demo = row(page, bench.demo)
    expect(await demo.innerText()).toMatch(/Lapwing roadster[\s\S]*revision 1 · changed (just now|\d+ minutes? ago)/)
    expect(await demo.innerText()).not.toContain('failing')
    await demo.getByRole('link', { name: 'Lapwing roadster', exact: true }).click()
    await settled(page)
    await page.getByRole('link', { name: 'Ampwright' }).click()
    await expect.poll(() => demo.innerText(), { timeout: 20_000 }).toMatch(/▲ 10 failing ◌ 16 unanswered/)
  })
  it('duplicates, deletes and brings back, each by keyboard alone', async () => {
    const page = await start(),
      before = await ids(page)
    await page.getByRole('button', { name: 'Duplicate Lapwing roadster' }).first().press('Enter')
    await expect.poll(async () => (await ids(page)).length).toBe(before.length + 1)
    const copy = (await ids(page)).find(id => !before.includes(id)) ?? ''
    expect(await bench.text(copy)).toBe(await bench.text(bench.demo))
    await row(page, copy)
      .getByRole('button', { name: /^Delete/ })
      .focus()
    await page.keyboard.press('Enter')
    await expect.poll(() => row(page, copy).innerText()).toMatch(/deleted; can be brought back until \d+ \w+ \d{4}/)
    expect(await row(page, copy).getByRole('link').count()).toBe(0)
    await page.keyboard.press('Enter')
    await expect.poll(() => row(page, copy).innerText()).not.toContain('deleted')
    await row(page, copy).getByRole('link', { name: 'Lapwing roadster', exact: true }).click()
    await page.waitForURL(`**/c/${copy}/brief`)
  })
  it('hears of what another window makes', async () => {
    const page = await start(),
      { id } = await post('/api/conversions', { sample: 'badger' })
    await row(page, id).waitFor()
  })
})

describe('a conversion that leaves and comes back', () => {
  it('is merged into what it came from, or becomes a variant that shows both values', async () => {
    const page = await start(),
      { id } = await post('/api/conversions', { sample: 'wren' })
    await row(page, id).waitFor()
    const text = await had(page, () => row(page, id).getByRole('link', { name: /^Text/ }).click())
    expect(text.name).toMatch(/\.conversion\.yaml$/)
    const luggage = /^ {2}luggage: (.*)$/m.exec(text.bytes.toString())?.[1] ?? '',
      budget = /^ {2}budget: (.*)$/m.exec(text.bytes.toString())?.[1] ?? ''
    expect([luggage, budget]).not.toContain('')
    await edited(id, 'brief.budget', budget, '12345 €')
    const away = text.bytes.toString().replace(`  luggage: ${luggage}`, '  luggage: 33 kg')
    await give(page, 'Take in a file', 'edited.conversion.yaml', Buffer.from(away))
    await page.getByText(/Merged: what the file changed is in .* now, as revision 3/).waitFor()
    expect(await bench.text(id)).toContain('luggage: 33 kg')
    expect(await bench.text(id)).toContain('budget: 12345 €')
    await give(page, 'Take in a file', 'edited.conversion.yaml', Buffer.from(away))
    await page.getByText(/^edited.conversion.yaml: Unchanged/).waitFor()
    await give(page, 'Take in a file', 'other.yaml', Buffer.from(away.replace(`  budget: ${budget}`, '  budget: 9000 €')))
    await page.getByText(/It became a variant of .*, because both changed the same/).waitFor()
    const both = page.getByRole('row', { name: /brief\.budget/ })
    expect(await both.innerText()).toMatch(/9000 €[\s\S]*12345 €/)
    expect(await bench.text(id)).toContain('budget: 12345 €')
  })
  it('says of an empty file that it is one, and starts a conversion of its name only when told to', async () => {
    const page = await start(),
      before = (await ids(page)).length
    await give(page, 'Take in a file', 'Heron.conversion.yaml', Buffer.from('\n'))
    await page.getByText(/found an empty file, and nothing was made of it/).waitFor()
    expect((await ids(page)).length).toBe(before)
    await page.getByRole('button', { name: 'Start Heron with nothing filled in' }).click()
    await page.getByText(/New: Heron is a conversion of its own now/).waitFor()
    await expect.poll(async () => (await ids(page)).length).toBe(before + 1)
  })
  it('comes back as a bundle dropped on the page, with its files', async () => {
    const page = await start(),
      { id } = await post('/api/conversions', { sample: 'otter' })
    await row(page, id).waitFor()
    const { name, bytes } = await had(page, () =>
      row(page, id)
        .getByRole('link', { name: /^Bundle/ })
        .click(),
    )
    expect(name).toMatch(/\.zip$/)
    const dropped = await page.evaluateHandle(
      ([file, letters]) => {
        const data = new DataTransfer()
        data.items.add(new File([Uint8Array.from(atob(letters), c => c.charCodeAt(0))], file))
        return data
      },
      [name, bytes.toString('base64')] as const,
    )
    await page.locator('.drop').dispatchEvent('drop', { dataTransfer: dropped })
    await page.getByText(/: Unchanged/).waitFor()
  })
  it('that cannot be read is refused with every problem: line, found, accepted', async () => {
    const page = await start(),
      before = await ids(page)
    const broken = readFileSync(fileOf('lapwing'), 'utf8')
      .replace('wheelbase: 2310 ± 3 mm', 'wheelbase: 2310 ± 3 kg')
      .replace('body: open two-seater', 'body: boat')
    await give(page, 'Take in a file', 'broken.yaml', Buffer.from(broken))
    const told = page.getByRole('alert')
    await told.waitFor()
    expect(await told.innerText()).toMatch(/broken\.yaml/)
    expect(await told.getByRole('listitem').allInnerTexts()).toEqual([
      expect.stringMatching(/^line \d+, donor\.body: .*found .*boat.*accepted /),
      expect.stringMatching(/^line \d+, donor\.wheelbase: .*found .*kg.*accepted /),
    ])
    await give(page, 'Take in a file', 'picture.yaml', Buffer.from([0xff, 0xd8, 0xff, 0xe0]))
    await expect.poll(() => told.innerText()).toMatch(/picture\.yaml: .*no text; accepted/)
    expect(await ids(page)).toEqual(before)
  })
})

describe('a backup', () => {
  it('has everything in one file, and is put back when asked once', async () => {
    const page = await start(),
      before = await ids(page)
    const { name, bytes } = await had(page, () => page.getByRole('button', { name: 'Everything as one file' }).click())
    expect(name).toMatch(/^ampwright-.*\.sqlite$/)
    const { id } = await post('/api/conversions', { sample: 'wren' })
    await row(page, id).waitFor()
    await give(page, 'Put a backup back', name, bytes)
    await page.getByRole('button', { name: 'Leave it as it is' }).click()
    expect(await ids(page)).toContain(id)
    await give(page, 'Put a backup back', name, bytes)
    await page.getByRole('button', { name: 'Put it in the place of everything' }).click()
    await page.getByText(/What was here before is kept in the data folder as .*\.sqlite/).waitFor()
    await expect.poll(() => ids(page)).toEqual(before)
  })
  it('that is none is refused, and everything stays', async () => {
    const page = await start(),
      before = await ids(page)
    await give(page, 'Put a backup back', 'holiday.sqlite', Buffer.from('no database '.repeat(500)))
    await page.getByRole('button', { name: 'Put it in the place of everything' }).click()
    await page.getByText(/^holiday\.sqlite: .*Nothing was changed/).waitFor()
    expect(await ids(page)).toEqual(before)
  })
})

/** What the notes say is to be pressed, page by page. */
const take = async (page: Page, finding: RegExp, remedy: RegExp): Promise<void> => {
  const article = page.getByRole('article', { name: finding }).first(),
    item = article.getByRole('listitem').filter({ hasText: remedy })
  await item.getByRole('button', { name: 'Preview' }).click()
  await article.getByRole('button', { name: 'Take it' }).click({ timeout: 60_000 })
  await settled(page)
}
const type = async (page: Page, path: string, text: string): Promise<void> => {
  const input = field(page, path)
  await input.evaluate(e => {
    for (let d = e.closest('details'); d; d = d.parentElement?.closest('details') ?? null) d.open = true
  })
  await input.fill(text)
  await input.press('Enter')
  await settled(page)
}
const TOUR: readonly {
  readonly at: string
  readonly next?: RegExp
  readonly open: number
  readonly press: (page: Page) => Promise<void>
}[] = [
  { at: 'brief', next: /Donor/, open: 1, press: async () => {} },
  {
    at: 'donor',
    next: /Drive/,
    open: 3,
    press: async page => {
      await take(page, /brake assist/, /vacuum pump/)
      await take(page, /steering pump/, /electro-hydraulic/)
      await type(page, 'donor.gearbox.input-torque', '260 Nm (datasheet)')
    },
  },
  { at: 'drive', next: /Pack/, open: 1, press: page => take(page, /^failing: Climbs as wanted/, /gear/) },
  {
    at: 'pack',
    next: /All findings/,
    open: 1,
    press: async page => {
      await type(page, 'pack.boxes.boot.modules', '1')
      await type(page, 'pack.boxes.front.modules', '9')
    },
  },
  { at: 'findings', open: 1, press: page => take(page, /charges the cells below freezing/, /freezing/) },
]

describe('the notes on the demo', () => {
  it('lead through the pages to a car with nothing left of them', async () => {
    const page = await bench.window(),
      { id } = await post('/api/conversions', { sample: 'lapwing' }),
      notes = page.getByRole('complementary', { name: 'Notes on the demo' })
    await page.goto(`${bench.url}/c/${id}/brief`)
    for (const { at, next, open, press } of TOUR) {
      await page.waitForURL(`**/c/${id}/${at}`)
      await settled(page)
      await expect.poll(() => notes.getByRole('heading').count(), { timeout: 20_000 }).toBe(open)
      await press(page)
      // What the brief asks together is put right on the page of the pack.
      if (at !== 'brief') await expect.poll(() => notes.getByRole('heading').count(), { timeout: 20_000 }).toBe(0)
      if (next) await notes.getByRole('link', { name: next }).click()
    }
    await expect.poll(() => notes.innerText()).toMatch(/8 of 8 notes are done[\s\S]*All notes are done/)
    await page.goto(`${bench.url}/c/${id}/brief`)
    await expect.poll(() => notes.innerText(), { timeout: 60_000 }).toContain('● done')
    expect(await page.locator('article.find:has(.out.failing)').count()).toBe(0)
  })
  it('are put away for good, brought back from the start page, and shown for no other car', async () => {
    const page = await bench.window(),
      { id } = await post('/api/conversions', { sample: 'badger' }),
      notes = page.getByRole('complementary', { name: 'Notes on the demo' })
    await page.goto(`${bench.url}/c/${bench.demo}/drive`)
    await page.getByRole('button', { name: 'Put the notes away' }).click()
    await notes.waitFor({ state: 'detached' })
    await page.reload()
    await settled(page)
    expect(await notes.count()).toBe(0)
    await page.goto(`${bench.url}/`)
    await page.getByRole('button', { name: 'Bring back the notes on the demo' }).click()
    await page.goto(`${bench.url}/c/${bench.demo}/drive`)
    await notes.waitFor()
    await page.goto(`${bench.url}/c/${id}/drive`)
    await settled(page)
    expect(await notes.count()).toBe(0)
  })
})

describe('a stage that comes later', () => {
  it('says what it will ask', async () => {
    const page = await bench.window()
    await page.goto(`${bench.url}/c/${bench.demo}/brief`)
    await page.getByRole('link', { name: /^Signals/ }).click()
    await page.getByRole('heading', { level: 1, name: 'Signals' }).waitFor()
    expect(await page.locator('main').innerText()).toMatch(/What it will ask[\s\S]*CAN bus/)
  })
})

describe('at the width of a phone', () => {
  it('start page, notes and later stages do not move sideways', async () => {
    const page = await start({ width: 360, height: 740 })
    for (const at of ['/', `/c/${bench.demo}/donor`, `/c/${bench.demo}/fit`]) {
      await page.goto(bench.url + at)
      await page.getByRole('heading', { level: 1 }).waitFor()
      if (at.startsWith('/c/')) await settled(page)
      expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth), at).toBeLessThanOrEqual(0)
    }
  })
  it('and nothing complains', () => expect(bench.complaints.filter(c => !/status of (400|422)/.test(c))).toEqual([]))
})
