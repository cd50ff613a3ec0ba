import { applyEdits } from '@ampwright/conversion'
import { Answers, type Finding, findings, RULES, STUDIES, type Table } from '@ampwright/engine'
import { describe, expect, it } from 'vitest'
import { type Car, conversionOf, textOf } from './cars.ts'

/** Figures, tables and findings of a sample with some values changed. */
function changed(car: Car, edits: Readonly<Record<string, string | null>> = {}) {
  const done = applyEdits(
    textOf(car),
    Object.entries(edits).map(([path, now]) => ({ path, now })),
  )
  if (!done.ok) throw new Error(`${done.problem.path}: ${done.problem.what}`)
  const answers = new Answers(conversionOf(done.text).model)
  const of = (id: string) => answers.of(STUDIES.find(s => s.id === id.slice(0, id.indexOf('.'))) as (typeof STUDIES)[number])
  return {
    figure: (id: string): number => {
      const f = of(id)?.figures.find(x => x.id === id)
      if (!f) throw new RangeError(`no figure ${id}`)
      return f.value as number
    },
    table: (id: string): Table => of(id)?.tables.find(t => t.id === id) as Table,
    rule: (id: string, item?: string): Finding => {
      const all = findings(RULES.find(r => r.id === id) as (typeof RULES)[number], answers),
        f = all.find(x => x.item === item)
      if (!f) throw new RangeError(`no finding ${id} ${item}; there are ${all.map(x => x.item).join(', ')}`)
      return f
    },
  }
}

describe('what the BMS is set to', () => {
  it('holds pull, sprint, climb and trip back', () => {
    const as = changed('lapwing'),
      low = changed('lapwing', { 'pack.limits.bms': '90 A' })
    expect(low.figure('trip.peak-current@mixed')).toBeLessThan(91)
    expect(as.figure('trip.peak-current@mixed')).toBeGreaterThan(100)
    expect(low.figure('battery-pull.current@full hot')).toBeCloseTo(90, 9)
    expect(low.figure('acceleration.time@sprint')).toBeGreaterThan(2 * as.figure('acceleration.time@sprint'))
    expect(low.figure('climb.slope@motorway-climb')).toBeLessThan(0.5 * as.figure('climb.slope@motorway-climb'))
  })
  it('holds recovery and charging back', () => {
    const low = changed('lapwing', { 'pack.limits.bms-charge': '5 A' })
    expect(low.figure('trip.peak-charge-current@mixed')).toBeLessThanOrEqual(5 + 1e-9)
    expect(low.figure('charge.highest-current@overnight')).toBeLessThanOrEqual(5 + 1e-9)
    expect(changed('otter', { 'pack.limits.bms-charge': '40 A' }).figure('charge.highest-current@stop')).toBeLessThanOrEqual(40 + 1e-9)
  })
  it('takes nothing in the cold below its lowest temperature, and all above it', () => {
    expect(changed('lapwing', { 'pack.bms.lowest-charge-temperature': '15 °C' }).figure('trip.put-back@mixed')).toBe(0)
    const as = changed('lapwing').figure('trip.put-back@mixed')
    expect(changed('lapwing', { 'pack.bms.lowest-charge-temperature': '9 °C' }).figure('trip.put-back@mixed')).toBeCloseTo(as, -3)
  })
  it('holds nothing back where the file leaves it out or where the BMS does not act', () => {
    const cells = changed('lapwing').figure('pack.peak-current')
    const sag = (edits: Readonly<Record<string, string | null>>): number => changed('lapwing', edits).figure('sag.drawn')
    expect(sag({ 'pack.limits.bms': null })).toBe(cells)
    expect(sag({ 'pack.limits.bms': '90 A', 'pack.bms.limits-drive': 'no' })).toBe(cells)
    expect(sag({ 'pack.limits.bms': '90 A' })).toBe(90)
  })
  it('never takes more in than the cells do', () => {
    for (const limit of ['20 A', '60 A', '119 A', '400 A']) {
      const { figure } = changed('lapwing', { 'pack.limits.bms-charge': limit })
      expect(figure('power.into.current@cold')).toBeLessThanOrEqual(figure('acceptance.at-start') + 1e-9)
    }
  })
})

