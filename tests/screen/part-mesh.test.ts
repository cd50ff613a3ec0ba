import { join } from 'node:path'
import { expect, it } from 'vitest'
import { root } from '../cars.ts'
import { benchOfFile } from './bench-of-file.ts'
import { settled, turnTo } from './browser.ts'

const bench = benchOfFile()

it('a mesh put to use at a part is drawn in place of its box, held against its sides and measured', async () => {
  const page = await bench.window(),
    triangles = () => page.evaluate(() => (window as { ampwrightTriangles?: () => number }).ampwrightTriangles?.() ?? 0)
  await page.goto(`${bench.url}/c/${bench.demo}/fit`)
  await settled(page)
  await page.waitForFunction(() => ((window as { ampwrightTriangles?: () => number }).ampwrightTriangles?.() ?? 0) > 100)
  const asBox = await triangles()
  await page.goto(`${bench.url}/c/${bench.demo}/files`)
  await settled(page)
  const added = page.getByRole('region', { name: 'A new file' })
  await added.locator('input[type=file]').setInputFiles(join(root, 'samples', 'attachments', 'lapwing-motor.stl'))
  await added.getByRole('button', { name: 'Keep it beside the conversion' }).click()
  await added.getByLabel('Put to use').selectOption('fit.bodies.motor.mesh')
  await added.getByRole('button', { name: 'Use it' }).click()
  await added.getByText(/^In use at/).waitFor()
  await settled(page)
  expect(await bench.text(bench.demo)).toMatch(/motor: \{ kind: motor,.* mesh: lapwing-motor\.stl/)
  await turnTo(page, 'fit')
  const scans = page.getByRole('region', { name: 'Scans' })
  await scans.getByText(/^motor .*Drawn and measured by its mesh, 384 triangles\.$/).waitFor({ timeout: 30_000 })
  // The box of twelve triangles has gone, the mesh has come; what is seen through is drawn from behind and from ahead.
  await page.waitForFunction(
    before => (window as { ampwrightTriangles?: () => number }).ampwrightTriangles?.() === before + 2 * (384 - 12),
    asBox,
    { timeout: 20_000 },
  )
  await page.getByLabel('Chosen shape').selectOption('motor')
  await page.getByLabel('Air between motor and').selectOption('front-box')
  await page.getByText('22.5 mm').first().waitFor()
  await page.goto(`${bench.url}/c/${bench.demo}/findings`)
  await page
    .getByText(/Its mesh is off its sides by 0\s?mm/)
    .first()
    .waitFor({ state: 'attached', timeout: 60_000 })
  expect(bench.complaints).toEqual([])
}, 180_000)
