import { applyEdits } from '@ampwright/conversion'
import { Answers, findings, RULES, STUDIES } from '@ampwright/engine'
import { describe, expect, it } from 'vitest'
import { figuresOf, outcomes, value } from './asked.ts'
import { assessText, conversionOf, textOf } from './cars.ts'

describe('rules of the pack', () => {
  it('leave salvaged modules open while readings are missing, and say nothing of new ones', () => {
    expect(outcomes('lapwing', {}, 'salvaged-modules-recorded')).toEqual(['unanswered'])
    expect(outcomes('badger', {}, 'salvaged-modules-recorded')).toEqual(['sound'])
    expect(outcomes('wren', {}, 'salvaged-modules-recorded')).toEqual(['does not apply'])
  })
  it('never call a limit sound that was only assumed: a class part has no cell limits', () => {
    const text = 'schema: 1\npack:\n  module: { chemistry: NMC, cells-in-series: 6 }\n  modules-in-series: 16\n  strings: 1\n'
    for (const rule of RULES.filter(r => r.stage === 'pack' && r.harm === 'S3'))
      for (const f of findings(rule, new Answers(conversionOf(text).model))) expect(f.outcome, rule.id).not.toBe('sound')
  })
})

describe('a pack far larger than the trip', () => {
  // Cells that warm give more of their energy than a lap takes: the range must end all the same.
  it('goes about as much further', () => {
    const cold = Object.fromEntries(
      conversionOf(textOf('lapwing')).facts.flatMap(f =>
        /^trips\.named\.[^.]+\.pack-temperature$/.test(f.path) ? [[f.path, '0 °C']] : [],
      ),
    )
    const range = (capacity: string): number =>
      value(figuresOf('lapwing', 'range', { ...cold, 'pack.salvage': null, 'pack.module.cell-capacity': capacity }), 'range.range@mixed')
    const further = range('9000 Ah') / range('60 Ah')
    expect(further).toBeGreaterThan(120)
    expect(further).toBeLessThan(200)
  })
})

describe('salvaged modules that leak', () => {
  const modules = Array.from({ length: 12 }, (_, k) => `b${String(k + 1).padStart(2, '0')}`)
  /** Both readings of each module of the pickup, as cell voltage and fall of a cell in fourteen days. */
  const rested = (cell: number, fall: (name: string) => number): Readonly<Record<string, string>> =>
    Object.fromEntries(
      modules.flatMap(name => [
        [`pack.salvage.${name}.rest-voltage`, `${(8 * cell).toFixed(4)} V`],
        [`pack.salvage.${name}.rest-voltage-later`, `${(8 * (cell - fall(name))).toFixed(4)} V`],
      ]),
    )
  const rule = 'salvaged-module-holds-charge'
  it('passes a lot that rests', () => {
    expect(outcomes('badger', {}, rule)).toEqual(['sound', 'beside the others sound', 'by itself sound'])
  })
  it('rejects a lot of nickel modules that all lose a tenth in a month, though none stands out', () => {
    // Half charge of the class curve: 0.51 V over the charge, so 1.7 mV a day.
    expect(
      outcomes(
        'badger',
        rested(3.676, () => 0.024),
        rule,
      ),
    ).toEqual(['sound', 'beside the others sound', 'by itself failing'])
  })
  it('rejects one LFP module that falls faster than three times the others, even where the voltage tells little', () => {
    const lot = rested(3.3, name => (name === 'b05' ? 0.012 : 0.0005))
    expect(outcomes('badger', { 'pack.module.chemistry': 'LFP', ...lot }, rule)).toEqual([
      'sound',
      'beside the others failing',
      'by itself unanswered',
    ])
  })
  it('lets LFP pass only where its voltage tells its charge', () => {
    const low = rested(3.24, () => 0.0005)
    expect(outcomes('badger', { 'pack.module.chemistry': 'LFP', ...low }, rule)).toEqual([
      'sound',
      'beside the others sound',
      'by itself sound',
    ])
  })
  it('asks how LFP modules were levelled where their voltage cannot show it, and calls far apart what is far apart', () => {
    const matched = 'salvaged-voltage-matched',
      flat = { 'pack.module.chemistry': 'LFP', ...rested(3.3, () => 0.0005) }
    expect(outcomes('badger', {}, matched)).toEqual(['sound'])
    expect(outcomes('badger', flat, matched)).toEqual(['unanswered'])
    expect(outcomes('badger', { ...flat, 'pack.levelled': 'charged full one by one' }, matched)).toEqual(['sound'])
    expect(outcomes('badger', { ...flat, 'pack.levelled': 'not yet' }, matched)).toEqual(['failing'])
    expect(outcomes('badger', { ...flat, 'pack.salvage.b05.rest-voltage': '25.6 V' }, matched)).toEqual(['failing'])
    expect(outcomes('badger', { 'pack.module.chemistry': 'LFP', ...rested(3.24, () => 0.0005) }, matched)).toEqual(['sound'])
  })
  it('does not blame a lot whose falls no meter tells from nothing', () => {
    const still = rested(3.676, name => (name === 'b05' ? 0.000125 : 0))
    expect(outcomes('badger', still, rule)).toEqual(['sound', 'beside the others sound', 'by itself sound'])
  })
})

