import type { Model } from '../../model/model.ts'
import type { Source } from '../../sources.ts'
import { bareCells, pressing } from '../../studies/pack/pressing.ts'
import { type Ask, isGaps } from '../../studies/study.ts'
import { type Fact, type Field, isGap } from '../../working/value.ts'
import { doesNotApply, type Judgement, rule } from '../rule.ts'
import { limitOf, open, PRACTICE } from './answers.ts'

const FIXTURES: Source = { work: 'practice', place: 'planning pressures of cell fixtures', mark: 'common practice' }
const pressure = (name: string, label: string, value: number): Fact => limitOf(name, label, value, 'Pa', FIXTURES)
/** Pressure bare cells are held with, at 30 to 50 % charge. */
const BAND = {
  pouch: [
    pressure('pouch-least', 'pressure on pouch cells, at least', 30e3),
    pressure('pouch-most', 'pressure on pouch cells, at most', 70e3),
  ],
  prismatic: [
    pressure('prismatic-least', 'pressure on prismatic cells, at least', 50e3),
    pressure('prismatic-most', 'pressure on prismatic cells, at most', 100e3),
  ],
} as const
const FIXTURE = {
  do: 'set' as const,
  says: 'End plates, tie rods and pads for the force the maker asks for.',
  sets: [{ path: 'pack.compression', to: { word: 'fixture' } }],
}

/** How hard the fixture presses, against what the maker of the cell asks for, or what such cells are planned with. */
function pressed(m: Model, ask: Ask): readonly Judgement[] {
  const { cellShape, pressureLeast, pressureMost } = m.pack.module,
    about = ['pack.pressing-force', 'pack.module.cell-shape']
  if (isGap(cellShape)) return [open(about, cellShape, 'force')]
  if (cellShape.value === 'cylindrical') return doesNotApply('round cells are held, not pressed', about).map(j => ({ ...j, item: 'force' }))
  const p = ask(pressing)
  if (isGaps(p)) return [open(about, p, 'force')]
  if (!p.pressure) return []
  const [least, most] = BAND[cellShape.value]
  const asked = (own: Field, planned: Fact): Fact => (isGap(own) ? planned : own)
  return [
    {
      item: 'force',
      about,
      found: p.pressure,
      side: 'at least',
      limit: asked(pressureLeast, least),
      says: 'The fixture presses the cells with {found}; they need {limit}.',
      remedies: [{ do: 'act', says: 'Tighten the tie rods, or take stiffer pads, to the force the maker asks for.' }],
    },
    {
      item: 'not too much',
      about,
      found: p.pressure,
      side: 'at most',
      limit: asked(pressureMost, most),
      says: 'The fixture presses the cells with {found}; they stand {limit}, and they still grow as they age.',
      remedies: [{ do: 'act', says: 'Loosen the tie rods, and put softer pads between the cells.' }],
    },
  ]
}

export const cellsPressed = rule({
  id: 'cells-pressed',
  title: 'Pouch and prismatic cells are pressed as their maker asks',
  stage: 'pack',
  harm: 'S2',
  hazards: ['A10'],
  source: PRACTICE,
  judgements: (m, ask) => {
    const { compression, module } = m.pack,
      { cellShape, cellsInSeries: series } = module,
      about = ['pack.compression', 'pack.module.cell-shape', 'pack.module.cells-in-series']
    if (!isGap(cellShape) && cellShape.value === 'cylindrical') return doesNotApply('round cells are held, not pressed', about)
    if (isGap(compression)) return [open(about, compression)]
    if (compression.value === 'none')
      return [
        {
          about,
          holds: false,
          rests: [compression],
          says: 'Nothing presses the cells. They swell and crack the box.',
          remedies: [FIXTURE],
        },
      ]
    if (isGap(series)) return [open(about, series)]
    // One cell after the other has no housing of its own: only a module that comes as one piece does.
    if (series.value <= 1 && compression.value === 'module housing')
      return [
        {
          about,
          holds: false,
          rests: [compression, series],
          says: 'What presses the cells: {by}. A module of one cell in series is a bare cell and has none.',
          slots: { by: compression },
          remedies: [FIXTURE],
        },
      ]
    const held: Judgement = {
      about,
      holds: true,
      rests: [compression, series],
      says: 'What presses the cells: {by}. Without it they swell and crack the box.',
      slots: { by: compression },
    }
    return bareCells(m) ? [held, ...pressed(m, ask)] : [held]
  },
  spoil: { sample: 'wren', edits: [{ path: 'pack.compression', now: 'module housing' }] },
})
