import { applyEdits, type Edit } from '@ampwright/conversion'
import {
  Answers,
  type BoxBody,
  type BoxRoom,
  boxRoom,
  type Field,
  isGap,
  isGaps,
  MODULES_LIE,
  modulesAllOneWay,
  packSearch,
  packWithin,
  type RoomForTwo,
} from '@ampwright/engine'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { assessText, conversionOf, textOf } from './cars.ts'
import { runs } from './counts.ts'

const findings = (text: string, rule: string) => assessText(text).assessment.findings.filter(f => f.rule === rule)

describe('bringing parts in', () => {
  it('names what a tank box would strike from below, the worst of it', () => {
    const text = textOf('lapwing').replace(/(tank-box: .*way-in: )from above/, '$1from below'),
      found = findings(text, 'can-be-brought-in').find(f => f.item === 'tank-box')
    expect(found?.outcome).toBe('failing')
    expect(found?.slots['what']?.value).toBe('brake-line')
  })
  it('lets the motor in before the inverter that stands over it', () => {
    const row = assessText(textOf('lapwing'))
      .assessment.tables.get('way-in.ways')
      ?.rows.find(r => r.name === 'motor')
    expect(row?.cells['before']).toContain('inverter')
    expect(row?.cells['order']).toBe(1)
  })
  it('says who may lift what: by hand up to 25 kg each, by hoist beyond', () => {
    const of = (item: string) => findings(textOf('lapwing'), 'can-be-lifted').find(f => f.item === item)
    expect(of('charger')?.required?.limit.value).toBe(50)
    expect(of('front-box')?.required?.limit.value).toBe(300)
    const alone = textOf('lapwing').replace('lifting: { people: 2, hoist: 300 kg }', 'lifting: { people: 2 }')
    expect(findings(alone, 'can-be-lifted').find(f => f.item === 'front-box')?.outcome).toBe('failing')
  })
  it('asks nothing of a car in which no part says its way', () => {
    const text = textOf('wren').replaceAll(/, way-in: from \w+/g, '')
    expect(findings(text, 'can-be-brought-in').map(f => f.outcome)).toEqual(['does not apply'])
  })
})

describe('the finished car on the scales', () => {
  it('holds whole car and axles against the ledger, and names what nobody has weighed', () => {
    const found = findings(textOf('otter'), 'weighs-as-reckoned')
    expect(found.map(f => f.item)).toEqual([
      'stripped, whole car',
      'stripped, front axle',
      'stripped, rear axle',
      'whole car',
      'front axle',
      'rear axle',
    ])
    expect(found.every(f => f.outcome !== 'failing')).toBe(true)
    expect(found[0]?.slots['unsure']?.value).toMatch(/, in/)
  })
  it('is not asked for while the car is not on its wheels', () =>
    expect(findings(textOf('lapwing'), 'weighs-as-reckoned').map(f => f.outcome)).toEqual(['does not apply']))
})