describe('the voltage of an empty pack', () => {
  /** The remedies offered to the cabin heater. */
  const offered = (edits: Readonly<Record<string, string>>) => {
    const done = applyEdits(
      textOf('lapwing'),
      Object.entries(edits).map(([path, now]) => ({ path, now })),
    )
    if (!done.ok) throw new Error(done.problem.what)
    const rule = RULES.find(r => r.id === 'voltage-when-empty')
    if (!rule) throw new RangeError('no rule')
    return findings(rule, new Answers(conversionOf(done.text).model)).find(f => f.item === 'cabin-heater')
  }
  it('may be raised within the reserve, never past a full cell', () => {
    const near = offered({ 'pack.users.cabin-heater.lowest': '300 V' })
    expect(near?.remedies.map(r => r.do)).toEqual(['set', 'act'])
    // Half the modules in two strings: 220 V would need 4.583 V from each cell.
    const far = offered({
      'pack.modules-in-series': '8',
      'pack.strings': '2',
      'pack.users.cabin-heater.lowest': '220 V',
    })
    expect(far?.outcome).toBe('failing')
    expect(far?.remedies.map(r => r.do)).toEqual(['act'])
  })
})

describe('what presses the cells', () => {
  const rule = 'cells-pressed'
  it('is asked of bare cells: how hard, and what kind of cell', () => {
    expect(outcomes('wren', {}, rule)).toEqual(['sound', 'force sound', 'not too much sound'])
    expect(outcomes('wren', { 'pack.module.cell-shape': '' }, rule)).toEqual(['sound', 'force unanswered'])
    expect(outcomes('wren', { 'pack.pressing-force': '' }, rule)).toEqual(['sound', 'force unanswered'])
    expect(outcomes('wren', { 'pack.module.cell-shape': 'cylindrical' }, rule)).toEqual(['does not apply'])
  })
  it('is neither too little nor too much, and the maker of the cell has the last word', () => {
    expect(outcomes('wren', { 'pack.pressing-force': '0.8 kN' }, rule)).toEqual(['sound', 'force failing', 'not too much sound'])
    expect(outcomes('wren', { 'pack.pressing-force': '6 kN' }, rule)).toEqual(['sound', 'force sound', 'not too much failing'])
    const asked = { 'pack.pressing-force': '6 kN', 'pack.module.pressure-most': '300 kPa' }
    expect(outcomes('wren', asked, rule)).toEqual(['sound', 'force sound', 'not too much sound'])
  })
  it('is no module housing where the module is one cell', () => {
    expect(outcomes('wren', { 'pack.compression': 'module housing' }, rule)).toEqual(['failing'])
    expect(outcomes('lapwing', {}, rule)).toEqual(['sound'])
    expect(outcomes('lapwing', { 'pack.compression': 'none' }, rule)).toEqual(['failing'])
  })
})

