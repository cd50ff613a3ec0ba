import type { Page } from '@playwright/test'
import { beforeAll, describe, expect, it } from 'vitest'
import { benchOfFile } from './bench-of-file.ts'
import { field, settled, turnTo } from './browser.ts'

const bench = benchOfFile()
let page: Page, first: string
beforeAll(async () => {
  page = await bench.window()
  first = await bench.text(bench.demo)
  await page.goto(`${bench.url}/c/${bench.demo}/findings`)
  await settled(page)
}, 120_000)

type Seen = { readonly path: string; readonly is: string; readonly stood: string }
/** Every text field of a page, folded away or not, with what kind of value it takes. */
async function fieldsOf(stage: string): Promise<readonly Seen[]> {
  await turnTo(page, stage)
  return page
    .locator('main input[data-path]')
    .evaluateAll(list => list.map(e => ({ path: e.dataset['path'] ?? '', is: e.dataset['is'] ?? '', stood: e.dataset['stands'] ?? '' })))
}
/** The unit a quantity stands in: one field of each is enough. */
const unitOf = (stood: string): string => /[\d.]\s*([^\d\s(±][^(]*)?(\(|$)/.exec(stood)?.[1]?.trim() ?? ''
/** What is typed where, and what the message must name. */
const WRONG: Readonly<Record<string, readonly string[]>> = {
  quantity: ['twelve', '5 parsec', '1,180 kg ± kg', '12 (guessed)'],
  date: ['2026-02-30', 'next Tuesday'],
  tyre: ['185/60', 'wide ones'],
}

/** Two of the texts for each field, so that all of them have their turn. */
const twoOf = (texts: readonly string[], n: number): readonly string[] => [
  ...new Set([n, n + 1].map(k => texts[k % texts.length] as string)),
]

describe('wrong input', () => {
  it.each(['brief', 'donor', 'drive', 'pack', 'high-voltage', 'brakes-steering'])(
    'stays in any field of %s, with what was found and what is accepted, and nothing is changed',
    async stage => {
      const met = new Map<string, string>()
      for (const { path, is, stood } of await fieldsOf(stage)) {
        const kind = is === 'quantity' ? `quantity ${unitOf(stood)}` : is
        if (WRONG[is] && !met.has(kind)) met.set(kind, path)
      }
      expect([...met.keys()].some(k => k.startsWith('quantity'))).toBe(true)
      await page.locator('main details').evaluateAll(list => list.forEach(d => d.setAttribute('open', '')))
      for (const [n, [kind, path]] of [...met].entries())
        for (const wrong of twoOf(WRONG[kind.split(' ')[0] as string] ?? [], n)) {
          const input = field(page, path)
          await input.fill(wrong)
          await input.press('Enter')
          const error = page.locator(`.field:has([data-path="${path}"]) .error`).first()
          await error.waitFor({ timeout: 10_000 }).catch(() => expect.fail(`${path}: «${wrong}» was taken`))
          const said = await error.innerText()
          expect(said, path).toMatch(/found/)
          expect(said, path).toMatch(/accepted|did you mean/)
          expect(await input.inputValue()).toBe(wrong)
          await input.press('Escape')
          await error.waitFor({ state: 'detached' })
        }
      expect(await bench.text(bench.demo)).toBe(first)
    },
  )
  it('in the name of a new thing is said beside it', async () => {
    await turnTo(page, 'pack')
    await page.locator('main details').evaluateAll(list => list.forEach(d => d.setAttribute('open', '')))
    const name = page.getByLabel('Name of a new battery box')
    for (const [wrong, says] of [
      ['', /name .* is wanted/],
      ['front', /already/],
    ] as const) {
      await name.fill(wrong)
      await name.press('Enter')
      await expect.poll(() => page.locator('form.add:has([aria-label="Name of a new battery box"]) .error').innerText()).toMatch(says)
    }
    expect(await bench.text(bench.demo)).toBe(first)
  })
  it('makes nothing complain', () => expect(bench.complaints).toEqual([]))
})