describe('a car reckoned from the scales', () => {
  const edited = (text: string, edits: readonly Edit[]): string => {
    const made = applyEdits(text, edits)
    if (!made.ok) throw new Error(made.problem.what)
    return made.text
  }
  const value = (text: string, id: string): number => assessText(text).assessment.figures.get(id)?.value as number
  /** The ledger's word of today set as that of the day the car was weighed, as the remedy does. */
  const reckoned = (car: 'wren' | 'badger'): string => {
    const remedy = findings(textOf(car), 'reckoned-from-the-scales')[0]?.remedies[0]
    if (remedy?.do !== 'set') throw new Error('nothing is offered')
    return edited(
      textOf(car),
      remedy.sets.map(({ path, to }) => ({ path, now: `${to && 'value' in to ? to.value : ''} kg` })),
    )
  }
  it.each(['wren', 'badger'] as const)('weighs what the scales said, and is as sure as they are: %s', car => {
    const before = textOf(car),
      after = reckoned(car),
      scales = (of: 'front' | 'rear'): number => Number(before.match(new RegExp(`  weighed: .*${of}: "(\\d+)`))?.[1])
    expect(findings(before, 'reckoned-from-the-scales').map(f => f.outcome)).toEqual(['marginal'])
    expect(findings(after, 'reckoned-from-the-scales').map(f => f.outcome)).toEqual(['sound'])
    expect(value(after, 'ledger.kerb')).toBe(scales('front') + scales('rear'))
    expect(value(after, 'ledger.parts-kerb')).toBe(value(before, 'ledger.kerb'))
    expect(value(after, 'load.rear@driver') - value(before, 'load.rear@driver')).toBeCloseTo(
      scales('rear') - value(before, 'ledger.rear'),
      9,
    )
    // What was reckoned is still held against the scales, and as before.
    for (const f of findings(before, 'weighs-as-reckoned'))
      expect(findings(after, 'weighs-as-reckoned').find(o => o.item === f.item)?.found?.value).toBe(f.found?.value)
    const half = (text: string): number => assessText(text, { bands: true }).assessment.halves.get('ledger.kerb') as number
    expect(half(after)).toBeLessThan(half(before))
    expect(half(after)).toBeCloseTo(car === 'wren' ? Math.hypot(3, 3) : Math.hypot(5, 5), 6)
  })
  it('moves with what is put in afterwards, by its lever', () => {
    const after = reckoned('wren'),
      L = value(after, 'ledger.centre-x') / (value(after, 'ledger.rear') / value(after, 'ledger.kerb'))
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 200 }), fc.integer({ min: -500, max: 2500 }), (m, x) => {
        const text = edited(after, [{ path: 'donor.added.later', now: { mass: `${m} kg`, x: `${x} mm`, y: '0 mm', z: '500 mm' } }])
        // Five grams on an axle are no change, but how a number was written.
        expect(value(text, 'ledger.kerb')).toBeCloseTo(value(after, 'ledger.kerb') + m, 2)
        expect(value(text, 'ledger.rear') - value(after, 'ledger.rear')).toBeCloseTo((m * x) / 1000 / L, 2)
      }),
      { numRuns: runs(100) },
    )
  })
  it('shares each axle between its wheels as the scales did', () => {
    const otter = textOf('otter'),
      heavier = edited(otter, [{ path: 'donor.added.later', now: { mass: '80 kg', x: '100 mm', y: '0 mm', z: '500 mm' } }])
    expect(value(otter, 'side.front-left')).toBeCloseTo(427, 9)
    expect(value(otter, 'side.rear-right')).toBeCloseTo(402, 9)
    expect(value(heavier, 'side.front-left') / value(heavier, 'side.front-right')).toBeCloseTo(427 / 425, 12)
    expect(value(heavier, 'side.front-left') + value(heavier, 'side.front-right')).toBeCloseTo(value(heavier, 'ledger.front'), 9)
  })
  it('rests on the list where only one of the two is known', () => {
    const text = edited(textOf('otter'), [{ path: 'fit.weighed.reckoned-rear', now: null }])
    expect(findings(text, 'reckoned-from-the-scales').map(f => [f.outcome, f.says.slice(0, 20)])).toEqual([
      ['marginal', 'What the ledger said'],
    ])
    expect(value(text, 'ledger.kerb')).toBeCloseTo(1653.6, 1)
  })
})

describe('what is done to the body', () => {
  it('is listed part by part, what stays in the car left out', () => {
    const rows = assessText(textOf('lapwing')).assessment.tables.get('fixing.fixings')?.rows ?? []
    expect(rows.map(r => r.name)).not.toContain('booster')
    expect(rows.find(r => r.name === 'boot-box')?.cells['fixing']).toMatchObject({ value: 'new holes' })
  })
})