describe('a pack without a BMS', () => {
  it('has nobody who stops, cuts back, watches or counts', () => {
    const none = { 'pack.bms.fitted': 'no' }
    for (const rule of ['bms-fitted', 'bms-stops-charger', 'bms-limits-drive', 'bms-watches-every-group', 'no-charging-below-freezing'])
      expect(outcomes('badger', none, rule), rule).toEqual(['failing'])
    expect(outcomes('wren', none, 'charge-counted')).toEqual(['failing'])
    expect(outcomes('badger', { ...none, 'pack.module.cell-fuses': 'no' }, 'shorted-cell-caught')).toEqual(['failing'])
  })
  it('does not say what an unknown one does', () => {
    for (const rule of ['bms-stops-charger', 'bms-limits-drive', 'bms-watches-every-group'])
      expect(outcomes('badger', { 'pack.bms.fitted': '' }, rule), rule).toEqual(['unanswered'])
  })
})

describe('a shorted cell', () => {
  const rule = 'shorted-cell-caught'
  it('matters only where cells stand beside each other in a group', () => {
    expect(outcomes('wren', {}, rule)).toEqual(['does not apply'])
    expect(outcomes('lapwing', {}, rule)).toEqual(['sound'])
  })
  it('is cut off by a fuse of its own or noticed at rest; one of the two is enough, and neither is assumed', () => {
    expect(outcomes('lapwing', { 'pack.bms.watches-rest': '' }, rule)).toEqual(['unanswered'])
    expect(outcomes('lapwing', { 'pack.bms.watches-rest': 'no' }, rule)).toEqual(['unanswered'])
    expect(outcomes('lapwing', { 'pack.bms.watches-rest': 'no', 'pack.module.cell-fuses': 'yes' }, rule)).toEqual(['sound'])
    expect(outcomes('lapwing', { 'pack.bms.watches-rest': 'no', 'pack.module.cell-fuses': 'no' }, rule)).toEqual(['failing'])
  })
})

describe('what age does to resistance', () => {
  const cell = (edits: Readonly<Record<string, string | null>>): number => value(figuresOf('otter', 'pack', edits), 'pack.cell-resistance')
  it('follows the health of the cells where only the class is known', () => {
    expect(cell({ 'pack.module.health': '60 %' }) / cell({ 'pack.module.health': '91 %' })).toBeCloseTo(
      (1 + 1.4 * 0.37) / (1 + 1.4 * 0.06),
      9,
    )
  })
  it('leaves alone what was measured on these very cells', () => {
    const measured = { 'pack.module.drop-at-hour-rate': '50 mV' }
    expect(cell({ ...measured, 'pack.module.health': '60 %' })).toBe(cell({ ...measured, 'pack.module.health': '91 %' }))
  })
  it('leaves alone chemistries whose law does not tell resistance', () => {
    const iron = { 'pack.module.chemistry': 'LFP' }
    expect(cell({ ...iron, 'pack.module.health': '60 %' })).toBe(cell({ ...iron, 'pack.module.health': '91 %' }))
  })
  it('takes power away with the years, the more the colder and emptier', () => {
    const now = figuresOf('otter', 'power')
    for (const split of ['by standing', 'half and half', 'by cycling']) {
      const places = [
        ['half charge, mild cells', 'mild'],
        ['at the reserve, coldest start', 'cold'],
      ] as const
      const left = places.map(([place, short]) => {
        const [five, ten] = ['5 years', '10 years'].map(years =>
          value(figuresOf('otter', 'life', { 'pack.life.years': years }), `life.then.power@${split}, ${place}`),
        ) as [number, number]
        const today = value(now, `power.power@10 s ${short}`)
        expect(five).toBeLessThan(today)
        expect(ten).toBeLessThan(five)
        return ten / today
      }) as [number, number]
      expect(left[1]).toBeLessThan(left[0])
    }
  })
  it('is the law itself for new cells', () => {
    const life = figuresOf('otter', 'life', { 'pack.module.health': '100 %' })
    const gained = value(life, 'life.standing.resistance') + value(life, 'life.cycling.resistance')
    expect(value(life, 'life.resistance@half and half')).toBeCloseTo(1 + gained, 9)
  })
  it('looks no year ahead of a pack that gives nothing', () => {
    const life = figuresOf('lapwing', 'life', { 'pack.salvage.m06.resistance': '2.99 Ω' })
    expect([...life.keys()].filter(id => id.startsWith('life.health'))).toEqual([])
  })
  it.each(['NCA', 'LTO'])('says that no law is known for %s, instead of nothing', chemistry => {
    const done = applyEdits(textOf('otter'), [{ path: 'pack.module.chemistry', now: chemistry }])
    const life = STUDIES.find(s => s.id === 'life')
    if (!done.ok || !life) throw new Error('no such study')
    const kept = new Answers(conversionOf(done.text).model).of(life)
    expect(kept?.figures).toEqual([])
    expect(kept?.missing.map(g => g.path)).toContain('pack.life')
  })
})

