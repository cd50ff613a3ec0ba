import { run } from '@ampwright/cli'
import { assessmentJson } from '@ampwright/workbench'
import { describe, expect, it } from 'vitest'
import { assessText, CARS, fileOf, textOf } from '../cars.ts'

async function printed(...args: string[]): Promise<{ code: number; out: string }> {
  const lines: string[] = []
  const code = await run(args, { width: 100, colour: false, out: l => lines.push(l), err: l => lines.push(l) })
  return { code, out: lines.join('\n') }
}

describe.each(CARS)('sweep “round trip” over %s', car => {
  it('the terminal and the JSON carry exactly the assessed figures', async () => {
    const { conversion, assessment } = assessText(textOf(car), { bands: true })
    const json = JSON.parse((await printed('assess', fileOf(car), '--json')).out) as {
      figures: Record<string, { value: unknown }>
      findings: unknown[]
    }
    expect(Object.keys(json.figures).sort()).toEqual([...assessment.figures.keys()].sort())
    for (const [id, f] of assessment.figures)
      if (typeof f.value === 'number' && Number.isFinite(f.value)) expect(json.figures[id]?.value, id).toBe(f.value)
    expect(json.findings).toHaveLength(assessment.findings.length)
    expect(JSON.parse(JSON.stringify(assessmentJson(conversion, assessment)))).toEqual(json)
    const { out } = await printed('assess', fileOf(car), '--figures')
    for (const [id, f] of assessment.figures) if (typeof f.value === 'number') expect(out).toContain(id)
  })
})
