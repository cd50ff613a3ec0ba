import { applyEdits, type Edit, formatIssue, isUsable, readConversion } from '@ampwright/conversion'
import { isGap, type Model, type PackAnswer, type PackArrangement, packSearch, packWithin } from '@ampwright/engine'
import { describe, expect, it } from 'vitest'
import { assessText, lookUps, textOf } from '../../../../tests/cars.ts'
import { arrangementEdits } from './edits.ts'
import { arrangingJson } from './json.ts'
import { type ArrangingPlan, arrangingPlan } from './plan.ts'
import { arrangingView } from './view.ts'

const edited = (text: string, edits: readonly Edit[]): string => {
  const done = applyEdits(text, edits)
  if (!done.ok) throw new Error(formatIssue(done.problem))
  return done.text
}
function modelOf(text: string): Model {
  const c = readConversion(text, { lookUps })
  if (!isUsable(c)) throw new Error(c.issues.map(formatIssue).join('\n'))
  return c.model
}
const BADGER = textOf('badger'),
  plan = arrangingPlan(modelOf(BADGER)),
  answer: PackAnswer = packWithin(packSearch(plan.task, { seed: 1 }), 1)
const first = answer.arrangements[0] as PackArrangement

describe('arranging the battery of a car', () => {
  it('starts from the car without its battery, in its worst load case', () => {
    const { assessment } = assessText(
        edited(
          BADGER,
          ['fit.bodies.left-box', 'fit.bodies.right-box', 'fit.bodies.bed-box', 'high-voltage', 'pack.boxes'].map(path => ({
            path,
            now: null,
          })),
        ),
      ),
      worst = (axle: string): number =>
        Math.max(...[...assessment.figures].flatMap(([id, f]) => (id.startsWith(`load.${axle}@`) ? [f.value as number] : [])))
    expect(plan.task.front.mass).toBeCloseTo(worst('front'), 6)
    expect(plan.task.rear.mass).toBeCloseTo(worst('rear'), 6)
    expect(plan.task.series).toBe(12)
    expect(plan.task.strings).toEqual({ least: 1, most: 1 })
    expect(arrangingPlan(modelOf(BADGER), { strings: { least: 1, most: 2 } }).task.strings).toEqual({ least: 1, most: 2 })
  })
  it('looks only where batteries may stand, never in the cabin, and above the clearance wanted', () => {
    expect([...new Set(plan.rooms.map(r => r.space))].sort()).toEqual(['left-of-frame', 'right-of-frame', 'under-bed'])
    const cabin = modelOf(edited(BADGER, [{ path: 'fit.spaces.under-bed.kind', now: 'cabin' }]))
    expect(arrangingPlan(cabin).rooms.some(r => r.space === 'under-bed')).toBe(false)
    const high = modelOf(edited(BADGER, [{ path: 'fit.ground.clearance', now: '500 mm' }]))
    for (const { room } of arrangingPlan(high).rooms) expect(room.low[2]).toBeGreaterThanOrEqual(0.5)
  })
  it('names everything missing in one message', () => {
    const text = edited(BADGER, [
      { path: 'fit.packing.lies', now: null },
      { path: 'fit.packing.wall', now: null },
      { path: 'donor.wheelbase', now: null },
    ])
    expect(() => arrangingPlan(modelOf(text))).toThrow(
      /^The battery cannot be arranged yet\. Missing: .*fit\.packing\.lies.*fit\.packing\.wall.*donor\.wheelbase/,
    )
    expect(() => arrangingPlan(modelOf('schema: 1\n'))).toThrow(/fit\.spaces\.\*\.takes-batteries/)
  })
  it('says so where no module fits', () => {
    const text = edited(BADGER, [{ path: 'pack.module.width', now: '900 mm' }])
    expect(() => arrangingPlan(modelOf(text))).toThrow(/^No module fits/)
  })
  it('refuses modules so small that no search lays them out', () => {
    const text = edited(
      BADGER,
      ['length', 'width', 'height'].map(side => ({ path: `pack.module.${side}`, now: '20 mm' })),
    )
    expect(() => arrangingPlan(modelOf(text))).toThrow(
      /^Into [\w-]+ there would go some \d{4,} modules of 20 × 20 × 20 mm; up to 2000 are laid out\./,
    )
  })
  it('keeps the way of an arm to what cuts the power free, and names a handle whose way is not known', () => {
    const text = textOf('lapwing'),
      model = modelOf(text),
      car = arrangingPlan(model)
    expect(car.unplaced.filter(p => p.startsWith('fit.handles'))).toEqual([])
    // The plug from behind, over the boot: no room for a battery box reaches into its way.
    for (const { room } of car.rooms)
      if (room.high[0] > 2.6)
        expect(
          room.high[2] <= 0.58 + 1e-9 || room.low[2] >= 0.7 - 1e-9 || room.low[1] >= -0.205 - 1e-9 || room.high[1] <= -0.325 + 1e-9,
        ).toBe(true)
    const open = modelOf(edited(text, [{ path: 'fit.handles.service-plug.reached', now: null }]))
    expect(arrangingPlan(open).unplaced).toContain('fit.handles.service-plug')
  })
  it('becomes edits after which the boxes hold every module and stand as they were packed, clear of everything', () => {
    const text = edited(BADGER, arrangementEdits(modelOf(BADGER), plan, first)),
      { conversion, assessment } = assessText(text),
      { pack, fit } = conversion.model
    const count = (f: { readonly value?: number } | object): number => ('value' in f ? (f.value as number) : Number.NaN)
    expect(Object.values(pack.boxes).reduce((n, b) => n + count(b.modules), 0)).toBe(12)
    for (const box of Object.values(pack.boxes)) expect(box.overhead).toMatchObject({ origin: { how: 'assumed' } })
    expect(Object.values(fit.bodies).filter(b => b?.kind === 'battery box')).toHaveLength(first.boxes.length)
    const outcome = (rule: string): readonly string[] => [
      ...new Set(assessment.findings.filter(f => f.rule === rule && /box/.test(f.item ?? '')).map(f => f.outcome)),
    ]
    for (const rule of ['inside-its-space', 'parts-clear-of-each-other', 'clear-of-what-guards-people', 'box-behind-the-edge'])
      expect(
        outcome(rule).filter(o => o === 'failing' || o === 'marginal'),
        rule,
      ).toEqual([])
    expect(assessment.figures.get('ledger.kerb')?.value).toBeGreaterThan(1000)
  })
  it('keeps the name of a box in its space and what else is said of it, names new ones after the space and takes out the others', () => {
    const [one] = first.boxes
    if (!one) throw new Error('no box')
    const lone: PackArrangement = {
        ...first,
        strings: 2,
        boxes: [
          { ...one, space: 'under-bed' },
          { ...one, space: 'under-bed 2' },
        ],
      },
      twice: ArrangingPlan = {
        ...plan,
        rooms: [...plan.rooms, { ...(plan.rooms.find(r => r.name === 'under-bed') as (typeof plan.rooms)[number]), name: 'under-bed 2' }],
      }
    const turned = edited(BADGER, [{ path: 'fit.bodies.bed-box.turn', now: '5°' }]),
      { pack, fit } = modelOf(edited(turned, arrangementEdits(modelOf(turned), twice, lone)))
    expect(Object.keys(pack.boxes).sort()).toEqual(['bed', 'under-bed'])
    expect(pack.boxes['bed']?.price).toMatchObject({ value: 420 })
    expect(pack.boxes['under-bed']?.where).toMatchObject({ value: 'under floor' })
    expect(fit.bodies['bed-box']).toMatchObject({ turn: { gap: true }, lidSeal: { value: 'yes' } })
    expect(fit.bodies['under-bed-box']).toMatchObject({ space: { value: 'under-bed' }, box: { value: 'under-bed' } })
    expect(fit.bodies['left-box']).toBeUndefined()
    expect(pack.strings).toMatchObject({ value: 2 })
  })
  it('is told in words, overloaded axles by name', () => {
    const heavy = { ...first, rearMargin: -12.3, bestIn: [] },
      view = arrangingView(plan, { ...answer, arrangements: [first, heavy] }, 'metric')
    expect(view.arrangements[1]).toMatchObject({
      number: 2,
      overloaded: true,
      margin: expect.stringMatching(/^13.kg too much, rear$/) as string,
    })
    expect(view.arrangements[0]?.energy).toMatch(/kWh$/)
    expect(view.told.join(' ')).toContain(`never hold more than ${answer.bound}`)
    expect(arrangingView(plan, { ...answer, bound: Infinity, arrangements: [] }, 'metric').told).toHaveLength(1)
  })
  it('is told as JSON whose edits make it', () => {
    const json = JSON.parse(JSON.stringify(arrangingJson(modelOf(BADGER), plan, answer))) as {
      arrangements: { edits: Edit[]; boxes: { modules: object[] }[] }[]
    }
    expect(json.arrangements).toHaveLength(answer.arrangements.length)
    const one = json.arrangements[0]
    expect(one?.boxes.flatMap(b => b.modules)).toHaveLength(12)
    expect(edited(BADGER, one?.edits ?? [])).toBe(edited(BADGER, arrangementEdits(modelOf(BADGER), plan, first)))
  })
})

