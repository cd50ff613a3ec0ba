import { applyEdits, type Edit, readQuantity, spellQuantity } from '@ampwright/conversion'
import { Answers, cost, exchange, type Figure, findings, isGaps, type Kept, RULES, STUDIES, type Study } from '@ampwright/engine'
import { describe, expect, it } from 'vitest'
import { assessText, CARS, conversionOf, textOf } from './cars.ts'

function edited(text: string, changes: Readonly<Record<string, string | null>>): string {
  const done = applyEdits(
    text,
    Object.entries(changes).map(([path, now]): Edit => ({ path, now })),
  )
  if (!done.ok) throw new Error(`${done.problem.path}: ${done.problem.what}`)
  return done.text
}
const figuresOf = (text: string, study: Study<unknown>): ReadonlyMap<string, number> => {
  const kept = new Answers(conversionOf(text).model).of(study) as Kept
  return new Map(kept.figures.map((f: Figure) => [f.id, f.value]))
}
const gapsOf = (text: string): readonly string[] => {
  const answer = new Answers(conversionOf(text).model).ask(cost)
  return isGaps(answer) ? answer.gaps.map(g => g.path) : isGaps(answer.parts) ? answer.parts.gaps.map(g => g.path) : []
}

describe('what the parts cost', () => {
  it.each(CARS)('is for %s the sum of every price its file states, modules counted', car => {
    const text = textOf(car)
    const priced = [...text.matchAll(/(?:price: |[{,] (?!mass|x|z)[\w-]+: )(\d+) ± (\d+) €/g)].map(m => Number(m[1]))
    const module = Number(/^ {4}price: (\d+) ± \d+ €/m.exec(text.slice(text.indexOf('\npack:')))?.[1])
    const modules = [...text.slice(text.indexOf('\n  boxes:')).matchAll(/modules: (\d+)/g)].reduce((n, m) => n + Number(m[1]), 0)
    const expected = priced.reduce((a, b) => a + b, 0) + (modules - 1) * module
    expect(modules).toBeGreaterThan(1)
    expect(figuresOf(text, cost).get('cost.parts')).toBeCloseTo(expected, 6)
  })

  it('is not told while one price is missing: the gap is named, what is priced is summed apart', () => {
    const text = edited(textOf('lapwing'), { 'drive.units.main.motor.price': null, 'donor.added.bms.price': null })
    expect(gapsOf(text)).toEqual(['donor.added.bms.price', 'drive.units.main.motor.price'])
    const figures = figuresOf(text, cost)
    expect(figures.has('cost.parts')).toBe(false)
    expect((figuresOf(textOf('lapwing'), cost).get('cost.parts') ?? 0) - (figures.get('cost.priced') ?? 0)).toBeCloseTo(1500 + 700, 6)
    const rule = RULES.find(r => r.id === 'parts-budget')
    expect(rule && findings(rule, new Answers(conversionOf(text).model))).toMatchObject([{ outcome: 'unanswered' }])
  })

  it('counts the charger once, where it is among the parts put in', () => {
    const both = edited(textOf('lapwing'), { 'charging.charger.price': '450 €' })
    expect(figuresOf(both, cost).get('cost.parts')).toBeCloseTo(figuresOf(textOf('lapwing'), cost).get('cost.parts') ?? 0, 6)
  })

  it('takes the price of a part of the catalogue, marked as assumed, with its band', () => {
    const text = edited(textOf('lapwing'), { 'drive.units.main.motor.price': null, 'drive.units.main.motor.part': 'motor-pm-100kw@1' })
    const fact = (
      conversionOf(text).facts as readonly { path: string; value: number; half?: number; origin?: { how: string; note?: string } }[]
    ).find(f => f.path === 'drive.units.main.motor.price')
    expect(fact?.origin).toMatchObject({ how: 'assumed', note: 'part motor-pm-100kw@1' })
    expect(fact?.half).toBeGreaterThan(0)
    expect(gapsOf(text)).toEqual([])
  })

  it('widens with the prices: half-widths of single prices add as squares, those of one module by their number', () => {
    const { assessment } = assessText(textOf('wren'), { bands: true })
    // 102 cells at ± 8, then every other price of the file
    const others = [300, 150, 120, 100, 50, 80, 150, 80, 300, 120, 70, 90]
    expect(assessment.halves.get('cost.parts')).toBeCloseTo(Math.hypot(102 * 8, ...others), 6)
  })
})

const BOXES = ['front', 'tank', 'boot'] as const

/** The Lapwing with a pack grown by a factor: cells, modules and boxes alike. */
function grown(text: string, by: number): string {
  const c = conversionOf(text),
    value = (path: string): number =>
      (c.facts as readonly { path: string; value: number }[]).find(f => f.path === path)?.value ?? Number.NaN
  const times = (path: string, kind: 'mass' | 'charge'): [string, string] => [path, spellQuantity(value(path) * by, kind)]
  const changes = Object.fromEntries([
    times('pack.module.mass', 'mass'),
    times('pack.module.cell-capacity', 'charge'),
    ...BOXES.map(b => times(`pack.boxes.${b}.overhead`, 'mass')),
  ])
  for (const [path, now] of Object.entries(changes)) expect(readQuantity(now, path.endsWith('capacity') ? 'charge' : 'mass').ok).toBe(true)
  return edited(text, changes)
}

describe('what range costs', () => {
  const text = textOf('lapwing'),
    now = figuresOf(text, exchange)
  const at = (figures: ReadonlyMap<string, number>, id: string): number => {
    const value = figures.get(id)
    if (value === undefined) throw new Error(`no figure ${id} among ${[...figures.keys()].join(', ')}`)
    return value
  }
  const pack = 16 * 11.9 + 16 + 16 + 12

  it('is the pack as fitted, shared out over its range', () => {
    expect(at(now, 'exchange.pack')).toBeCloseTo(pack, 9)
    const range = (10_000 * pack) / at(now, 'exchange.mass-of-10-km@weekend')
    expect(at(now, 'exchange.range-of-person@weekend')).toBeCloseTo((75 / pack) * range, 6)
    expect(at(now, 'exchange.price-of-10-km@weekend')).toBeCloseTo(((16 * 380 + 320 + 320 + 280) * 10_000) / range, 6)
    expect(at(now, 'exchange.range-of-100-eur@weekend') * at(now, 'exchange.price-of-10-km@weekend')).toBeCloseTo(100 * 10_000, 6)
  })

  it('foretells a larger pack: grown until the total rating is reached, the car stands on it and goes nearly as far as foretold', () => {
    // by the label of the modules: their bench records would speak for the old ones
    const label = edited(text, { 'pack.salvage': null }),
      before = figuresOf(label, exchange)
    const allowed = at(before, 'exchange.allowed@weekend two-up, total'),
      range = (10_000 * pack) / at(before, 'exchange.mass-of-10-km@weekend')
    const by = allowed / range
    expect(by).toBeGreaterThan(1.05)
    const after = figuresOf(grown(label, by), exchange),
      reached = (10_000 * pack * by) / at(after, 'exchange.mass-of-10-km@weekend')
    // no room is left: what the total allows is what it then does
    expect(at(after, 'exchange.allowed@weekend two-up, total') / reached).toBeCloseTo(1, 6)
    // the proportion leaves out that the heavier car takes more energy
    expect(reached).toBeLessThan(allowed)
    expect(reached / allowed).toBeGreaterThan(0.97)
  })

  it('shares the pack on the axles by its moments', () => {
    const rear = ((6 * 11.9 + 16) * -0.175 + (6 * 11.9 + 16) * 2.12 + (4 * 11.9 + 12) * 2.62) / 2.31
    expect(at(now, 'exchange.pack-on@rear axle')).toBeCloseTo(rear, 9)
    expect(at(now, 'exchange.pack-on@front axle')).toBeCloseTo(pack - rear, 9)
  })

  it('names the goals that collide as pairs, and what each side would have to give', () => {
    const rule = RULES.find(r => r.id === 'goals-agree')
    if (!rule) throw new Error('no such rule')
    const found = new Map(
      findings(rule, new Answers(conversionOf(edited(text, { 'brief.goals.weekend.distance': '260 km' })).model)).map(f => [f.item, f]),
    )
    expect([...found.keys()]).toEqual([
      'weekend and two-up, total',
      'weekend and two-up, front axle',
      'weekend and two-up, rear axle',
      'weekend and budget',
    ])
    const total = found.get('weekend and two-up, total')
    expect(total?.outcome).toBe('failing')
    const [lacking, giveUp] = [total?.slots['lacking']?.value as number, total?.slots['giveUp']?.value as number]
    expect(giveUp).toBeCloseTo(260_000 - (total?.found?.value ?? 0), 6)
    expect(lacking / giveUp).toBeCloseTo(at(now, 'exchange.mass-of-10-km@weekend') / 10_000, 9)
    const budget = found.get('weekend and budget')
    expect(budget?.outcome).toBe('failing')
    expect((budget?.slots['lacking']?.value as number) / (budget?.slots['giveUp']?.value as number)).toBeCloseTo(
      at(now, 'exchange.price-of-10-km@weekend') / 10_000,
      9,
    )
  })

  it('names two goals that leave no ratio between them, and the speed to settle for', () => {
    const { assessment } = assessText(edited(text, { 'brief.goals.top-speed.speed': '160 km/h' }))
    const row = assessment.tables.get('exchange.pairs')?.rows.find(r => r.name.includes('ratio of main'))
    expect(row?.name).toMatch(/top-speed/)
    const cell = (key: string): number => (row?.cells[key] as Figure | undefined)?.value ?? Number.NaN
    expect(cell('tallest')).toBeGreaterThan(cell('shortest'))
    expect(cell('settle')).toBeCloseTo(((160 / 3.6) * cell('shortest')) / cell('tallest'), 9)
  })
})

describe('the table of goals', () => {
  it.each(CARS)('lists every goal of %s with its conditions, what came of it, and what else about it fails', car => {
    const { conversion, assessment } = assessText(textOf(car)),
      table = assessment.tables.get('brief.goals')
    expect(table?.rows.map(r => r.name)).toEqual(Object.keys(conversion.model.brief.goals))
    for (const { name, cells } of table?.rows ?? []) {
      const about = assessment.findings.filter(f => f.about.some(p => p === `brief.goals.${name}` || p.startsWith(`brief.goals.${name}.`))),
        own = about.find(f => f.item === name && f.rule === String(cells['kind']).replace(' ', '-'))
      expect(own, name).toBeDefined()
      expect([cells['outcome'], cells['found']], name).toEqual([own?.outcome, own?.found])
      for (const f of about) if (f !== own && f.outcome === 'failing') expect(cells['beside'], name).toContain(f.title)
      if (cells['kind'] !== 'charging') expect(cells['load'], `${car} ${name}`).toBeDefined()
    }
  })
  it('takes what a goal leaves out from the common conditions, and what it says from itself', () => {
    const rows = assessText(textOf('badger')).assessment.tables.get('brief.goals')?.rows
    const cell = (goal: string, key: string): unknown =>
      (rows?.find(r => r.name === goal)?.cells[key] as { value: unknown } | undefined)?.value
    expect([cell('yard-ramp', 'surface'), cell('top-speed', 'surface')]).toEqual(['gravel', 'dry'])
    expect([cell('top-speed', 'load'), cell('yard-ramp', 'load')]).toEqual(['driver', 'laden'])
  })
})

type Windows = { readonly units: Readonly<Record<string, { readonly empty?: boolean }>> }
const study = <A>(id: string): Study<A> => STUDIES.find(s => s.id === id) as Study<A>
const ratioWindow = study<Windows>('window'),
  acceleration = study('acceleration'),
  strongerDrive = study('stronger-drive')

describe('a drive for goals no ratio meets', () => {
  const both = edited(textOf('lapwing'), { 'brief.goals.sprint.within': '8 s', 'brief.goals.top-speed.speed': '160 km/h' })
  const figures = figuresOf(both, strongerDrive),
    item = 'main sprint and top-speed'
  it('is so much stronger that with that torque and power a ratio is left, and with less none', () => {
    const times = figures.get(`stronger-drive.times@${item}`) ?? Number.NaN
    const empty = (k: number): boolean | undefined => {
      const text = edited(both, {
        'drive.units.main.motor.peak-torque': `${250 * k} Nm`,
        'drive.units.main.motor.peak-power': `${100 * k} kW`,
      })
      const answer = new Answers(conversionOf(text).model).ask(ratioWindow)
      return isGaps(answer) ? undefined : answer.units['main']?.empty
    }
    expect(times).toBeGreaterThan(1.05)
    // A run is not pull alone: road load and grip make the proportion good to some per cent.
    expect(empty(times * 1.1)).toBe(false)
    expect(empty(1 + (times - 1) / 2)).toBe(true)
    expect(figures.get(`stronger-drive.money@${item}`)).toBeCloseTo((times - 1) * (1500 + price(both, 'inverter')), 6)
  })
  it('or settles for the time that the run takes in the shortest ratio allowed', () => {
    const high = figuresOf(both, ratioWindow).get('window.high@main') ?? Number.NaN,
      present = figuresOf(both, ratioWindow).get('window.low@main') ?? Number.NaN
    expect(high).toBeLessThan(present)
    const finalDrive = /final-drive: ([\d.]+)/.exec(both)?.[1]
    const gear = high / Number(finalDrive)
    const text = edited(both, { 'donor.gearbox.gears.fourth': String(Number(gear.toPrecision(12))) })
    expect(figuresOf(text, acceleration).get('acceleration.time@sprint')).toBeCloseTo(
      figures.get('stronger-drive.settle.time@main sprint') ?? 0,
      2,
    )
  })
})
const price = (text: string, what: string): number =>
  Number(new RegExp(`${what}:[\\s\\S]*?price: (\\d+)`).exec(text.slice(text.indexOf('drive:')))?.[1])
