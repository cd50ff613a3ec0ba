import { readFileSync } from 'node:fs'
import { run } from '@ampwright/cli'
import { describe, expect, it } from 'vitest'
import { fileOf } from '../cars.ts'
import { benchOfFile } from './bench-of-file.ts'
import { settled } from './browser.ts'

const bench = benchOfFile()

describe('a drawing of a battery box', () => {
  it('is taken along for a drawing program, as the command line writes it', async () => {
    const page = await bench.window()
    await page.goto(`${bench.url}/c/${bench.demo}/fit`)
    await settled(page)
    const button = page.getByRole('figure').getByRole('button', { name: 'DXF' })
    const [download] = await Promise.all([page.waitForEvent('download'), button.click()])
    expect(download.suggestedFilename()).toBe('shell.boxes-boot-box.dxf')
    const out: string[] = []
    await run(['drawing', fileOf('lapwing'), 'shell.boxes@boot-box', '--dxf'], {
      width: 100,
      colour: false,
      out: l => out.push(l),
      err: () => {},
    })
    expect(readFileSync(await download.path(), 'utf8').trimEnd()).toBe(out.join('\n'))
  })
  it('is the only kind that goes to a drawing program', async () => {
    const page = await bench.window()
    await page.goto(`${bench.url}/c/${bench.demo}/drive`)
    await settled(page)
    await page.getByRole('button', { name: 'SVG' }).first().waitFor()
    expect(await page.getByRole('button', { name: 'DXF' }).count()).toBe(0)
  })
})
