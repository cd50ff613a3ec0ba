import { type CellTable, cellRun, curve, LAMINATE_REST, NCA_REST, pulseFit } from '@ampwright/engine'
import { describe, expect, it } from 'vitest'
import { column, columns } from '../cell-data.ts'
import { pulsesOf } from '../cell-pulses.ts'
import { proven } from '../proof.ts'

/** Published fits to the 5.8 A pulses at 25 °C: Ah removed, then Ω and s. Inputs of the published check, not targets. */
const ONE = [
  [0.012, 0.0383, 0.0172, 22],
  [0.157, 0.0349, 0.0171, 20.2],
  [0.302, 0.0333, 0.0213, 24.1],
  [0.592, 0.0324, 0.0313, 36.8],
  [0.882, 0.0321, 0.0378, 47.3],
  [1.172, 0.0318, 0.0356, 49.7],
  [1.462, 0.0305, 0.0167, 25.5],
  [1.752, 0.0312, 0.0209, 31.1],
  [2.042, 0.0325, 0.021, 31.4],
  [2.187, 0.0341, 0.018, 25.6],
  [2.332, 0.0383, 0.0188, 25.1],
  [2.477, 0.0503, 0.0186, 18.5],
]
const TWO = [
  [0.012, 0.0375, 0.005, 6.6, 0.0168, 45],
  [0.157, 0.0341, 0.0048, 6.4, 0.0161, 36.2],
  [0.302, 0.0324, 0.0045, 6, 0.0207, 38.5],
  [0.592, 0.0312, 0.0041, 5.6, 0.031, 49.4],
  [0.882, 0.0311, 0.0048, 7.6, 0.0387, 68.5],
  [1.172, 0.031, 0.0069, 10.3, 0.0501, 139.8],
  [1.462, 0.0294, 0.004, 5.1, 0.0174, 47.4],
  [1.752, 0.0302, 0.0056, 7.4, 0.0276, 90.4],
  [2.042, 0.0315, 0.005, 6.6, 0.0267, 77.9],
  [2.187, 0.0331, 0.0044, 5.7, 0.0195, 52.3],
  [2.332, 0.0367, 0.0045, 4.1, 0.0204, 45.5],
  [2.477, 0.046, 0.0079, 2.5, 0.0211, 41.2],
]
const table = (rows: readonly (readonly number[])[], rest: readonly (readonly [number, number])[]): CellTable => {
  const over = (j: number) =>
    curve(
      rows.map(r => r[0]!),
      rows.map(r => r[j]!),
    )
  return {
    openCircuit: curve(
      rest.map(p => p[0]),
      rest.map(p => p[1]),
    ),
    ohmic: over(1),
    branches: Array.from({ length: (rows[0]!.length - 2) / 2 }, (_, j) => ({ resistance: over(2 + 2 * j), time: over(3 + 2 * j) })),
  }
}
const rmsWithin = (model: Float64Array, measured: Float64Array, of: (k: number) => number): number => {
  let sum = 0,
    weight = 0
  for (let k = 0; k < model.length; k++) {
    sum += of(k) * (model[k]! - measured[k]!) ** 2
    weight += of(k)
  }
  return Math.sqrt(sum / weight)
}
const DOMAIN = 'battery',
  KOLLMEYER = 'Kollmeyer 2018, doi:10.17632/wykht8y7tg.1',
  WIGGINS = 'Wiggins et al. 2019, doi:10.5281/zenodo.2580327'
/** Notes the comparison and fails on a miss. */
const check = (what: string, expected: number, obtained: number, tolerance: number, unit: string, source = KOLLMEYER): void =>
  expect(
    proven({ domain: DOMAIN, check: what, source, mark: 'published', expected, obtained, tolerance, unit }),
    `${what}: expected ${expected} ± ${tolerance}, got ${obtained}`,
  ).toBe(true)

const pulses = columns('round18650-25C-pulse.csv'),
  cold = columns('round18650-0C-pulse.csv'),
  colder = columns('round18650-m10C-pulse.csv'),
  highway = columns('round18650-25C-highway.csv')
const laminate = columns('laminate33ah-25C-pulse.csv'),
  one = columns('laminate33ah-1C-discharge.csv'),
  three = columns('laminate33ah-3C-discharge.csv'),
  charged = columns('round18650-25C-1C-charge.csv')

