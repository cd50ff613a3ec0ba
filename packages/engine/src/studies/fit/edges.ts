import { overhang } from '../../vehicle/overhang.ts'
import type { Figure, Value } from '../../working/value.ts'
import { from, type Gaps, isGaps, maybe, study } from '../study.ts'
import { type PlacedShape, places, shapesOf } from './places.ts'

type Ends = { readonly front: Figure | Gaps; readonly rear: Figure | Gaps }

/** How far each battery box stands from the foremost and the rearmost point of the car. */
export const edges = study({
  id: 'edge',
  stage: 'fit',
  asks: 'How far from the ends of the car do the battery boxes stand?',
  reads: (m, ask) => {
    const answer = ask(places)
    return {
      boxes: shapesOf(m).flatMap(([name, b]) =>
        b.kind === 'battery box' ? [maybe({ shape: from(answer, a => a.shapes[name] as PlacedShape | Gaps) })] : [],
      ),
      front: maybe(m.fit.ends.front),
      rear: maybe(m.fit.ends.rear),
    }
  },
  answer: ({ boxes, front, rear }, make): { readonly boxes: Readonly<Record<string, Ends>> } => ({
    boxes: Object.fromEntries(
      boxes.flatMap((b): [string, Ends][] => {
        if (isGaps(b)) return []
        const { name, ends } = b.shape as PlacedShape
        const from = (which: 'front' | 'rear', end: Value, axle: Value): Figure =>
          make.work(which, overhang, { end, axle }, { item: name, label: `${name}, from the ${which} end of the car` })
        return [
          [
            name,
            {
              front: isGaps(front) ? front : from('front', ends.front, front as Value),
              rear: isGaps(rear) ? rear : from('rear', rear as Value, ends.rear),
            },
          ],
        ]
      }),
    ),
  }),
})
