import { CLEARANCE_HABITS } from '../../fitting/clearance-habits.ts'
import { airOverTop, freeBeforeFace } from '../../fitting/placed-body.ts'
import type { Model } from '../../model/model.ts'
import { type Figure, isGap, type Value } from '../../working/value.ts'
import { from, type Gaps, isGaps, type Maker, maybe, study } from '../study.ts'
import { faceWord } from './gaps.ts'
import { type PlacedShape, places, shapesOf } from './places.ts'

export type OverLid = {
  /** Free up to what stands over the lid, as far as a hand needs it; none where nothing does. */
  readonly part: { readonly other: string; readonly free: Figure } | undefined
  /** Air to the roof of the space it stands in; none where it stands in none that is measured. */
  readonly roof: Figure | undefined
}

const boxesOf = (m: Model) => shapesOf(m).flatMap(([name, b]) => (b.kind === 'battery box' ? [{ name, body: b }] : []))

/** How much room a hand has over the lid of each battery box that is opened in the car. */
export const lids = study({
  id: 'lid',
  stage: 'fit',
  asks: 'Can the lids of the battery boxes be lifted off in the car?',
  reads: (m, ask) => {
    const answer = ask(places)
    return {
      boxes: boxesOf(m)
        .filter(({ body }) => !isGap(body.lidOpens) && body.lidOpens.value === 'in the car')
        .map(({ name, body }) => {
          const top = isGap(body.space) ? undefined : m.fit.spaces[body.space.value]?.top
          return {
            name,
            is: maybe({ shape: from(answer, a => a.shapes[name] as PlacedShape | Gaps) }),
            roof: top === undefined || isGap(top) ? null : top,
          }
        }),
      shapes: shapesOf(m).map(([name]) => maybe({ shape: from(answer, a => a.shapes[name] as PlacedShape | Gaps) })),
    }
  },
  answer: ({ boxes, shapes }, make): { readonly over: Readonly<Record<string, OverLid | Gaps>> } => {
    const all = shapes.flatMap(s => (isGaps(s) ? [] : [s.shape as PlacedShape]))
    return {
      over: Object.fromEntries(
        boxes.map(({ name, is, roof }): [string, OverLid | Gaps] => {
          if (isGaps(is)) return [name, is]
          const shape = is.shape as PlacedShape
          return [
            name,
            {
              part: overhead(make, shape, all),
              roof:
                roof === null
                  ? undefined
                  : make.work(
                      'roof',
                      airOverTop,
                      { top: shape.ends.top, roof: roof as Value },
                      { item: name, label: `Over the lid of ${name}` },
                    ),
            },
          ]
        }),
      ),
    }
  },
})

/** What a hand needs over a lid. */
export const HAND = CLEARANCE_HABITS.overLid
const plain = (three: readonly Value[]): readonly number[] => three.map(v => v.value)

/** The part that leaves least over the lid, where one comes nearer than a hand needs. */
function overhead(make: Maker, shape: PlacedShape, all: readonly PlacedShape[]): OverLid['part'] {
  const free = (o: PlacedShape): number =>
    freeBeforeFace({
      face: 'top',
      wanted: HAND.value,
      place1: plain(shape.place),
      sides1: plain(shape.sides),
      turns1: plain(shape.turns),
      place2: plain(o.place),
      sides2: plain(o.sides),
      turns2: plain(o.turns),
    })
  const worst = all
    .filter(o => o !== shape)
    .map(other => ({ other, free: free(other) }))
    .reduce<{ other: PlacedShape; free: number } | undefined>((a, b) => (a === undefined || b.free < a.free ? b : a), undefined)
  if (!worst || worst.free >= HAND.value) return undefined
  const { other } = worst
  return {
    other: other.name,
    free: make.work(
      'part',
      freeBeforeFace,
      {
        face: faceWord('top'),
        wanted: HAND,
        place1: shape.place,
        sides1: shape.sides,
        turns1: shape.turns,
        place2: other.place,
        sides2: other.sides,
        turns2: other.turns,
      },
      { item: shape.name, label: `Over the lid of ${shape.name}, up to ${other.name}` },
    ),
  }
}