describe.skipIf(!pulses || !cold || !colder || !highway)('the measured NCA cell', () => {
  it('was read right: charge, energy and currents of the files', () => {
    const last = (c: Float64Array): number => c[c.length - 1] as number
    check('charge out, pulse test at 25 °C', 2.7728, last(column(pulses!, 'removed_Ah')), 5e-5, 'Ah')
    check('charge out, pulse test at 0 °C', 2.4757, last(column(cold!, 'removed_Ah')), 5e-5, 'Ah')
    check('charge out, pulse test at −10 °C', 2.3303, last(column(colder!, 'removed_Ah')), 5e-5, 'Ah')
    const i = column(highway!, 'current_A'),
      v = column(highway!, 'voltage_V'),
      t = column(highway!, 'time_s')
    let energy = 0,
      charge = 0,
      square = 0
    for (let k = 0; k < highway!.rows; k++) {
      const step = k + 1 < highway!.rows ? t[k + 1]! - t[k]! : 1
      energy += (v[k]! * i[k]!) / 3600
      charge += i[k]! * step
      square += i[k]! ** 2 * step
    }
    const duration = last(t) + 1 - t[0]!
    check('energy out, highway cycles', 9.71, energy, 0.02, 'Wh')
    check('mean current, highway cycles', 1.28, charge / duration, 1e-3, 'A')
    check('rms current, highway cycles', 1.682, Math.sqrt(square / duration), 1e-3, 'A')
    check('lowest voltage, highway cycles', 2.549, Math.min(...v), 5e-4, 'V')
  })
  it('is followed over the highway cycles by the published table, with one branch and with two', () => {
    const q = column(highway!, 'removed_Ah'),
      v = column(highway!, 'voltage_V'),
      i = column(highway!, 'current_A')
    for (const [name, rows, rms, wattHours] of [
      ['one branch', ONE, 18.7, 9.78],
      ['two branches', TWO, 15.0, 9.75],
    ] as const) {
      const run = cellRun(table(rows, NCA_REST), i, q, 1)
      check(`voltage error on highway cycles, ${name}`, rms, 1000 * rmsWithin(run.voltages, v, k => (q[k]! <= 2.32 ? 1 : 0)), 1, 'mV')
      check(`energy of highway cycles, ${name}`, wattHours, run.energy / 3600, 0.01, 'Wh')
    }
  })
  it('is identified from its pulses: small residuals, and the model found so follows the highway cycles as well', () => {
    const found = pulsesOf(pulses!, 5.8).filter(p => p.removed < 2.4)
    expect(found.length).toBeGreaterThanOrEqual(11)
    const fits = found.map(p => ({ removed: p.removed, one: pulseFit(p, 1, 0.35), two: pulseFit(p, 2, 0.35) }))
    for (const f of fits) {
      check(`one-branch residual of the pulse at ${f.removed.toFixed(3)} Ah`, 2.25, 1000 * (f.one?.residual ?? Infinity), 1.35, 'mV')
      check(`two-branch residual of the pulse at ${f.removed.toFixed(3)} Ah`, 1.2, 1000 * (f.two?.residual ?? Infinity), 0.8, 'mV')
    }
    const own = fits.map(f => [f.removed, f.one!.ohmic, f.one!.branches[0]!.resistance, f.one!.branches[0]!.time])
    const q = column(highway!, 'removed_Ah'),
      run = cellRun(table(own, NCA_REST), column(highway!, 'current_A'), q, 1)
    const rms = 1000 * rmsWithin(run.voltages, column(highway!, 'voltage_V'), k => (q[k]! <= 2.32 ? 1 : 0))
    check('voltage error on highway cycles, identified here', 18.7, rms, 3, 'mV')
    check('energy of highway cycles against measured, identified here', 9.71, run.energy / 3600, 0.1, 'Wh')
  })
  it('is followed through a 1C charge: energy within 1.5 %, and too quick, for the circuit leaves out diffusion', () => {
    const rest = [[-0.3, 4.175 + 0.3 * ((4.175 - 4.1042) / 0.145)], ...NCA_REST] as readonly (readonly [number, number])[]
    const cell = table(ONE, rest)
    let q = 2.784,
      u = 0,
      t = 0,
      energy = 0,
      put = 0,
      full = 0
    const at = (c: { x: Float64Array; y: Float64Array }): number => {
      let i = 0
      while (i < c.x.length - 2 && q >= c.x[i + 1]!) i++
      return c.y[i]! + (c.y[i + 1]! - c.y[i]!) * Math.min(1, Math.max(0, (q - c.x[i]!) / (c.x[i + 1]! - c.x[i]!)))
    }
    for (let current = 2.9; current > 0.05 && t < 1e4; t++) {
      const r0 = at(cell.ohmic),
        r1 = at(cell.branches[0]!.resistance),
        a = Math.exp(-1 / at(cell.branches[0]!.time)),
        open = at(cell.openCircuit)
      const first = 4.2 - open - a * u
      current = Math.min(2.9, first / (r0 + (1 - a) * r1))
      if (current < 2.9 && full === 0) full = t
      u = a * u + (1 - a) * r1 * current
      energy += ((open + r0 * current + u) * current) / 3600
      put += current / 3600
      q -= current / 3600
    }
    check('1C charge: time to 4.2 V by the table model', 3021, full, 5, 's')
    check('1C charge: time to 50 mA by the table model', 4798, t, 15, 's')
    check('1C charge: charge put in by the table model', 2.8294, put, 0.001, 'Ah')
    check('1C charge: energy against measured', 10.838, energy, 0.015 * 10.838, 'Wh')
    const seconds = charged ? column(charged, 'time_s') : undefined
    proven({
      domain: DOMAIN,
      check: '1C charge: time to 50 mA against measured',
      source: KOLLMEYER,
      mark: 'published',
      expected: 6050,
      obtained: t,
      tolerance: 300,
      unit: 's',
      remark: 'the circuit leaves out diffusion, which keeps current flowing: it is a fifth too quick at the tail',
    })
    expect(t).toBeLessThan(6050)
    if (seconds) expect(seconds.length).toBe(123)
  })
})

