import type { Source } from '../../sources.ts'
import { fixingPoints } from '../../studies/fit/fixing-points.ts'
import { shapesOf } from '../../studies/fit/places.ts'
import { keptFreeOf, readsOf } from '../../studies/fit/kept-free.ts'
import { gapsIn, isGaps } from '../../studies/study.ts'
import { type Gap, isGap } from '../../working/value.ts'
import { limitOf } from '../pack/answers.ts'
import { doesNotApply, type Judgement, rule } from '../rule.ts'
import { nameOfShape, pathOf, placeOf, wordAt } from './shapes.ts'

const DRILLING: Source = {
  work: 'practice',
  place: 'before a hole is drilled: look behind; the drill comes through by some centimetres, and sparks and heat go further',
  mark: 'common practice',
}
const BEHIND = limitOf('behind-a-hole', 'free behind a hole', 0.05, 'm', DRILLING, 'length')

const NO_LINE: Gap = { gap: true, path: 'fit.keep-outs', label: 'brake and fuel lines, each by its place', until: 'any time' }

export const nothingBehindHoles = rule({
  id: 'nothing-behind-a-hole',
  title: 'No line and no battery lies behind a hole, a cut or a weld',
  stage: 'fit',
  harm: 'S3',
  hazards: [],
  source: DRILLING,
  caution:
    'A brake or fuel line, or a battery, struck by a drill can kill. Look and feel behind the sheet, take out what can be taken out, set a stop on the drill; disconnect batteries before welding.',
  judgements: (m, ask) => {
    const placed = shapesOf(m).filter(([, b]) => Object.keys(b.points).length > 0)
    if (placed.length === 0) return doesNotApply('of no part is it said where its fixing points are', ['fit.bodies'])
    const found = ask(fixingPoints)
    if (isGaps(found)) return [{ about: ['fit.bodies'], says: 'What lies behind the holes cannot be told yet.', missing: found }]
    const holes = found.holes.flatMap(({ shape, nearest }): Judgement[] => {
      // Nothing that has a place to hold it against: lines without one are asked for below.
      if (!nearest) return []
      const { point, to, is, gap } = nearest
      return [
        {
          item: shape,
          about: [`${pathOf(shape)}.points`, ...(is === 'line' ? [`fit.keep-outs.${to}`] : placeOf(m, to))],
          found: gap,
          side: 'at least',
          limit: BEHIND,
          says: 'From point {point} of {shape} to {to} there is {found}; leave {limit}, or prove that nothing is struck.',
          slots: {
            point: wordAt(`${pathOf(shape)}.points`, 'point', point),
            shape: nameOfShape(shape),
            to: is === 'line' ? wordAt(`fit.keep-outs.${to}`, 'line', to) : nameOfShape(to),
          },
          remedies: [{ do: 'act', says: 'Put the point elsewhere, or take out what lies behind it for as long as the body is worked on.' }],
        },
      ]
    })
    const listed = keptFreeOf(m).filter(([, k]) => k.kind === 'brake or fuel line'),
      drilled = found.holes.length > 0
    // Every car has such lines: where none is listed, nobody has looked.
    const none: readonly Judgement[] =
      drilled && listed.length === 0
        ? [{ about: ['fit.keep-outs'], says: 'Whether a line lies behind a hole is not known: none is listed.', missing: NO_LINE }]
        : []
    const lines = (drilled ? listed : []).flatMap(([item, k]): Judgement[] => {
      const lost = gapsIn(readsOf(k), new WeakSet(), [])
      return lost.length > 0
        ? [
            {
              item,
              about: [`fit.keep-outs.${item}`],
              says: 'Where this line lies is not known yet: it may lie behind a hole.',
              missing: { gaps: lost },
            },
          ]
        : []
    })
    const open = placed.flatMap(([item, b]): Judgement[] => {
      const about = [`${pathOf(item)}.points`],
        lost = Object.values(b.points).flatMap(({ back, across, up }) => [back, across, up].filter(isGap))
      if (lost.length > 0) return [{ item, about, says: 'Where this is fixed is not known of every point.', missing: { gaps: lost } }]
      return isGap(b.fixing) ? [{ item, about, says: 'How this is fixed is not known yet.', missing: b.fixing }] : []
    })
    return holes.length + lines.length + open.length > 0
      ? [...holes, ...none, ...lines, ...open]
      : doesNotApply('at the points that are known nothing is drilled, cut or welded', ['fit.bodies'])
  },
  spoil: {
    sample: 'lapwing',
    edits: [
      { path: 'fit.keep-outs.brake-line.rear', now: '2450 mm' },
      { path: 'fit.keep-outs.brake-line.left', now: '-180 mm' },
      { path: 'fit.keep-outs.brake-line.top', now: '330 mm' },
    ],
    item: 'boot-box',
  },
})