describe('arranging modules of two forms', () => {
  const OTTER = textOf('otter'),
    model = modelOf(OTTER),
    mixed = arrangingPlan(model),
    found = packWithin(packSearch(mixed.task, { seed: 1 }), 1)
  const one = found.arrangements.find(a => a.boxes.some(b => b.modules.some(m => m.other))) as PackArrangement

  it('keeps the cell groups of the string, and takes no more modules than there are', () => {
    expect(mixed.task).toMatchObject({ have: 22, mix: { groups: { main: 4, other: 8, string: 96 }, have: 4 } })
    expect(mixed.task.module.energy * 2).toBeCloseTo(mixed.task.mix?.other.energy as number, 6)
    expect(mixed.bareOther).toBe(24.8)
    for (const a of found.arrangements) {
      const { main, other } = a.inString as { main: number; other: number }
      expect(main * 4 + other * 8).toBe(96)
      expect(main).toBeLessThanOrEqual(22)
      expect(other).toBeLessThanOrEqual(4)
    }
  })
  it('writes how many of each form stand in each box and in each string, and takes away what no longer holds', () => {
    const text = edited(OTTER, arrangementEdits(model, mixed, one)),
      { conversion, assessment } = assessText(text),
      { boxes, modulesInSeries, otherModule } = conversion.model.pack
    const sum = (key: 'modules' | 'otherModules'): number =>
      Object.values(boxes).reduce((n, b) => n + (isGap(b[key]) ? 0 : b[key].value), 0)
    expect(modulesInSeries).toMatchObject({ value: one.inString?.main })
    expect(otherModule.inSeries).toMatchObject({ value: one.inString?.other })
    expect([sum('modules'), sum('otherModules')]).toEqual([one.inString?.main, one.inString?.other])
    expect(assessment.figures.get('pack.cells-in-series')?.value).toBe(96)
    // What it is taken to weigh on the scales is what the ledger says of it then.
    const boxed = [...assessment.figures].filter(([id]) => id.startsWith('ledger.box@')).reduce((n, [, f]) => n + (f.value as number), 0)
    expect(Math.abs(boxed - one.mass)).toBeLessThan(0.05 * one.boxes.length + 1e-6)
    const outcomes = assessment.findings.filter(f => /^(every-module-placed|enough-modules)$/.test(f.rule)).map(f => f.outcome)
    expect(outcomes).toEqual(['sound', 'sound', 'sound', 'sound'])
    // A tunnel that holds none of the other form any more says nothing of it.
    const bare: PackArrangement = {
      ...one,
      inString: { main: 24, other: 0 },
      boxes: [{ ...(one.boxes[0] as PackArrangement['boxes'][number]), space: 'tunnel', modules: [] }],
    }
    const emptied = modelOf(edited(OTTER, arrangementEdits(model, mixed, bare))).pack
    expect(emptied.boxes['tunnel']?.otherModules).toMatchObject({ gap: true })
    expect(emptied.otherModule.inSeries).toMatchObject({ value: 0 })
  })
  it('is told by form, in words and as JSON', () => {
    const view = arrangingView(mixed, found, 'metric'),
      text = [...view.arrangements.map(a => a.boxes.join()), ...view.told].join(' ')
    expect(view.arrangements.every(a => a.modules.includes('other'))).toBe(true)
    expect(text).toMatch(/\d other in /)
    expect(view.told.join(' ')).toContain('never hold more than 96 cell groups')
    expect(view.told.join(' ')).toContain('There are 22 modules and 4 of the other form to use.')
    const json = JSON.parse(JSON.stringify(arrangingJson(model, mixed, found))) as {
      counts: string
      arrangements: { inString: object; boxes: { modules: { other?: true }[] }[] }[]
    }
    expect(json.counts).toBe('cell groups')
    const [told] = json.arrangements,
      others = told?.boxes.flatMap(b => b.modules).filter(m => m.other)
    expect(told?.inString).toMatchObject({ other: others?.length })
  })
  it('asks whether the cells are the same, and never mixes others', () => {
    const without = (edits: readonly Edit[]) => () => arrangingPlan(modelOf(edited(OTTER, edits)))
    expect(without([{ path: 'pack.other-module.same-cells', now: null }])).toThrow(/pack\.other-module\.same-cells/)
    expect(without([{ path: 'pack.other-module.mass', now: null }])).toThrow(/pack\.other-module\.mass/)
    expect(without([{ path: 'pack.other-module.same-cells', now: 'no' }])).toThrow(/^The strings hold modules of other cells/)
    const kept = without([
      { path: 'pack.other-module.same-cells', now: 'no' },
      { path: 'pack.other-module.in-series', now: '0' },
    ])().task
    expect(kept.mix).toBeUndefined()
    expect(kept).toMatchObject({ series: 20, have: 22 })
  })
})
