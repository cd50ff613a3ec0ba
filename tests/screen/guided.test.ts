import { describe, expect, it } from 'vitest'
import { benchOfFile } from './bench-of-file.ts'
import { settled } from './browser.ts'

const bench = benchOfFile()

/** A light roadster that never was: what its owner knows after an afternoon with tape, scales and the handbook of the car. */
const ANSWERS: Readonly<Record<string, string>> = {
  car: 'Sandpiper roadster',
  'donor.body': 'open two-seater',
  'donor.category': 'M1',
  'donor.first-registered': '1992-05-01',
  'donor.weighing.front': '500 ± 2 kg (measured, wheel scales)',
  'donor.weighing.rear': '465 ± 2 kg (measured, wheel scales)',
  'donor.weighing.fuel': '20 l',
  'donor.weighing.tank': '45 l',
  'donor.ratings.front-axle': '720 kg',
  'donor.ratings.rear-axle': '760 kg',
  'donor.ratings.total': '1420 kg',
  'donor.wheelbase': '2300 mm (measured, tape)',
  'donor.tyre': '185/60 R14 82H',
  'donor.engine.power': '90 kW',
  'donor.engine.torque': '165 Nm',
  'donor.engine.red-line': '7000 rpm',
  'donor.engine.fuel': 'petrol',
  'donor.removed.engine.x': '60 mm',
  'donor.removed.tank.x': '2200 mm',
  'donor.seats.front.places': '2',
  'donor.seats.front.x': '1450 mm',
  'donor.luggage-x': '2400 mm',
  'donor.brakes.assist': 'vacuum',
  'donor.steering.assist': 'hydraulic',
  'donor.gearbox.gears.first': '3.2',
  'donor.gearbox.gears.second': '1.9',
  'donor.gearbox.gears.third': '1.35',
  'donor.gearbox.gears.fourth': '1.0',
  'donor.gearbox.gears.fifth': '0.81',
  'donor.final-drive': '4.1',
  'brief.rules': 'un',
  'brief.workshop': 'business',
  'brief.seats': '2',
  'brief.luggage': '30 kg',
  'brief.loads.usual.people': '1',
  'brief.loads.usual.luggage': '0 kg',
  'brief.conditions.surface': 'dry',
  'brief.conditions.temperature': '15 °C',
  'brief.conditions.altitude': '100 m',
  'brief.conditions.head-wind': '0 km/h',
  'brief.goals.top-speed.speed': '120 km/h',
  'brief.goals.sprint.from': '0 km/h',
  'brief.goals.sprint.to': '100 km/h',
  'brief.goals.sprint.within': '13 s',
  'brief.goals.pull-away.slope': '20 %',
  'brief.goals.range.distance': '120 km',
  'brief.reserve': '10 %',
}

describe('a new conversion from nothing', () => {
  it('goes from an empty page through a few questions to a car worked out in full', async () => {
    const page = await bench.window()
    await page.goto(`${bench.url}/`)
    await page.getByRole('link', { name: 'A new conversion' }).click()
    await page.getByText('longitudinal front').click()
    await page.locator('input[name="donor.driven-wheels"][value="rear"]').click()
    const met = new Set<string>()
    for (let chapter = 0; chapter < 4; chapter++) {
      for (const input of await page.locator('[data-path]').all()) {
        const path = (await input.getAttribute('data-path')) ?? '',
          text = ANSWERS[path]
        if (text === undefined) continue
        met.add(path)
        if ((await input.evaluate(e => e.tagName)) === 'SELECT') await input.selectOption(text)
        else {
          await input.fill(text)
          await input.press('Enter')
        }
      }
      expect(await page.locator('.question .error').allInnerTexts()).toEqual([])
      await page.getByRole('button', { name: 'Next' }).click()
    }
    expect(Object.keys(ANSWERS).filter(p => !met.has(p))).toEqual([])
    await page.getByRole('button', { name: 'Work out the concepts' }).click()
    const table = page.locator('table.concepts')
    await table.waitFor({ timeout: 240_000 })
    expect(await table.innerText()).toMatch(/Kerb mass[\s\S]*kg/)
    expect(await table.innerText()).toMatch(/Hours[\s\S]*h/)
    await page.getByRole('button', { name: 'Go on with this' }).first().click()
    await page.waitForURL(/\/c\/[0-9a-f]+\/drive/)
    await settled(page)
    expect(await page.locator('.headline').innerText()).toMatch(/Range[\s\S]*km/)
    const id = /\/c\/([0-9a-f]+)\//.exec(page.url())?.[1] ?? ''
    const text = await bench.text(id)
    expect(text).toContain('car: Sandpiper roadster')
    expect(text).toMatch(/motor:[\s\S]*part: /)
  })
  it('says what is wrong with an answer, and goes on with what is left open', async () => {
    const page = await bench.window({ width: 360, height: 740 })
    await page.goto(`${bench.url}/new`)
    await page.getByText('transverse front').click()
    await page.locator('input[name="donor.driven-wheels"][value="front"]').click()
    await page.getByRole('button', { name: 'Next' }).click()
    const base = page.locator('[data-path="donor.wheelbase"]')
    await base.fill('2.3 kg')
    await base.press('Enter')
    await page.locator('.field.wrong .error').waitFor()
    expect(await page.locator('.field.wrong .error').innerText()).toMatch(/kg/)
    await base.fill('')
    await base.press('Enter')
    await page.locator('.field.wrong .error').waitFor({ state: 'detached' })
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0)
    await page.getByRole('button', { name: 'concepts' }).click()
    await page.getByRole('button', { name: 'Work out the concepts' }).click()
    await page.locator('.note[role="status"]').waitFor({ timeout: 240_000 })
    await page.getByRole('button', { name: 'Go on without one' }).click()
    await page.waitForURL(/\/c\/[0-9a-f]+\/brief/)
    await settled(page).catch(() => undefined)
    expect(await bench.text(/\/c\/([0-9a-f]+)\//.exec(page.url())?.[1] ?? '')).toContain('engine-position: transverse front')
  })
  it('has nothing to complain about', () => expect(bench.complaints).toEqual([]))
})