describe('where a part is fixed', () => {
  const points = (text: string): readonly string[] =>
    assessText(text)
      .assessment.tables.get('fixing-point.points')
      ?.rows.map(r => r.name) ?? []
  const behind = (text: string) => findings(text, 'nothing-behind-a-hole')
  const edited = (text: string, path: string, now: string | null): string => {
    const made = applyEdits(text, [{ path, now }])
    if (!made.ok) throw new Error(made.problem.what)
    return made.text
  }
  const LINE = 'fit.keep-outs.brake-line'
  it('is listed point by point, and holes are held against lines and batteries behind them', () => {
    expect(points(textOf('lapwing'))).toHaveLength(6)
    expect(behind(textOf('lapwing')).map(f => [f.item, f.outcome])).toEqual([['boot-box', 'sound']])
    const moved = edited(edited(textOf('lapwing'), `${LINE}.rear`, '2450 mm'), `${LINE}.left`, '-180 mm'),
      near = behind(edited(moved, `${LINE}.top`, '330 mm'))[0]
    expect(near?.found?.value).toBeCloseTo(Math.hypot(0.0025, 0.015), 9)
    expect(near?.outcome).toBe('failing')
    expect([near?.slots['point']?.value, near?.slots['to']?.value]).toEqual(['front-left', 'brake-line'])
  })
  it('asks for what is missing of a point, and goes on with the others', () => {
    const text = edited(textOf('lapwing'), 'fit.bodies.boot-box.points.rear-left.up', null)
    expect(points(text)).toHaveLength(5)
    expect(behind(text).map(f => f.outcome)).toEqual(['unanswered', 'sound'])
    expect(behind(text)[0]?.gaps.map(g => g.path)).toEqual(['fit.bodies.boot-box.points.rear-left.up'])
  })
  it('is never called clear of a line nobody has placed', () => {
    const text = edited(textOf('lapwing'), `${LINE}.top`, null)
    expect(behind(text).find(f => f.item === 'brake-line')).toMatchObject({ outcome: 'unanswered', gaps: [{ path: `${LINE}.top` }] })
  })
  it('says that no line is listed, whatever batteries are near', () => {
    const text = edited(textOf('lapwing'), LINE, null)
    expect(behind(text).find(f => f.outcome === 'unanswered')).toMatchObject({ gaps: [{ path: 'fit.keep-outs' }] })
  })
  it('is of no concern to lines where nothing is drilled, and unanswered where nobody says', () => {
    expect(behind(edited(textOf('lapwing'), 'fit.bodies.boot-box.fixing', 'existing points')).map(f => f.outcome)).toEqual([
      'does not apply',
    ])
    expect(behind(edited(textOf('lapwing'), 'fit.bodies.boot-box.fixing', null)).map(f => f.outcome)).toEqual(['unanswered'])
    expect(behind(textOf('wren')).map(f => f.outcome)).toEqual(['does not apply'])
  })
})

describe('sheet of the boxes', () => {
  it('weighs, piece by piece, a little more than the box: edges where two meet count twice', () => {
    const { figures } = assessText(textOf('lapwing')).assessment,
      box = figures.get('shell.sheet@front-box')?.value as number
    const pieces = ['floor and lid', 'long sides', 'ends'].reduce(
      (sum, p) => sum + 2 * (figures.get(`shell.piece@front-box, ${p}`)?.value as number),
      0,
    )
    expect(pieces).toBeGreaterThan(box)
    expect(pieces).toBeLessThan(1.05 * box)
  })
})

