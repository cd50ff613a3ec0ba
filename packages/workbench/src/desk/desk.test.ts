import { fieldAt, pathKeys } from '@ampwright/conversion'
import { describe, expect, it } from 'vitest'
import { assessText, CARS, lookUps, textOf } from '../../../../tests/cars.ts'
import { Desk, type Step, type Told } from './desk.ts'
import { fieldsOf } from './sheet.ts'

const SECTIONS = ['brief', 'donor', 'drive', 'pack', 'trips', 'charging', 'fit', 'high-voltage', 'brakes', 'steering'] as const
const open = (text: string): Desk => new Desk(text, lookUps.attachments ? { attachments: lookUps.attachments } : {})
const run = (desk: Desk): { steps: Step[]; told: Told } => {
  const steps = [...desk.assess()],
    last = steps.at(-1)
  if (last?.is !== 'told') throw new Error('nothing was told')
  return { steps, told: last.told }
}

describe('a conversion laid open', () => {
  it.each(CARS)('tells of %s what the command line tells, headline first', car => {
    const { steps, told } = run(open(textOf(car)))
    const { assessment } = assessText(textOf(car), { bands: true })
    expect(told.findings.map(f => `${f.id} ${f.outcome}`)).toEqual(
      assessment.findings.map(f => `${f.item === undefined ? f.rule : `${f.rule}@${f.item}`} ${f.outcome}`),
    )
    const early = steps.find(s => s.is === 'headline')
    expect(early?.is === 'headline' && early.headline.map(h => h.id)).toEqual(assessment.headline)
    // A message between threads is copied: only plain data survives that.
    expect(structuredClone(told)).toEqual(told)
    expect(told.findings.map(f => `${f.says} ${f.remedies.map(r => r.says).join(' ')}`).filter(t => /\{[a-z]/i.test(t))).toEqual([])
  })
  it.each(CARS)('lays out every typed fact of %s as a field that reads as typed', car => {
    const desk = open(textOf(car))
    run(desk)
    const fields = new Map(SECTIONS.flatMap(s => fieldsOf(desk.sheet(s))).map(f => [f.path, f]))
    for (const f of desk.current().facts as readonly { path: string; text?: string; origin?: { note?: string } }[]) {
      if (f.text === undefined || f.path.includes('#') || !fieldAt(f.path) || f.path === 'car' || f.path.startsWith('accepted')) continue
      const field = fields.get(f.path)
      expect(field, f.path).toBeDefined()
      expect(field?.text ?? field?.stands, f.path).toBeDefined()
      if (field?.text !== undefined) expect(desk.at(f.path), f.path).toBe(field.text)
    }
  })
  it('takes edits whole or not at all, and says what it saw there', () => {
    const desk = open(textOf('lapwing')),
      before = desk.source
    const refused = desk.edit([
      { path: 'brief.seats', now: '3' },
      { path: 'donor.wheelbase', now: '2310 kg' },
    ])
    expect(refused.ok).toBe(false)
    expect(!refused.ok && refused.issues[0]).toMatchObject({ path: 'donor.wheelbase' })
    expect(desk.source).toBe(before)
    const made = desk.edit([{ path: 'drive.units.main.gear', now: 'third' }])
    expect(made.ok && made.edits).toEqual([{ path: 'drive.units.main.gear', now: 'third', was: 'fourth' }])
    const { told } = run(desk)
    expect(told.findings.find(f => f.id === 'acceleration@sprint')?.outcome).toBe('sound')
  })
  it('refuses a part nobody knows, though a file may name one', () => {
    const desk = open(textOf('wren'))
    const refused = desk.edit([{ path: 'drive.units.front.motor.part', now: 'no-such-motor@1' }])
    expect(refused.ok).toBe(false)
  })
  it('opens a figure down to what somebody measured', () => {
    const desk = open(textOf('lapwing'))
    run(desk)
    const met = new Set<string>(),
      queue = ['range.range@mixed']
    for (let name = queue.pop(); name !== undefined; name = queue.pop()) {
      if (met.has(name)) continue
      met.add(name)
      const w = desk.working(name)
      expect(w, name).toBeDefined()
      queue.push(...(w?.inputs.map(i => i.name) ?? []))
    }
    expect(met).toContain('donor.weighing.front-left')
    expect(desk.working('donor.weighing.front-left')).toMatchObject({ how: 'measured', typed: '251 ± 1 kg (measured, wheel scales)' })
  })
  it('offers what is assumed with its spread, and taking it keeps it assumed', () => {
    const desk = open('schema: 1\ndonor: {}\n')
    run(desk)
    const offered = SECTIONS.flatMap(s => fieldsOf(desk.sheet(s))).filter(
      f => f.how === 'assumed' && f.text === undefined && f.taking !== undefined,
    )
    expect(offered.length).toBeGreaterThan(0)
    for (const f of offered) {
      const taken = open('schema: 1\ndonor: {}\n'),
        made = taken.edit([{ path: pathKeys(f.path) as string[], now: f.taking as string }])
      expect(made.ok || made.issues, `${f.path}: ${f.taking}`).toBe(true)
      run(taken)
      expect(
        (taken.current().facts as readonly { path: string; origin?: { how: string } }[]).find(x => x.path === f.path)?.origin?.how,
        f.path,
      ).toBe('assumed')
    }
  })
  it('works on nothing at all', () => {
    const { told } = run(open(''))
    expect(told.findings.filter(f => f.outcome === 'failing')).toEqual([])
    expect(told.gaps.length).toBeGreaterThan(10)
  })
})