describe('a pack of titanate cells', () => {
  const done = applyEdits(textOf('wren'), [
    { path: 'pack.module.chemistry', now: 'LTO' },
    { path: 'pack.cell-highest', now: '2.7 V' },
    { path: 'pack.charge-to', now: '2.7 V' },
    { path: 'pack.cell-lowest', now: '1.5 V' },
  ])
  if (!done.ok) throw new Error(done.problem.what)
  const answers = new Answers(conversionOf(done.text).model)
  const kept = (id: string) => answers.of(STUDIES.find(s => s.id === id) as (typeof STUDIES)[number])
  const wanted = (id: string): readonly string[] => kept(id)?.missing.map(g => g.path) ?? []
  it('is not charged by the line that keeps graphite from plating: it asks for the table of its maker', () => {
    expect(wanted('acceptance')).toContain('pack.module.charge-table')
    expect(wanted('trip')).toContain('pack.module.charge-table')
    expect(kept('pack')?.figures.some(f => f.id === 'pack.charge-share')).toBe(false)
  })
  it('says how its energy in the cold is measured, and still knows its voltage and power', () => {
    const cold = kept('pack')?.missing.find(g => g.path === 'pack.module.cold-energy')
    expect(cold?.measure?.tool).toMatch(/module emptied/)
    expect(kept('pack')?.figures.some(f => f.id === 'pack.highest')).toBe(true)
    expect(kept('power')?.figures.some(f => f.id === 'power.power@10 s mild')).toBe(true)
  })
})

describe('a pack of single cells from the catalogue', () => {
  const edits = {
    'pack.module.part': 'cell-lfp-202ah@1',
    'pack.module.cells-in-series': '',
    'pack.module.cells-in-parallel': '',
  }
  it('knows that a cell is one cell: nothing of that is assumed', () => {
    expect(outcomes('wren', edits, 'module-alone-below-high-voltage')).toEqual(['sound'])
    expect(outcomes('wren', edits, 'bms-watches-every-group')).toEqual(['sound'])
    expect(outcomes('wren', edits, 'shorted-cell-caught')).toEqual(['does not apply'])
  })
  it('still assumes how many cells a class of modules has', () => {
    const modules = { ...edits, 'pack.module.part': 'module-355-6s2p-60ah@1' }
    expect(outcomes('wren', modules, 'module-alone-below-high-voltage')).toEqual(['unanswered'])
  })
})

describe('the main fuse', () => {
  it('is no larger than what the cells give, all strings together', () => {
    const rule = 'main-fuse-guards-cells'
    for (const car of ['lapwing', 'wren', 'badger', 'otter'] as const) expect(outcomes(car, {}, rule), car).toEqual(['sound'])
    expect(outcomes('lapwing', { 'pack.limits.fuse': '400 A' }, rule)).toEqual(['failing'])
    expect(outcomes('lapwing', { 'pack.limits.fuse': '400 A', 'pack.strings': '2', 'pack.modules-in-series': '8' }, rule)).toEqual([
      'sound',
    ])
  })
})

describe('a box in the boot', () => {
  const boot = (sealed: string | null) =>
    outcomes(
      'lapwing',
      { 'pack.boxes.boot.where': 'boot', ...(sealed ? { 'pack.boxes.boot.sealed': sealed } : {}) },
      'battery-outside-cabin',
    ).find(o => o.startsWith('boot'))
  it('is good only where it is sealed against the cabin and vented', () =>
    expect([boot(null), boot('yes'), boot('no')]).toEqual(['boot unanswered', 'boot sound', 'boot failing']))
})

describe('energy of a cold pack', () => {
  it('is less the faster it is drawn, at every temperature', () => {
    for (const car of ['lapwing', 'wren', 'badger', 'otter'] as const) {
      const f = figuresOf(car, 'energy')
      for (const at of [10, 0, -10, -20])
        expect(value(f, `energy.usable@one hour ${at} °C`), `${car} ${at}`).toBeLessThan(value(f, `energy.usable@three hours ${at} °C`))
    }
  })
})

