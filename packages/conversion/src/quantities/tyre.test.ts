import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { readTyre, type TyreMarking } from './tyre.ts'
import { loadOf, speedOf } from './tyre-service.ts'

function tyre(text: string): TyreMarking {
  const read = readTyre(text)
  if (!read.ok) throw new Error(`${text}: ${read.problem.why}`)
  return read.tyre
}
function problem(text: string) {
  const read = readTyre(text)
  if (read.ok) throw new Error(`${text} was read`)
  return read.problem
}

describe('a tyre marking', () => {
  it('gives every part of a metric size', () => {
    expect(tyre('185/60 R14 82H')).toEqual({
      width: 0.185,
      aspect: 0.6,
      rim: 0.3556,
      construction: 'radial',
      diameter: 0.5776,
      loadIndex: 82,
      loadKg: 475,
      speedSymbol: 'H',
      maxSpeed: 210 / 3.6,
      text: '185/60 R14 82H',
      marks: [],
    })
  })

  // Diameters recomputed by hand from d + 2·w·a, mm.
  it.each([
    ['145/80R13', 562.2],
    ['165/65R15', 595.5],
    ['175/70R14', 600.6],
    ['195/65R15', 634.5],
    ['205/55R16', 631.9],
    ['215/50R17', 646.8],
    ['235/45R18', 668.7],
    ['190/55 R340', 549],
    ['225/75 R17.5', 782],
    ['31x10.50 R15', 787.4],
    ['165 R13', 600.8],
  ])('%s is %f mm across', (text, diameter) => expect(tyre(text).diameter * 1000).toBeCloseTo(diameter, 9))

  it('is read as people and sidewalls write it', () => {
    for (const text of ['185/60R14', '185/60 R14', '185/60 R 14', ' 185 / 60 r14 ', '185/60R14'])
      expect(tyre(text)).toMatchObject({ width: 0.185, aspect: 0.6, rim: 0.3556 })
    for (const text of ['31x10.50 R15 109Q', '31×10.50R15 109Q', '31X10,50 R15 109Q', '31x10.5R15LT 109Q'])
      expect(tyre(text)).toMatchObject({ width: 0.2667, rim: 0.381, loadKg: 1030, maxSpeed: 160 / 3.6 })
    expect(tyre('205/55ZR16 91W')).toMatchObject({ loadKg: 615, maxSpeed: 75 })
    expect(tyre('245/40 ZR18 (97Y)')).toMatchObject({ loadKg: 730, speedSymbol: 'Y' })
    expect(tyre('P235/75R15 105S')).toMatchObject({ use: 'P', loadKg: 925 })
    expect(tyre('LT245/75R16 110/107S 6PR')).toMatchObject({ use: 'LT', loadKg: 1060, marks: [] })
    expect(tyre('195/70R15C 104/102R')).toMatchObject({ use: 'C', loadKg: 900 })
    expect(tyre('225/45 R17 94W XL')).toMatchObject({ reinforced: true })
    expect(tyre('185/60 R14 M+S 82 H')).toMatchObject({ loadIndex: 82, speedSymbol: 'H' })
    expect(tyre('165SR13')).toMatchObject({ speedSymbol: 'S', maxSpeed: 50 })
    expect(tyre('175/80-14')).toMatchObject({ construction: 'bias' })
  })

  it('says no speed where the marking says none', () => {
    for (const text of ['205/55ZR16', '185/70 VR14', '185/60 R14 82']) expect(tyre(text).maxSpeed).toBeUndefined()
    expect(tyre('185/60 R14').loadKg).toBeUndefined()
  })

  it('names what rests on memory', () => {
    expect(tyre('165 R13 82S').marks).toEqual([expect.stringMatching(/aspect 0\.82 .*from memory/)])
    expect(tyre('LT245/75R16 120/116L').marks).toEqual([
      expect.stringMatching(/1400 kg \(from memory\)/),
      expect.stringMatching(/120 km\/h \(from memory\)/),
    ])
  })

  it('derives the aspect of a flotation size so that rim and section give its diameter', () => {
    const { width, aspect, rim, diameter } = tyre('33x12.50 R15')
    expect(rim + 2 * width * aspect).toBeCloseTo(diameter, 12)
  })

  it.each([
    ['185/60/14', /can be read/, '185/60 R14'],
    ['5.60-15', /inch size/, undefined],
    ['7.50 R16', /inch size/, undefined],
    ['165-13', /cross-ply/, undefined],
    ['185/60 B14', /bias-belted/, undefined],
    ['183/60 R14', /no section width/, undefined],
    ['185/10 R14', /no aspect ratio/, undefined],
    ['185/60 R44', /no rim/, undefined],
    ['185/60 R14 182H', /load index 182/, undefined],
    ['185/60 R14 82G', /speed symbol G/, undefined],
    ['185/60 HR14 82V', /two speeds/, undefined],
    ['185/60 QR14', /not a marking/, undefined],
    ['185/60 R14 82H anything', /after the size/, undefined],
    ['15x10.50 R15', /larger than its rim/, undefined],
    ['', /can be read/, undefined],
    ['1'.repeat(100), /shorter than/, undefined],
  ])('%s is refused', (text, why, nearest) => {
    expect(problem(text).why).toMatch(why)
    expect(problem(text).nearest).toBe(nearest)
  })

  it('is read or refused, never thrown at, in bounded time', () => {
    const piece = fc.constantFrom(
      '185',
      '/',
      '60',
      ' ',
      'R',
      '14',
      'Z',
      '82',
      'H',
      'XL',
      'C',
      'LT',
      'P',
      '-',
      'x',
      '10.50',
      '(',
      ')',
      '31',
      'M+S',
    )
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string({ unit: 'binary' }),
          fc.array(piece, { maxLength: 14 }).map(p => p.join('')),
        ),
        text => {
          const read = readTyre(text)
          if (read.ok) expect(read.tyre.diameter).toBeGreaterThan(read.tyre.rim)
          else expect(read.problem.why).not.toBe('')
        },
      ),
      { numRuns: runs(20000) },
    )
  })
})

