import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { applyEdits, type Edit } from '@ampwright/conversion'
import { Answers, assess, type Figure, type Finding, findings, leaves, meshesTask, type Model, RULES, type Rule } from '@ampwright/engine'
import { writeStl } from '@ampwright/exchange'
import { describe, expect, it } from 'vitest'
import { conversionOf, root, textOf } from '../cars.ts'
import { lapwingMotor } from './lapwing-motor.ts'

const rule = (id: string): Rule => RULES.find(r => r.id === id) as Rule
const CLEAR = rule('parts-clear-of-each-other'),
  AS_LARGE = rule('meshes-as-large-as-said')
const meshed: readonly Edit[] = [{ path: 'fit.bodies.motor.mesh', now: 'attachments/lapwing-motor.stl' }]
/** The inverter let down over the motor, ahead of its flange: their boxes come within 5 mm. */
const low: readonly Edit[] = [
  { path: 'drive.units.main.inverter.x', now: '150 mm' },
  { path: 'drive.units.main.inverter.z', now: '655 mm' },
]
function modelOf(...edits: readonly Edit[]): Model {
  const done = applyEdits(textOf('lapwing'), edits)
  if (!done.ok) throw new Error(done.problem.what)
  return conversionOf(done.text).model
}
const unmeasured = ({ meshes: _, ...model }: Model): Model => model
const of = (r: Rule, m: Model, item: string): Finding | undefined => findings(r, new Answers(m)).find(f => f.item === item)