describe('room for the modules of a box', () => {
  const BOX = ['length', 'width', 'height'] as const,
    PACKING = ['busbars', 'plate', 'lid', 'gap', 'service-room'] as const
  const WAYS = ['upright', 'upright or on a long side', 'any way but on its head', 'any way'] as const
  const millimetres = (least: number, most: number) => fc.integer({ min: least, max: most }).map(n => `${n} mm`)
  const base = applyEdits(textOf('lapwing'), [{ path: 'fit.packing.service-face', now: 'top' }])
  it('is what the search for arrangements counts when all modules stand one way, whatever the box; and never more than the volume gives', () => {
    if (!base.ok) throw new Error(base.problem.what)
    fc.assert(
      fc.property(
        fc.record(Object.fromEntries(BOX.map(k => [k, millimetres(60, 1200)]))),
        fc.record(Object.fromEntries(PACKING.map(k => [k, millimetres(0, 60)]))),
        fc.constantFrom(...WAYS),
        fc.constantFrom('front', 'rear', 'left', 'right', 'top', null),
        (box, packing, lies, face) => {
          const made = applyEdits(base.text, [
            ...Object.entries(box).map(([k, now]) => ({ path: `fit.bodies.tank-box.${k}`, now })),
            ...Object.entries(packing).flatMap(([k, now]) =>
              face === null && k === 'service-room' ? [] : [{ path: `fit.packing.${k}`, now }],
            ),
            { path: 'fit.packing.lies', now: lies },
            { path: 'fit.packing.service-face', now: face },
          ])
          if (!made.ok) throw new Error(made.problem.what)
          const { model } = conversionOf(made.text),
            { packing: p, bodies } = model.fit,
            room = new Answers(model).ask(boxRoom),
            of = (f: Field): number => (isGap(f) ? 0 : f.value)
          if (isGaps(room)) throw new Error('the room is not worked out')
          const found = room.rooms['tank-box'] as BoxRoom,
            tank = bodies['tank-box'] as BoxBody,
            looks = face === 'rear' ? 'back' : face
          const counted = modulesAllOneWay(
            { low: [0, 0, 0], high: [of(tank.length), of(tank.width), of(tank.height)] },
            {
              size: [0.355, 0.152, 0.108],
              clearance: of(p.gap),
              down: MODULES_LIE[lies],
              ...(looks ? { service: { face: looks, strip: of(p.serviceRoom) } } : {}),
            },
            { wall: of(tank.wall), plate: of(p.plate), lid: of(p.lid), busbar: of(p.busbars), sheet: 0 },
          )
          expect(found.oneWay.value).toBe(counted)
          expect(found.oneWay.value).toBeLessThanOrEqual(found.most.value)
        },
      ),
      { numRuns: runs(500) },
    )
  })
  it('of two forms is never called enough where the search for arrangements knows that it is not', () => {
    // Beyond two thousand modules in one box the search refuses.
    const side = fc.integer({ min: 100, max: 400 })
    fc.assert(
      fc.property(
        fc.record(Object.fromEntries(BOX.map(k => [k, millimetres(300, 1200)]))),
        fc.record(Object.fromEntries(PACKING.map(k => [k, millimetres(0, 40)]))),
        fc.tuple(side, side, side),
        fc.constantFrom(...WAYS),
        fc.constantFrom('front', 'top', null),
        fc.integer({ min: 1, max: 6 }),
        (box, packing, sides, lies, face, others) => {
          const other = Object.fromEntries(BOX.map((k, i) => [k, `${sides[i]} mm`]))
          const made = applyEdits(textOf('lapwing'), [
            ...Object.entries(box).map(([k, now]) => ({ path: `fit.bodies.tank-box.${k}`, now })),
            ...Object.entries(packing).flatMap(([k, now]) =>
              face === null && k === 'service-room' ? [] : [{ path: `fit.packing.${k}`, now }],
            ),
            { path: 'fit.packing.lies', now: lies },
            ...(face === null ? [] : [{ path: 'fit.packing.service-face', now: face }]),
            { path: 'pack.other-module', now: { 'same-cells': 'yes', 'cells-in-series': '9', mass: '15 kg', ...other } },
            { path: 'pack.boxes.tank.other-modules', now: String(others) },
          ])
          if (!made.ok) throw new Error(made.problem.what)
          const { model } = conversionOf(made.text),
            { packing: p, bodies } = model.fit,
            room = new Answers(model).ask(boxRoom),
            of = (f: Field): number => (isGap(f) ? 0 : f.value)
          if (isGaps(room)) throw new Error('the room is not worked out')
          const found = room.rooms['tank-box'] as RoomForTwo,
            tank = bodies['tank-box'] as BoxBody,
            mains = found.beside.value
          expect(found.othersOneWay.value).toBeLessThanOrEqual(found.othersMost.value)
          if (others > found.othersOneWay.value || mains === 0) return
          expect(mains).toBeLessThanOrEqual(found.most.value)
          const module = {
            size: [0.355, 0.152, 0.108] as const,
            clearance: of(p.gap),
            down: MODULES_LIE[lies],
            ...(face ? { service: { face, strip: of(p.serviceRoom) } } : {}),
            mass: 1,
            energy: 1,
          }
          // A thousand groups in each module, one in each of the other form: only these very numbers make the string.
          const search = packSearch(
            {
              spaces: [{ name: 'box', kind: 'box', low: [0, 0, 0], high: [of(tank.length), of(tank.width), of(tank.height)] }],
              module,
              have: mains,
              mix: {
                other: { ...module, size: sides.map(s => s / 1000) as unknown as typeof module.size },
                groups: { main: 1000, other: 1, string: 1000 * mains + others },
                have: others,
              },
              box: { wall: of(tank.wall), plate: of(p.plate), lid: of(p.lid), busbar: of(p.busbars), sheet: 0 },
              series: 1,
              strings: { least: 1, most: 1 },
              splitGroups: false,
              wheelbase: 2,
              front: { mass: 0, limit: 1 },
              rear: { mass: 0, limit: 1 },
            },
            { seed: 1 },
          )
          expect(packWithin(search, 1).bound).toBe(1000 * mains + others)
        },
      ),
      { numRuns: runs(200) },
    )
  }, 600_000)
  it('lacks where more are stated than go in, and is left to a search between the two', () => {
    const outcome = (modules: string, width: string): string | undefined => {
      const made = applyEdits(textOf('lapwing'), [
        { path: 'pack.boxes.tank.modules', now: modules },
        { path: 'fit.bodies.tank-box.width', now: width },
      ])
      if (!made.ok) throw new Error(made.problem.what)
      return findings(made.text, 'modules-fit-their-box').find(f => f.item === 'tank-box')?.outcome
    }
    expect([outcome('6', '500 mm'), outcome('6', '480 mm'), outcome('7', '500 mm')]).toEqual(['sound', 'marginal', 'failing'])
  })
})