describe('a pack of modules from the catalogue', () => {
  it('too high for its fuse is failing although the record is only assumed', () => {
    const edits = {
      'pack.module.part': 'module-355-6s2p-52ah@1',
      'pack.module.cells-in-series': null,
      'pack.module.cells-in-parallel': null,
      'pack.modules-in-series': '24',
    }
    const done = applyEdits(
      textOf('wren'),
      Object.entries(edits).map(([path, now]) => ({ path, now })),
    )
    if (!done.ok) throw new Error(done.problem.what)
    const found = assessText(done.text, { bands: true }).assessment.findings.find(f => f.rule === 'breaking-voltage' && f.item === 'fuse')
    expect(found).toMatchObject({ outcome: 'failing', assumed: expect.arrayContaining(['pack.module.cells-in-series']) })
  })
})

describe('a car left standing', () => {
  const rule = 'pack-lasts-standing'
  it('is asked for what leaves the parked pack, and for how long it is left', () => {
    for (const key of ['draw', 'longest'])
      expect(outcomes('lapwing', { [`pack.standing.${key}`]: '' }, rule)).toEqual([
        'as usually parked unanswered',
        'left on the reserve unanswered',
      ])
  })
  it('stands no longer than the reserve lasts when it comes home empty', () =>
    expect(outcomes('lapwing', { 'pack.standing.draw': '25 mA' }, rule)).toEqual([
      'as usually parked sound',
      'left on the reserve failing',
    ]))
  it('counts the leak of salvaged modules, where it was recorded, with what hangs on the pack', () => {
    const draw = (edits: Readonly<Record<string, string>> = {}) => value(figuresOf('badger', 'standing', edits), 'standing.draw')
    expect(draw()).toBeGreaterThan(0.01)
    expect(draw({ 'pack.salvage.b05.rest-voltage-later': '29.387 V' })).toBeGreaterThan(draw())
  })
})

describe('a pack about which the file says nothing of a BMS', () => {
  it('is unanswered by every rule on it, not passed over', () => {
    const nothing = { 'pack.bms': null, 'pack.limits': null }
    expect(outcomes('wren', nothing, 'bms-fitted')).toEqual(['unanswered'])
    expect(outcomes('wren', nothing, 'bms-stops-charger')).toEqual(['unanswered'])
    expect(outcomes('wren', nothing, 'bms-limits-drive')).toEqual(['unanswered'])
  })
  it('is judged by what the inverters draw where no discharge limit is set', () =>
    expect(outcomes('otter', { 'pack.limits.bms': '' }, 'pack-peak-current')).toEqual(['failing']))
})

describe('salvaged modules of which some are not measured yet', () => {
  const matched = 'salvaged-capacity-matched'
  it('are held against each other as far as they are recorded, and the lot stays open', () => {
    expect(outcomes('lapwing', {}, matched)).toEqual(['unanswered', 'of those recorded so far sound'])
    expect(outcomes('lapwing', { 'pack.salvage.m05.capacity': '90 Ah' }, matched)).toEqual([
      'unanswered',
      'of those recorded so far failing',
    ])
  })
  it('are named where they are weak, short of charge, leaking or badly insulated', () => {
    const bad = (rule: string, edits: Readonly<Record<string, string>>) =>
      expect(
        outcomes('lapwing', edits, rule).filter(o => o.endsWith('failing')),
        rule,
      ).toHaveLength(1)
    bad('salvaged-resistance-matched', { 'pack.salvage.m05.resistance': '4.4 mΩ' })
    bad('salvaged-cells-never-flat', { 'pack.salvage.m05.rest-voltage': '13.2 V' })
    bad('salvaged-module-insulated', { 'pack.salvage.m05.insulation': '2 MΩ' })
  })
  it('say nothing of a lot while only two are there', () => {
    const two = Object.fromEntries(Array.from({ length: 11 }, (_, k) => [`pack.salvage.m${String(k + 3).padStart(2, '0')}.capacity`, '']))
    expect(outcomes('lapwing', two, matched)).toEqual(['unanswered'])
  })
})