describe.skipIf(!laminate || !one || !three)('the measured laminate cell', () => {
  const fits = (): readonly (readonly number[])[] => {
    const t = column(laminate!, 'time_s'),
      i = column(laminate!, 'current_A'),
      v = column(laminate!, 'voltage_V'),
      q = column(laminate!, 'removed_Ah'),
      out: number[][] = []
    for (let k = 1; k < laminate!.rows; k++) {
      if (i[k]! < 29 || i[k - 1]! > 1) continue
      let end = k,
        stop: number
      while (i[end]! > 29) end++
      for (stop = end; stop < laminate!.rows && Math.abs(i[stop]!) < 1 && t[stop]! - t[end - 1]! < 40; ) stop++
      const times = t.slice(k - 1, stop)
      times[0] = times[1]! - 0.5
      const fit = pulseFit({ times, currents: i.slice(k - 1, stop), voltages: v.slice(k - 1, stop) }, 1, 0.3)
      if (fit?.branches[0]) out.push([q[k - 1]!, fit.ohmic, fit.branches[0].resistance, fit.branches[0].time])
      expect(fit?.residual).toBeLessThan(1.5e-3)
    }
    return out
  }
  it('is identified from 30 A pulses; taken to long discharges the circuit gives too much, the more so the harder the load', () => {
    const cell = table(fits(), [...LAMINATE_REST, [30.56, 3.0]])
    for (const [name, data, ampHours, wattHours, limit, allowed] of [
      ['1C', one!, 30.34, 113.79, 0.02, 60],
      ['3C', three!, 28.61, 100.89, 0.055, 175],
    ] as const) {
      const t = column(data, 'time_s'),
        all = column(data, 'current_A'),
        v = column(data, 'voltage_V')
      let n = data.rows
      while (n > 0 && all[n - 1]! < 1) n--
      const steps = Float64Array.from({ length: n }, (_, k) => (k ? t[k]! - t[k - 1]! : t[0]!)),
        removed = new Float64Array(n)
      let q = 0,
        measured = 0
      for (let k = 0; k < n; k++) {
        removed[k] = q += (all[k]! * steps[k]!) / 3600
        measured += (v[k]! * all[k]! * steps[k]!) / 3600
      }
      check(`charge out, ${name} discharge`, ampHours, q, 0.006, 'Ah', WIGGINS)
      check(`energy out, ${name} discharge`, wattHours, measured, 0.01, 'Wh', WIGGINS)
      const run = cellRun(cell, all.slice(0, n), removed, steps),
        rms = 1000 * rmsWithin(run.voltages, v.slice(0, n), k => (removed[k]! < 27.5 ? steps[k]! : 0))
      const remark = 'pulses of 30 s hold no diffusion of minutes; the cell also warms, which the table leaves out'
      proven({
        domain: DOMAIN,
        check: `voltage error on a ${name} discharge, identified from 30 s pulses`,
        source: WIGGINS,
        mark: 'published',
        expected: 0,
        obtained: rms,
        tolerance: 20,
        unit: 'mV',
        remark,
      })
      proven({
        domain: DOMAIN,
        check: `energy of a ${name} discharge, identified from 30 s pulses`,
        source: WIGGINS,
        mark: 'published',
        expected: measured,
        obtained: run.energy / 3600,
        tolerance: 0.01 * measured,
        unit: 'Wh',
        remark,
      })
      expect(rms).toBeLessThan(allowed)
      expect(run.energy / 3600 / measured - 1).toBeGreaterThan(0)
      expect(run.energy / 3600 / measured - 1).toBeLessThan(limit)
    }
  })
  it('grows to 41.73 °C over a 3C discharge from 24.7 °C, mean of three faces', () => {
    const faces = ['temp_C', 'temp_tab_C', 'temp_low_C'].map(k => column(three!, k))
    const mean = Float64Array.from({ length: three!.rows }, (_, k) => faces.reduce((sum, f) => sum + f[k]!, 0) / 3)
    check('peak of the mean face temperature, 3C discharge', 41.73, Math.max(...mean), 0.01, '°C', WIGGINS)
    check('mean face temperature at the start, 3C discharge', 24.7, mean[0]!, 0.05, '°C', WIGGINS)
  })
})