describe('load index and speed symbol', () => {
  // Rows of a printed table, kg.
  it.each([
    [70, 335],
    [75, 387],
    [79, 437],
    [82, 475],
    [88, 560],
    [91, 615],
    [95, 690],
    [100, 800],
    [105, 925],
    [109, 1030],
    [110, 1060],
  ])('index %i carries %i kg', (index, kg) => expect(loadOf(index)).toEqual({ value: kg }))

  it('rise by about the same part at each step, as a series of preferred numbers does: 80 steps are tenfold', () => {
    for (let index = 60; index <= 126; index++)
      expect(Math.abs((loadOf(index)?.value ?? 0) / (45 * 10 ** (index / 80)) - 1), `load index ${index}`).toBeLessThan(0.022)
    for (let index = 61; index <= 126; index++) expect(loadOf(index)?.value).toBeGreaterThan(loadOf(index - 1)?.value ?? 0)
    expect([59, 127].map(loadOf)).toEqual([undefined, undefined])
  })

  it.each([
    ['Q', 160],
    ['S', 180],
    ['T', 190],
    ['H', 210],
    ['V', 240],
    ['W', 270],
    ['Y', 300],
  ])('%s is %i km/h', (symbol, kmh) => expect(speedOf(symbol)?.value).toBeCloseTo(kmh / 3.6, 12))

  it('mark what is from memory', () => {
    expect([69, 111].map(index => loadOf(index)?.mark)).toEqual([
      expect.stringContaining('from memory'),
      expect.stringContaining('from memory'),
    ])
    expect(['J', 'K', 'L', 'M'].every(symbol => speedOf(symbol)?.mark?.includes('from memory'))).toBe(true)
    expect(speedOf('A')).toBeUndefined()
  })
})
