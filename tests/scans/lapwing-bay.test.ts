import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { applyEdits } from '@ampwright/conversion'
import { Answers, type Finding, findings, isGap, RULES, type Rule, scanTasks } from '@ampwright/engine'
import { writeStl } from '@ampwright/exchange'
import { describe, expect, it } from 'vitest'
import { assessText, conversionOf, root, textOf } from '../cars.ts'
import { surveyed } from '../surveyed.ts'
import { lapwingBay } from './lapwing-bay.ts'

const rule = RULES.find(r => r.id === 'clear-of-what-was-scanned') as Rule
function edited(edits: readonly { readonly path: string; readonly now: string | null }[]): string {
  const done = applyEdits(textOf('lapwing'), edits)
  if (!done.ok) throw new Error(done.problem.what)
  return done.text
}
const scanned = rule.spoil.edits.filter(e => e.path.startsWith('fit.scans')),
  roomy = [
    ...scanned,
    { path: 'fit.scans.bay.resolution', now: '30 mm' },
    { path: 'fit.scans.bay.space', now: 'engine-bay' },
    { path: 'fit.scans.bay.inside.x', now: '-300 mm' },
    { path: 'fit.scans.bay.inside.y', now: '300 mm' },
    { path: 'fit.scans.bay.inside.z', now: '600 mm' },
  ]
const at = (list: readonly Finding[], item: string): Finding | undefined => list.find(f => f.item === item)

describe('the small scan of the sample roadster', () => {
  it('is the file beside the samples, and small', () => {
    const file = readFileSync(join(root, 'samples', 'attachments', 'lapwing-bay.stl'))
    expect(Buffer.compare(file, Buffer.from(writeStl(lapwingBay())))).toBe(0)
    expect(file.length).toBeLessThan(200_000)
  })
  it('is being measured until a survey comes, and says so without a number', () => {
    const { model } = conversionOf(edited(scanned)),
      { surveys, ...alone } = model
    expect(surveys).toBeDefined()
    const [found, ...more] = findings(rule, new Answers(alone))
    expect(more).toEqual([])
    expect(found).toMatchObject({ item: 'bay', outcome: 'unanswered', says: 'How near the parts come to it is being measured.' })
    expect(found?.gaps.map(g => [g.path, g.why])).toEqual([['fit.scans.bay', 'being measured']])
  })
  it('tells the gap of what is near, as far as its walls are away', () => {
    const { assessment } = assessText(edited([...scanned, { path: 'fit.bodies.front-box.width', now: '880 mm' }])),
      gap = assessment.figures.get('scan.gap@front-box and bay')
    // Half of 920 less half of 880 mm, and the skin is rough.
    expect(gap?.value).toBeGreaterThan(0.015)
    expect(gap?.value).toBeLessThan(0.021)
    expect(
      at(
        assessment.findings.filter(f => f.rule === rule.id),
        'front-box and bay',
      )?.outcome,
    ).toBe('sound')
  })
  it('says nothing of a part that has moved since, and of a scan that lies elsewhere', () => {
    const before = conversionOf(edited(scanned)).model
    const of = (edits: typeof scanned): readonly Finding[] =>
      findings(rule, new Answers({ ...conversionOf(edited([...scanned, ...edits])).model, surveys: before.surveys as never }))
    const moved = of([{ path: 'pack.boxes.front.x', now: '-100 mm' }])
    expect(at(moved, 'front-box and bay')).toBeUndefined()
    expect(at(moved, 'bay')).toMatchObject({ outcome: 'unanswered', says: 'Parts have moved: how near they come to it is being measured.' })
    expect(at(of([{ path: 'fit.scans.bay.points.rear.x', now: '481 mm' }]), 'bay')?.gaps[0]?.why).toBe('being measured')
    expect(at(of([{ path: 'fit.scans.bay.unit', now: 'mm' }]), 'bay')?.outcome).toBe('unanswered')
  })
  it('asks for three points, and for what one of them lacks', () => {
    const two = findings(rule, new Answers(conversionOf(edited([...scanned, { path: 'fit.scans.bay.points.rear', now: null }])).model))
    expect(two[0]?.gaps.map(g => g.path)).toEqual(['fit.scans.bay.points'])
    const half = findings(rule, new Answers(conversionOf(edited([...scanned, { path: 'fit.scans.bay.points.rear.y', now: null }])).model))
    expect(half[0]?.gaps.map(g => g.path)).toEqual(['fit.scans.bay.points.rear.y'])
  })
  it('says what is wrong with the points where nothing can be measured', () => {
    const found = findings(rule, new Answers(conversionOf(edited([...scanned, { path: 'fit.scans.bay.unit', now: 'in' }])).model))
    expect(found[0]).toMatchObject({ item: 'bay', outcome: 'unanswered' })
    expect(found[0]?.slots['fault']?.value).toMatch(/^the distances between the points do not fit a scan in in; found/)
  })
  it('gives the free space inside the space it stands for', () => {
    const { assessment, conversion } = assessText(edited(roomy)),
      free = assessment.figures.get('scan.free@bay')
    expect(isGap(conversion.model.fit.scans['bay']?.file)).toBe(false)
    // 1040 by 860 by 640 mm, less a cube at the floor and the bulkhead, in whole cubes.
    expect(free?.value).toBeGreaterThan(0.43)
    expect(free?.value).toBeLessThan(1.04 * 0.86 * 0.64)
  })
  it('asks of geometry plain numbers, in an order that is not that of the file', () => {
    const { model } = conversionOf(edited(roomy)),
      [task] = scanTasks(model, new Answers(model).ask)
    expect(structuredClone(task)).toEqual(task)
    expect(task?.bodies.map(b => b.name)).toEqual([...(task?.bodies.map(b => b.name) ?? [])].sort())
    expect(task?.bodies.some(b => b.name === 'booster')).toBe(false)
    expect(surveyed(model).surveys?.['bay']?.residual).toBeLessThan(1e-9)
  })
})