describe('fuse and contactor', () => {
  it('change no figure of the trip: they protect, and are judged', () => {
    const small = changed('lapwing', { 'pack.limits.fuse': '50 A', 'pack.limits.contactor': '50 A' })
    expect(small.figure('trip.consumption@mixed')).toBe(changed('lapwing').figure('trip.consumption@mixed'))
    expect(small.rule('pack-continuous-current', 'fuse').outcome).toBe('failing')
  })
  it('are judged against the current of a fast post', () => {
    const found = (edits: Readonly<Record<string, string | null>>): string =>
      changed('otter', { 'pack.limits.fuse': '60 A', ...edits }).rule('fuse-and-contactor-carry', 'fuse, charging at motorway-post').outcome
    expect(found({})).toBe('failing')
    expect(found({ 'pack.limits.bms-charge': '40 A' })).toBe('sound')
  })
  it('need the curve of the part only where its rating is passed', () => {
    const found = (edits: Readonly<Record<string, string | null>>): Finding =>
      changed('lapwing', { 'pack.limits.fuse-melts': null, ...edits }).rule('fuse-and-contactor-carry', 'fuse, at full pull')
    expect(found({}).outcome).toBe('unanswered')
    expect(found({}).gaps.map(g => g.path)).toContain('pack.limits.fuse-melts')
    expect(found({}).remedies.map(r => r.do)).toContain('measure')
    expect(found({ 'pack.limits.fuse': '400 A' }).outcome).toBe('sound')
    expect(found({ 'pack.limits.fuse-melts': '500 A' }).outcome).toBe('failing')
  })
  it('stand in the table of power limits with cells, BMS and voltage floor, which says what governs', () => {
    const governs = (edits: Readonly<Record<string, string | null>>, row: number): unknown =>
      changed('lapwing', edits).table('power.governs').rows[row]?.cells['governs']
    expect(governs({}, 0)).toBe('BMS')
    expect(governs({}, 3)).toBe('cells')
    expect(governs({ 'pack.limits.bms': '379 A' }, 0)).toBe('fuse')
    expect(governs({ 'pack.limits.contactor': '100 A' }, 3)).toBe('contactor')
  })
})

describe('a charging goal', () => {
  const part = (from: string, to: string) => ({
    'brief.goals.overnight.distance': null,
    'brief.goals.overnight.trip': null,
    'brief.goals.overnight.from': from,
    'brief.goals.overnight.to': to,
  })
  const judged = (edits: Readonly<Record<string, string | null>>): Finding => changed('lapwing', edits).rule('charging', 'overnight')

  it('never met says why, and costs nothing: cells too cold, and no heater', () => {
    const edits = { ...part('20 %', '90 %'), 'brief.goals.overnight.temperature': '-5 °C' },
      f = judged(edits)
    expect(f.outcome).toBe('failing')
    expect(f.found?.value).toBe(Number.POSITIVE_INFINITY)
    expect(f.says).toMatch(/no pack heater/)
    expect(() => changed('lapwing', edits).figure('charge.wall-energy@overnight')).toThrow(/no figure/)
    expect(
      judged({ ...edits, 'brief.goals.overnight.within': '14 h', 'pack.heater.power': '600 W', 'pack.heater.to': '10 °C' }).outcome,
    ).toBe('sound')
  })
  it('never met says why: the charger is set too low', () => {
    const low = { 'charging.charger.set-to': '300 V' }
    expect(judged(low)).toMatchObject({ outcome: 'failing', says: expect.stringMatching(/charger is set to/) })
    expect(judged({ ...low, ...part('20 %', '100 %') }).found?.value).toBe(Number.POSITIVE_INFINITY)
    expect(judged({ ...low, ...part('20 %', '80 %') }).found?.value).toBe(Number.POSITIVE_INFINITY)
  })
  it('says when the BMS is what takes the time', () =>
    expect(judged({ ...part('20 %', '90 %'), 'pack.limits.bms-charge': '5 A' })).toMatchObject({
      outcome: 'failing',
      says: expect.stringMatching(/BMS lets no more/),
    }))
  it('that starts above what it wants is not passed in silence', () =>
    expect(judged(part('95 %', '90 %'))).toMatchObject({ outcome: 'marginal', says: expect.stringMatching(/already is above/) }))
})

describe('a pack without a DC-DC in its list', () => {
  it('leaves its voltage unanswered, and names what to read off its label', () => {
    const without = changed('lapwing', { 'pack.users.dc-dc': null })
    for (const [rule, path] of [
      ['voltage-when-full', 'pack.users.dc-dc.highest'],
      ['voltage-when-empty', 'pack.users.dc-dc.lowest'],
    ] as const) {
      const f = without.rule(rule, 'dc-dc')
      expect(f.outcome).toBe('unanswered')
      expect(f.gaps.map(g => g.path)).toContain(path)
      expect(f.gaps[0]?.measure?.tool).toMatch(/label/)
    }
  })
  it('knows a DC-DC by whatever name it has there', () => {
    const renamed = changed('lapwing', {
      'pack.users.dc-dc': null,
      'pack.users.main-DC-DC.lowest': '200 V',
      'pack.users.main-DC-DC.highest': '430 V',
    })
    expect(renamed.rule('voltage-when-full', 'main-DC-DC').outcome).toBe('sound')
    expect(() => renamed.rule('voltage-when-full', 'dc-dc')).toThrow(/no finding/)
  })
})

