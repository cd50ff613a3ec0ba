import { HAND, lids, type OverLid } from '../../studies/fit/lids.ts'
import { shapesOf } from '../../studies/fit/places.ts'
import { isGaps } from '../../studies/study.ts'
import { isGap } from '../../working/value.ts'
import { doesNotApply, type Judgement, rule } from '../rule.ts'
import { FITTING, pathOf, placeOf, wordAt } from './shapes.ts'

export const lidsReached = rule({
  id: 'lids-reached',
  title: 'Lid, fuse and disconnect of each battery box are reached in the car, or the box comes out for it',
  stage: 'fit',
  harm: 'S1',
  hazards: [],
  source: FITTING,
  judgements: (m, ask) => {
    const boxes = shapesOf(m).flatMap(([name, b]) => (b.kind === 'battery box' ? [{ name, body: b }] : []))
    if (boxes.length === 0) return doesNotApply('no battery box has a shape yet', ['fit.bodies'])
    const found = ask(lids)
    return boxes.flatMap(({ name: item, body }): readonly Judgement[] => {
      const about = [`${pathOf(item)}.lid-opens`, ...placeOf(m, item)]
      if (isGap(body.lidOpens)) return [{ item, about, says: 'Where its lid is opened is not said yet.', missing: body.lidOpens }]
      if (body.lidOpens.value === 'once the box is out')
        return isGap(body.wayIn)
          ? [{ item, about, says: 'It comes out to be opened; which way is not said yet.', missing: body.wayIn }]
          : [
              {
                item,
                about,
                holds: true,
                rests: [body.lidOpens, body.wayIn],
                says: 'It is opened once it is out, the way it went in: {way}.',
                slots: { way: body.wayIn },
              },
            ]
      const over = isGaps(found) ? found : (found.over[item] as OverLid | undefined)
      if (over === undefined || isGaps(over))
        return [{ item, about, says: 'What is over its lid cannot be told yet.', missing: over ?? { gaps: [] } }]
      return overLid(item, about, over as OverLid)
    })
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'fit.spaces.tank-space.top', now: '570 mm' }], item: 'tank-box' },
})

const REMEDIES = [{ do: 'act', says: 'Put the box lower, move what is over it, or say that the box comes out to be opened.' }] as const
function overLid(item: string, about: readonly string[], { part, roof }: OverLid): readonly Judgement[] {
  const common = { about, side: 'at least' as const, limit: HAND, remedies: REMEDIES }
  const what = wordAt(pathOf(part?.other ?? item), 'over the lid', part?.other ?? '')
  return [
    ...(part
      ? [
          {
            ...common,
            item: `${item}, part over it`,
            found: part.free,
            says: 'Over its lid {found} is free up to {what}; a hand needs {limit}.',
            slots: { what },
          },
        ]
      : []),
    ...(roof
      ? [{ ...common, item, found: roof, says: 'Over its lid {found} is free up to the roof of its space; a hand needs {limit}.' }]
      : []),
    ...(part || roof ? [] : [{ item, about, holds: true, rests: [], says: 'Nothing is drawn over its lid.' } as const]),
  ]
}
