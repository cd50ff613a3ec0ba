import { pointOfPart, pointToPart, pointToRoom } from '../../fitting/fixing-points.ts'
import { type Figure, isGap, type Value } from '../../working/value.ts'
import { from, type Gaps, isGaps, type Maker, maybe, study } from '../study.ts'
import { type FreeRoom, keptFreeOf, readsOf } from './kept-free.ts'
import { type PlacedShape, places, shapesOf } from './places.ts'

/** A point a part is fixed at for which the body is worked on, and what a drill or a welding torch would come nearest to. */
export type HolesOf = {
  readonly shape: string
  /** The point that comes nearest to something; none where nothing else has a place. */
  readonly nearest: { readonly point: string; readonly to: string; readonly is: 'line' | 'shape'; readonly gap: Figure } | undefined
}

/** Whether the body is worked on at the points of a part. */
const WORKED: readonly string[] = ['new holes', 'cut out', 'welded on']

/** Where each part is fixed, point by point, and what lies behind the holes. */
export const fixingPoints = study({
  id: 'fixing-point',
  stage: 'fit',
  asks: 'Where is each part fixed, and what lies behind a hole?',
  reads: (m, ask) => {
    const placed = ask(places)
    return {
      parts: shapesOf(m).map(([name, b]) => ({
        name,
        fixing: isGap(b.fixing) ? null : b.fixing,
        points: Object.entries(b.points)
          .sort(([a], [c]) => (a < c ? -1 : 1))
          .map(([point, { back, across, up }]) => ({
            point,
            at: maybe({ shape: from(placed, p => p.shapes[name] as PlacedShape | Gaps), back, across, up }),
          })),
      })),
      lines: keptFreeOf(m)
        .filter(([, k]) => k.kind === 'brake or fuel line')
        .map(([name, k]) => ({ name, is: maybe(readsOf(k)) })),
      others: shapesOf(m)
        .filter(([, b]) => b.kind === 'battery box' || b.kind === 'stays in the car')
        .map(([name]) => ({ name, is: maybe({ shape: from(placed, p => p.shapes[name] as PlacedShape | Gaps) }) })),
    }
  },
  answer: ({ parts, lines, others }, make): { readonly holes: readonly HolesOf[] } => {
    const placed = parts.flatMap(({ name, fixing, points }) =>
      points.flatMap(({ point, at }) => {
        if (isGaps(at)) return []
        const { place, sides, turns } = at.shape as PlacedShape,
          item = `${name} ${point}`,
          label = `${name}, point ${point}`
        const { figures } = make.all(
          '',
          pointOfPart,
          { place, sides, turns, back: at.back as Value, across: at.across as Value, up: at.up as Value },
          { item, labels: { x: `${label}: behind the front axle`, y: `${label}: to the right`, z: `${label}: above the ground` } },
        )
        return [
          {
            name,
            point,
            item,
            fixing: fixing as Value<string> | null,
            onPart: { back: at.back as Value, across: at.across as Value, up: at.up as Value },
            figures,
          },
        ]
      }),
    )
    make.table('points', {
      label: 'Where each part is fixed',
      columns: [
        { key: 'part', label: 'part' },
        { key: 'fixing', label: 'fixed by' },
        { key: 'back', label: 'behind its front end', unit: 'm', shows: 'length' },
        { key: 'across', label: 'right of its left side', unit: 'm', shows: 'length' },
        { key: 'up', label: 'above its underside', unit: 'm', shows: 'length' },
        { key: 'x', label: 'behind the front axle', unit: 'm', shows: 'length' },
        { key: 'y', label: 'to the right', unit: 'm', shows: 'length' },
        { key: 'z', label: 'above the ground', unit: 'm', shows: 'length' },
      ],
      rows: placed.map(({ name, item, fixing, onPart, figures }) => ({
        name: item,
        cells: { part: name, fixing: fixing ?? 'not said yet', ...onPart, ...figures },
      })),
    })
    const near = behind(
      lines.flatMap(({ name, is }) => (isGaps(is) ? [] : [{ name, room: is as FreeRoom }])),
      others.flatMap(({ name, is }) => (isGaps(is) ? [] : [{ name, shape: is.shape as PlacedShape }])),
    )
    const drilled = [...new Set(placed.filter(p => p.fixing && WORKED.includes(p.fixing.value)).map(p => p.name))]
    return {
      holes: drilled.map(shape => ({
        shape,
        nearest: near(
          make,
          placed.filter(p => p.name === shape),
        ),
      })),
    }
  },
})

type Point = {
  readonly name: string
  readonly point: string
  readonly item: string
  readonly figures: Readonly<Record<'x' | 'y' | 'z', Figure>>
}
type Line = { readonly name: string; readonly room: FreeRoom }
type Other = { readonly name: string; readonly shape: PlacedShape }
const numbers = (three: readonly Value[]): readonly number[] => three.map(v => v.value)

/** What the points of one part come nearest to: a line, or a part other than itself. */
function behind(lines: readonly Line[], others: readonly Other[]) {
  return (make: Maker, points: readonly Point[]): HolesOf['nearest'] => {
    const all = points.flatMap(p => {
      const { x, y, z } = p.figures,
        at = { x: x.value, y: y.value, z: z.value }
      return [
        ...lines.map(line => ({
          p,
          to: line.name,
          line,
          gap: pointToRoom({ ...at, low: numbers(line.room.low), high: numbers(line.room.high) }),
        })),
        ...others
          .filter(o => o.name !== p.name)
          .map(other => ({
            p,
            to: other.name,
            other,
            gap: pointToPart({
              ...at,
              place: numbers(other.shape.place),
              sides: numbers(other.shape.sides),
              turns: numbers(other.shape.turns),
            }),
          })),
      ]
    })
    const best = all.reduce<(typeof all)[number] | undefined>((b, n) => (b && b.gap <= n.gap ? b : n), undefined)
    if (!best) return undefined
    const { p, to } = best,
      named = { item: p.name, label: `From point ${p.point} of ${p.name} to ${to}` }
    return 'line' in best
      ? {
          point: p.point,
          to,
          is: 'line',
          gap: make.work('behind', pointToRoom, { ...p.figures, low: best.line.room.low, high: best.line.room.high }, named),
        }
      : {
          point: p.point,
          to,
          is: 'shape',
          gap: make.work(
            'behind',
            pointToPart,
            { ...p.figures, place: best.other.shape.place, sides: best.other.shape.sides, turns: best.other.shape.turns },
            named,
          ),
        }
  }
}
