import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { writeStl } from '@ampwright/exchange'
import { expect, it } from 'vitest'
import { root } from '../cars.ts'
import { engineBay } from '../scans/engine-bay.ts'
import { benchOfFile } from './bench-of-file.ts'
import { settled } from './browser.ts'

const bench = benchOfFile()

it('a scan dropped on the page Fit is shown, laid into the car by three points clicked on it, and measured', async () => {
  const page = await bench.window()
  await page.goto(`${bench.url}/c/${bench.demo}/fit`)
  await settled(page)
  const scans = page.getByRole('region', { name: 'Scans' })
  await scans.locator('input[type=file]').setInputFiles(join(root, 'samples', 'attachments', 'lapwing-bay.stl'))
  await scans.getByText('It is only laid out to be looked at: 0 of three points are picked.').waitFor()
  await page.getByRole('button', { name: 'From above' }).click()
  await scans.getByRole('button', { name: 'Pick a point on it' }).click()
  const space = page.locator('.scene .space')
  // From above the bay lies ahead of the middle of the picture, its floor to be seen.
  for (const [name, u, v] of [
    ['one', 0.38, 0.416],
    ['two', 0.464, 0.416],
    ['three', 0.428, 0.584],
  ] as const) {
    await space.evaluate(e => e.scrollIntoView({ block: 'end' }))
    const box = (await space.boundingBox())!
    await page.mouse.click(box.x + u * box.width, box.y + v * box.height)
    const told = scans.getByText(/^Picked at/)
    await told.waitFor({ timeout: 10_000 })
    const [x, y, z] = ((await told.textContent()) ?? '').match(/-?\d+(\.\d+)?/g) as [string, string, string]
    await scans.getByLabel('Call it').fill(name)
    await scans.getByLabel('behind the front axle').fill(`${x} mm`)
    await scans.getByLabel('to the right of the centre line').fill(`${y} mm`)
    await scans.getByLabel('above the ground').fill(`${z} mm`)
    await scans.getByRole('button', { name: 'Keep the point' }).click()
    await told.waitFor({ state: 'detached' })
  }
  await scans.getByText(/It lies by 3 points, .*left over/).waitFor({ timeout: 30_000 })
  await settled(page)
  const text = await bench.text(bench.demo)
  expect(text).toMatch(/scans:\s+lapwing-bay:/)
  expect(text).toMatch(/on-scan-x:/)
  await page.goto(`${bench.url}/c/${bench.demo}/findings`)
  await page
    .getByText(/to the scan lapwing-bay there is/)
    .first()
    .waitFor({ state: 'attached', timeout: 60_000 })
  // The way in of each part was measured with the gaps.
  await page
    .getByText(/Coming from (above|behind) it (passes|runs into) the scan lapwing-bay/)
    .first()
    .waitFor({ state: 'attached' })
  expect(bench.complaints).toEqual([])
}, 180_000)

it('a large scan is drawn by fewer triangles for as long as the view moves, and whole once it rests', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'ampwright-scan-')),
    { scan } = engineBay({ seed: 3, triangles: 90_000 }),
    whole = scan.triangles.length / 3,
    page = await bench.window()
  writeFileSync(join(folder, 'bay.stl'), writeStl(scan))
  try {
    await page.goto(`${bench.url}/c/${bench.demo}/fit`)
    await settled(page)
    await page.getByRole('region', { name: 'Scans' }).locator('input[type=file]').setInputFiles(join(folder, 'bay.stl'))
    await page.waitForFunction(least => ((window as { ampwrightTriangles?: () => number }).ampwrightTriangles?.() ?? 0) > least, whole, {
      timeout: 60_000,
    })
    const space = page.locator('.scene .space')
    await space.evaluate(e => e.scrollIntoView({ block: 'end' }))
    const box = (await space.boundingBox())!
    await page.mouse.move(box.x + 8, box.y + 8)
    await page.mouse.down()
    for (let n = 1; n <= 5; n++) await page.mouse.move(box.x + 8 + 6 * n, box.y + 8)
    await page.waitForFunction(
      least => ((window as { ampwrightTriangles?: () => number }).ampwrightTriangles?.() ?? Infinity) < least,
      whole - 20_000,
    )
    await page.mouse.up()
    await page.waitForFunction(least => ((window as { ampwrightTriangles?: () => number }).ampwrightTriangles?.() ?? 0) > least, whole)
    expect(bench.complaints).toEqual([])
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}, 180_000)
