import type { Model } from '../../model/model.ts'
import type { Source } from '../../sources.ts'
import { type PlacedShape, places, shapesOf } from '../../studies/fit/places.ts'
import { type Ask, type Gaps, isGaps } from '../../studies/study.ts'
import { type Fact, type Gap, isGap } from '../../working/value.ts'
import { doesNotApply, type Judgement, rule } from '../rule.ts'

export const FITTING: Source = { work: 'practice', place: 'fitting parts into cars', mark: 'common practice' }
export const NO_SHAPE = (): readonly Judgement[] => doesNotApply('nothing that goes in has a shape yet', ['fit.bodies'])
export const anyShape = (m: Model): boolean => shapesOf(m).some(([, b]) => b.kind !== 'stays in the car')
export const pathOf = (shape: string): string => `fit.bodies.${shape}`
/** A name or a word that stands in the file or was told by a survey, as a sentence holds it. */
export const wordAt = (path: string, label: string, value: string): Fact<string> => ({ path, label, symbol: '', unit: '', value })
export const nameOfShape = (name: string): Fact<string> => wordAt(pathOf(name), 'shape', name)

/** Shapes whose place or size is not known yet, as findings that name what to measure. */
export function unplaced(m: Model, ask: Ask, says: string): readonly Judgement[] {
  const answer = ask(places)
  if (isGaps(answer)) return [{ about: ['fit.bodies'], says, missing: answer }]
  return shapesOf(m).flatMap(([item]): Judgement[] => {
    const s = answer.shapes[item] as PlacedShape | Gaps
    return isGaps(s) ? [{ item, about: [pathOf(item)], says, missing: s }] : []
  })
}

/** Where a shape stands, as paths a finding is about. */
export function placeOf(m: Model, name: string): readonly string[] {
  const body = m.fit.bodies[name]
  if (!body) return [pathOf(name)]
  const where = ((): string => {
    if (body.kind === 'motor' || body.kind === 'inverter') return isGap(body.unit) ? '' : `drive.units.${body.unit.value}.${body.kind}`
    if (body.kind === 'battery box') return isGap(body.box) ? '' : `pack.boxes.${body.box.value}`
    if (body.kind === 'part put in') return isGap(body.part) ? '' : `donor.added.${body.part.value}`
    if (body.kind === 'on-board charger') return 'charging.charger'
    if (body.kind === 'AC inlet') return 'charging.inlet'
    return ''
  })()
  return where === '' ? [pathOf(name)] : [pathOf(name), where]
}

export const heavyPartsHaveAShape = rule({
  id: 'heavy-parts-have-a-shape',
  title: 'Motors and battery boxes are drawn where they go',
  stage: 'fit',
  harm: 'S1',
  hazards: [],
  source: FITTING,
  judgements: m => {
    const bodies = shapesOf(m).map(([, b]) => b)
    const drawn = (kind: 'motor' | 'battery box', name: string): boolean =>
      bodies.some(b =>
        b.kind === 'motor' && kind === 'motor'
          ? valueOf(b.unit) === name
          : b.kind === 'battery box' && kind === 'battery box' && valueOf(b.box) === name,
      )
    const wanted = [
      ...Object.keys(m.drive.units).map(name => ({ kind: 'motor', name }) as const),
      ...Object.keys(m.pack.boxes).map(name => ({ kind: 'battery box', name }) as const),
    ]
    if (wanted.length === 0) return doesNotApply('no motor and no battery box is planned yet', ['fit.bodies'])
    const begun = anyShape(m)
    return wanted.map(({ kind, name }): Judgement => {
      const about = ['fit.bodies', kind === 'motor' ? `drive.units.${name}.motor` : `pack.boxes.${name}`],
        item = `${kind} ${name}`
      if (drawn(kind, name)) return { item, about, holds: true, rests: [], says: 'It has its shape.' }
      const says = 'It has no shape yet: nobody can say whether it goes in.'
      // Where fitting has not begun, everything waits; where it has, this one was left out.
      return begun
        ? {
            item,
            about,
            holds: false,
            rests: [],
            says,
            remedies: [{ do: 'act', says: 'Give it its shape: length, width and height, by tape.' }],
          }
        : { item, about, says, missing: shapeOf(item) }
    })
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'fit.bodies.motor', now: null }], item: 'motor main' },
})
const shapeOf = (item: string): Gap => ({
  gap: true,
  path: 'fit.bodies',
  label: `shape of ${item}`,
  until: 'before the part is bought',
  measure: { tool: 'tape, or a box of cardboard held in its place', accuracy: '± 5 mm', minutes: 20 },
})
const valueOf = (f: { readonly value: string } | Gap): string | undefined => ('value' in f ? f.value : undefined)