describe('the small mesh of the sample roadster’s motor', () => {
  it('is the file beside the samples', () => {
    const file = readFileSync(join(root, 'samples', 'attachments', 'lapwing-motor.stl'))
    expect(Buffer.compare(file, Buffer.from(writeStl(lapwingMotor())))).toBe(0)
  })
  it('stands for the motor: air is that of the mesh where boxes overlap or come close', () => {
    const boxes = of(CLEAR, modelOf(...low), 'inverter and motor'),
      byMesh = of(CLEAR, modelOf(...meshed, ...low), 'inverter and motor')
    expect(boxes).toMatchObject({ outcome: 'failing' })
    expect(boxes?.found?.value).toBeCloseTo(-0.005, 9)
    // The motor is 115 mm thick about 470 mm; the inverter's bottom stands at 600 mm, and its rear end 40 mm ahead of the flange.
    expect(byMesh?.found?.value).toBeCloseTo(0.015, 6)
    expect(byMesh?.found).toHaveProperty('because.formula.card.id', 'surveyed-air')
    // Its spread follows from the places of both.
    const rests = leaves(byMesh?.found as Figure).map(f => f.path)
    for (const path of ['drive.units.main.inverter.z', 'drive.units.main.motor.z']) expect(rests).toContain(path)
  })
  it('is being measured until it comes; boxes will do where they leave enough', () => {
    expect(of(CLEAR, unmeasured(modelOf(...meshed, ...low)), 'inverter and motor')).toMatchObject({
      outcome: 'unanswered',
      gaps: [{ path: 'fit.bodies.motor.mesh', why: 'being measured' }],
    })
    expect(of(AS_LARGE, unmeasured(modelOf(...meshed)), 'motor')).toMatchObject({
      outcome: 'unanswered',
      gaps: [{ why: 'being measured' }],
    })
    // 22.5 mm between the boxes of front box and motor.
    const enough = of(CLEAR, unmeasured(modelOf(...meshed)), 'front-box and motor')
    expect(enough).toMatchObject({ outcome: of(CLEAR, modelOf(), 'front-box and motor')?.outcome })
    expect(enough?.found?.value).toBeCloseTo(0.0225, 9)
  })
  it('says nothing of a part that has moved, turned or changed its mesh since', () => {
    const { meshes } = modelOf(...meshed, ...low)
    for (const edit of [
      { path: 'drive.units.main.inverter.z', now: '656 mm' },
      { path: 'fit.bodies.motor.turn', now: '1°' },
      { path: 'fit.bodies.motor.mesh', now: 'attachments/lapwing-bay.stl' },
      { path: 'fit.bodies.motor.mesh-unit', now: 'mm' },
    ])
      expect(of(CLEAR, { ...modelOf(...meshed, ...low, edit), meshes: meshes as never }, 'inverter and motor')?.outcome).toBe('unanswered')
  })
  it('does not stand for a motor of other sides: its box does, and that is said', () => {
    const long = modelOf(...meshed, ...low, { path: 'fit.bodies.motor.length', now: '325 mm' })
    expect(of(AS_LARGE, long, 'motor')).toMatchObject({ outcome: 'failing' })
    expect(of(AS_LARGE, long, 'motor')?.found?.value).toBeCloseTo(0.005, 6)
    expect(of(CLEAR, long, 'inverter and motor')?.found?.value).toBeCloseTo(-0.005, 9)
    expect(of(AS_LARGE, modelOf(...meshed, { path: 'fit.bodies.motor.mesh-unit', now: 'in' }), 'motor')?.outcome).toBe('failing')
    expect(of(AS_LARGE, modelOf(...meshed, { path: 'fit.bodies.motor.length', now: '321 mm' }), 'motor')?.outcome).toBe('sound')
  })
  it('gives its sides to a part whose sides were stated wrongly', () => {
    const wrong: Edit = { path: 'fit.bodies.motor.length', now: '335 mm' },
      offered = of(AS_LARGE, modelOf(...meshed, wrong), 'motor')?.remedies[0]
    if (offered?.do !== 'set') throw new Error('nothing is offered')
    expect(offered.sets.map(s => [s.path, s.to])).toEqual([
      ['fit.bodies.motor.length', { value: 0.32, kind: 'length' }],
      ['fit.bodies.motor.width', { value: 0.27, kind: 'length' }],
      ['fit.bodies.motor.height', { value: 0.27, kind: 'length' }],
    ])
    const taken = offered.sets.map(({ path, to }): Edit => ({ path, now: `${to && 'value' in to ? to.value : ''} m` }))
    expect(of(AS_LARGE, modelOf(...meshed, wrong, ...taken), 'motor')?.outcome).toBe('sound')
  })
  it('waits for sides that nobody has stated', () => {
    const { model } = conversionOf(
      textOf('lapwing')
        .replace('length: 320 mm', '')
        .replace(/(motor: \{ kind: motor,)/, '$1 mesh: attachments/lapwing-motor.stl,'),
    )
    expect(of(AS_LARGE, model, 'motor')).toMatchObject({
      outcome: 'unanswered',
      says: 'Its mesh is not held against its sides yet: they are not known.',
    })
  })
  it('asks of geometry plain numbers, and of no pair without a mesh', () => {
    const model = modelOf(...meshed, ...low),
      task = meshesTask(model, new Answers(model).ask)
    expect(structuredClone(task)).toEqual(task)
    expect(task.meshes.map(t => [t.shape, t.file, t.sides])).toEqual([['motor', 'attachments/lapwing-motor.stl', [0.32, 0.27, 0.27]]])
    expect(task.pairs.map(p => p.name)).toEqual(['front-box and motor', 'inverter and motor'])
    const none = modelOf()
    expect(meshesTask(none, new Answers(none).ask)).toEqual({ meshes: [], pairs: [] })
    expect(of(AS_LARGE, none, 'motor')).toBeUndefined()
  })
  it('leaves the rest of an assessment as it was', () => {
    const figures = (m: Model): ReadonlyMap<string, unknown> => {
      const steps = assess(new Answers(m))
      for (let step = steps.next(); ; step = steps.next()) if (step.done) return step.value.figures
    }
    const without = figures(modelOf()),
      withMesh = figures(modelOf(...meshed))
    expect([...withMesh.keys()].filter(k => !without.has(k))).toEqual(['mesh.off@motor'])
  })
})