describe('the lots of retired cells', () => {
  const lots = [
    ['used-lfp35-pulse5s.csv', 35, 56, 560, 29.7163, 1.7152, 26.0274, 3.032, 0.249, -0.438],
    ['used-nmc21-pulse5s.csv', 21, 52, 520, 20.581, 1.1123, 15.6764, 2.858, 0.456, -0.887],
  ] as const
  it.each(lots)(
    '%s: capacity, spread and 5 s resistance come out as published',
    (file, nominal, cells, rows, mean, spread, lowest, resistance, spreadR, correlation) => {
      const data = columns(file)
      if (!data) return
      expect(data.rows).toBe(rows)
      const half = Array.from({ length: data.rows }, (_, k) => k).filter(k => column(data, 'soc_pct')[k] === 50)
      const capacity = half.map(k => column(data, 'capacity_Ah')[k]!),
        r = half.map(k => (1000 * (column(data, 'd1v_V')[k]! - column(data, 'd1b_V')[k]!)) / nominal)
      const average = (x: readonly number[]): number => x.reduce((a, b) => a + b, 0) / x.length
      const deviation = (x: readonly number[]): number => Math.sqrt(x.reduce((a, b) => a + (b - average(x)) ** 2, 0) / (x.length - 1))
      const covariance = capacity.reduce((a, c, i) => a + (c - average(capacity)) * (r[i]! - average(r)), 0) / (capacity.length - 1)
      const source = 'PulseBat data, doi:10.1038/s41467-024-54454-0'
      expect(capacity).toHaveLength(cells)
      check(`${file}: mean capacity`, mean, average(capacity), 1e-4, 'Ah', source)
      check(`${file}: spread of capacity`, spread, deviation(capacity), 1e-4, 'Ah', source)
      check(`${file}: lowest capacity`, lowest, Math.min(...capacity), 1e-4, 'Ah', source)
      check(`${file}: mean 5 s resistance`, resistance, average(r), 1e-3, 'mΩ', source)
      check(`${file}: spread of 5 s resistance`, spreadR, deviation(r), 1e-3, 'mΩ', source)
      check(
        `${file}: correlation of resistance with capacity`,
        correlation,
        covariance / deviation(capacity) / deviation(r),
        1e-3,
        '1',
        source,
      )
    },
  )
})
