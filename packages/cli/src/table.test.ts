import { describe, expect, it } from 'vitest'
import { fileOf } from '../../../tests/cars.ts'
import { run } from './program.ts'
import { widthOf } from './terminal.ts'

async function command(args: readonly string[], width = 100): Promise<{ code: number; out: string; err: string }> {
  const out: string[] = [],
    err: string[] = []
  const code = await run(args, { width, colour: false, out: l => out.push(l), err: l => err.push(l) })
  return { code, out: out.join('\n'), err: err.join('\n') }
}

describe('table', () => {
  it('lists the tables of a conversion', async () => {
    const { code, out } = await command(['table', fileOf('lapwing')])
    expect(code).toBe(0)
    for (const id of ['brief.requirements', 'brief.goals', 'exchange.pairs', 'cost.list'])
      expect(out).toMatch(new RegExp(`^${id.replace('.', '\\.')}  `, 'm'))
  })
  it('prints one in columns where it fits, row by row where it does not, never wider than the terminal', async () => {
    const wide = await command(['table', fileOf('lapwing'), 'cost.list'], 100)
    expect(wide.out).toMatch(/^charger +450\s±\s120\s€$/mu)
    for (const id of ['brief.requirements', 'brief.goals', 'exchange.pairs']) {
      const { out } = await command(['table', fileOf('lapwing'), id], 60)
      expect(
        out.split('\n').filter(l => widthOf(l) > 60),
        id,
      ).toEqual([])
    }
    const { out } = await command(['table', fileOf('lapwing'), 'brief.goals'])
    expect(out).toContain('weekend')
    expect(out).toMatch(/distance: 160\skm/u)
  })
  it('speaks the reader’s language about the rows of a rule set', async () => {
    const { out } = await command(['table', fileOf('lapwing'), 'brief.requirements'])
    expect(out).toContain('The authority agrees before work starts\n')
    expect(out).not.toMatch(/: (max|min|range|must|must-not|trigger|fact|T|S|D|Q|un|practice|1)$/m)
  })
  it('gives JSON, and names the nearest table where there is none of that name', async () => {
    const { out } = await command(['table', fileOf('wren'), 'brief.requirements', '--json'])
    const table = JSON.parse(out) as { rows: { name: string; cells: Record<string, unknown> }[] }
    expect(table.rows.find(r => r.name === 'battery.approval')?.cells).toMatchObject({ from: 'un', read: 'D' })
    expect(await command(['table', fileOf('wren'), 'brief.goal'])).toMatchObject({ code: 2, err: expect.stringContaining('brief.goals') })
  })
})

describe('a finding on a row of the rule set', () => {
  it('names the set, the text with clause and date, and how it was read', async () => {
    const { out } = await command(['assess', fileOf('wren')], 400)
    expect(out).toContain('Common practice, power.ratio: Common practice of conversion workshops (common practice, no law)')
    expect(out).toContain('The rule set says nothing on this: common practice stands in, which is no law.')
    expect(out).toContain('Marginal and not failing because the law says nothing and the inspector agreed in writing')
  })
})