describe('the voltage the charger is set to', () => {
  const outcome = (rule: string, edits: Readonly<Record<string, string | null>>): string => changed('lapwing', edits).rule(rule).outcome
  it('may not pass what charge-to says for each cell', () => {
    const low = { 'pack.charge-to': '4.15 V' }
    expect(outcome('charger-set-point', { ...low, 'charging.charger.set-to': '403.2 V' })).toBe('failing')
    expect(outcome('charger-set-point', { ...low, 'charging.charger.set-to': '398 V' })).toBe('sound')
    const remedy = changed('lapwing', { ...low, 'charging.charger.set-to': '403.2 V' }).rule('charger-set-point').remedies[0]
    expect(remedy).toMatchObject({ do: 'set', sets: [{ to: { value: 398 } }] })
    expect(outcome('charger-set-point', { 'pack.charge-to': null, 'charging.charger.set-to': '403.2 V' })).toBe('sound')
  })
  it('may not lie so low that the pack never gets full', () => {
    const at = (volts: string): string => outcome('charger-fills', { 'charging.charger.set-to': volts })
    expect(at('403 V')).toBe('sound')
    expect(at('395 V')).toBe('marginal')
    expect(at('380 V')).toBe('failing')
    expect(at('300 V')).toBe('failing')
    expect(outcome('charger-fills', { 'charging.charger.set-to': '384 V', 'pack.charge-to': '4 V' })).toBe('sound')
  })
})

describe('an outlet for hours', () => {
  const at = (edits: Readonly<Record<string, string | null>>): Finding => changed('lapwing', edits).rule('outlet-continuous', 'garage')
  const place = 'charging.places.garage'
  it('of 16 A does not stand a lead of 32 A', () => {
    const edits = { [`${place}.socket`]: 'industrial socket', [`${place}.cable`]: '32 A', [`${place}.set-to`]: null }
    expect(at(edits).outcome).toBe('failing')
    expect(at({ ...edits, [`${place}.set-to`]: '16 A' }).outcome).toBe('sound')
  })
  it('is judged by the charger where nobody knows what the wall box lets it draw', () => {
    expect(at({ [`${place}.set-to`]: null }).outcome).toBe('failing')
    const small = { [`${place}.set-to`]: null, 'charging.charger.power': '2.5 kW' }
    expect(at(small)).toMatchObject({ outcome: 'unanswered', gaps: [{ path: `${place}.set-to` }], remedies: [{ do: 'measure' }] })
    expect(at({ ...small, 'charging.charger.efficiency': '92 % (datasheet)' }).outcome).toBe('sound')
  })
  it('may carry four fifths of its circuit in the United States, and warns above', () => {
    const us = { 'brief.rules': 'us', [`${place}.current`]: '40 A', [`${place}.cable`]: '40 A' }
    expect(at({ ...us, [`${place}.set-to`]: '32 A' }).outcome).toBe('sound')
    expect(at({ ...us, [`${place}.set-to`]: '40 A' })).toMatchObject({ outcome: 'marginal', reason: expect.stringMatching(/from memory/) })
    expect(at({ ...us, [`${place}.set-to`]: '48 A' }).outcome).toBe('failing')
  })
  it('gives the pack no more than its wall box lets through', () =>
    expect(changed('lapwing', { [`${place}.set-to`]: '8 A' }).figure('outlet.power@garage')).toBeCloseTo(8 * 230, 9))
})

describe('recovery on a wet road', () => {
  it('is decided once the wet grip is measured: the worst driveline still holds', () => {
    const as = changed('lapwing').rule('recovery-grip', 'rear')
    expect(as.outcome).toBe('unanswered')
    expect(as.remedies.filter(r => r.do === 'measure')).toEqual([
      {
        do: 'measure',
        path: 'donor.grip.wet',
        says: expect.stringMatching(/^To know grip, wet: .*deceleration meter.* \(± 5 %, 30 min\)\.$/),
      },
    ])
    const measured = changed('lapwing', { 'donor.grip.wet': '0.5 ± 0.03 (measured, deceleration meter)' }).rule('recovery-grip', 'rear')
    expect(measured.outcome).toBe('sound')
    expect(measured.says).toMatch(/Snow .*ice/)
  })
  it('needs no centre height at the front, where moving load only helps', () => {
    const wet = changed('otter', { 'donor.grip.wet': '0.6 ± 0.03 (measured, deceleration meter)' })
    expect(wet.rule('recovery-grip', 'front').outcome).toBe('sound')
    const rear = wet.rule('recovery-grip', 'rear')
    expect(rear.outcome).toBe('unanswered')
    expect(rear.remedies.flatMap(r => (r.do === 'measure' ? [r.path] : []))).toEqual(['donor.centre-height'])
  })
  it('never needs more grip than at most', () => {
    for (const car of ['lapwing', 'wren', 'badger', 'otter'] as const)
      for (const axle of ['front', 'rear']) {
        const { figure } = changed(car)
        let needed: number | undefined
        try {
          needed = figure(`part-loads.recovery-grip@${axle}`)
        } catch {
          continue
        }
        expect(figure(`part-loads.recovery-grip-most@${axle}`)).toBeGreaterThanOrEqual(needed)
      }
  })
})
