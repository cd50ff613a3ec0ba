import { applyEdits } from '@ampwright/conversion'
import { describe, expect, it } from 'vitest'
import { textOf } from '../cars.ts'
import { benchOfFile } from './bench-of-file.ts'
import { settled } from './browser.ts'

const bench = benchOfFile()

/** The demo with no circuit in it yet. */
async function withoutCircuit(): Promise<string> {
  const bare = applyEdits(textOf('lapwing'), [{ path: 'high-voltage', now: null }])
  if (!bare.ok) throw new Error(bare.problem.what)
  const answer = await fetch(`${bench.url}/api/conversions`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', 'x-ampwright': '1' },
    body: JSON.stringify({ text: bare.text }),
  })
  return ((await answer.json()) as { id: string }).id
}

describe('a circuit', () => {
  it('is laid out at a press, tried on the whole car, and stands in the file only once it is taken', async () => {
    const id = await withoutCircuit(),
      page = await bench.window({ width: 360, height: 740 })
    await page.goto(`${bench.url}/c/${id}/high-voltage`)
    await settled(page)
    await page.getByRole('button', { name: 'Lay out a circuit' }).click()
    const preview = page.locator('.preview')
    await preview.waitFor({ timeout: 120_000 })
    expect(await bench.text(id)).not.toContain('high-voltage:')
    await preview.getByRole('button', { name: 'Take it' }).click()
    await expect.poll(() => bench.text(id), { timeout: 60_000 }).toContain('main-plus: { kind: contactor, role: main, current: 250 A')
    await settled(page)
    await expect.poll(() => page.getByRole('button', { name: 'Lay out a circuit' }).count()).toBe(0)
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0)
    expect(bench.complaints).toEqual([])
  }, 400_000)
  it('that is described lists its wires with what they carry', async () => {
    const page = await bench.window()
    await page.goto(`${bench.url}/c/${bench.demo}/high-voltage`)
    await settled(page)
    await expect.poll(() => page.getByText('Cable schedule and cut list').count(), { timeout: 60_000 }).toBeGreaterThan(0)
    expect(await page.getByRole('button', { name: 'Lay out a circuit' }).count()).toBe(0)
    expect(bench.complaints).toEqual([])
  }, 120_000)
})
