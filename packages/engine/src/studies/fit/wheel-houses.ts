import { leastGap, sweptBoxes, type WheelSide, wheelRoom, wheelToBody } from '../../fitting/wheel-to-body.ts'
import { type Figure, standard, type Value } from '../../working/value.ts'
import { from, type Gaps, isGaps, type Maker, maybe, study } from '../study.ts'
import { tyres } from '../donor/tyres.ts'
import { type PlacedShape, places, shapesOf } from './places.ts'

const DEFINITION = { work: 'definition', place: 'axes of the car' } as const
export const FRONT_AXLE = standard('front-axle', 'front axle behind itself', 'x_w', 0, 'm', DEFINITION)
const NOT_STEERED = standard('rear-wheel-lock', 'a rear wheel is not steered', 'δ', 0, 'rad', DEFINITION)
const NO_OFFSET = standard('rear-wheel-offset', 'a rear wheel has no steering axis', 'e', 0, 'm', DEFINITION)
const sideWord = (side: WheelSide): Value<WheelSide> => ({
  path: `standard.side.${side}`,
  label: 'side of the car',
  symbol: '',
  unit: '',
  value: side,
  origin: { how: 'standard', source: DEFINITION },
})

export type AtWheel = { readonly wheel: string; readonly shape: PlacedShape; readonly gap: Figure }
type Axle = 'front' | 'rear'

/** Air between each wheel, over full lock and travel, and what comes nearest to it. */
export const wheelHouses = study({
  id: 'wheel',
  stage: 'fit',
  asks: 'Do the wheels stay clear of what goes in, over full lock and travel?',
  reads: (m, ask) => {
    const { wheels: w } = m.fit,
      { donor } = m,
      loaded = from(ask(tyres), t => t.loaded)
    const common = { diameter: donor.tyre.diameter, width: donor.tyre.width, height: loaded }
    const answer = ask(places)
    return {
      shapes: shapesOf(m).flatMap(([name, b]) =>
        b.kind === 'stays in the car' ? [] : [maybe({ shape: from(answer, a => a.shapes[name] as PlacedShape | Gaps) })],
      ),
      front: maybe({
        ...common,
        axle: FRONT_AXLE,
        track: donor.trackFront,
        lock: w.lock,
        offset: w.steeringOffset,
        bump: w.frontBump,
        droop: w.frontDroop,
      }),
      rear: maybe({
        ...common,
        axle: donor.wheelbase,
        track: donor.trackRear,
        lock: NOT_STEERED,
        offset: NO_OFFSET,
        bump: w.rearBump,
        droop: w.rearDroop,
      }),
    }
  },
  answer: (known, make) => {
    const shapes = known.shapes.flatMap(s => (isGaps(s) ? [] : [s.shape as PlacedShape]))
    return {
      axles: { front: atAxle('front', known.front), rear: atAxle('rear', known.rear) } as Readonly<Record<Axle, readonly AtWheel[] | Gaps>>,
    }

    function atAxle(axle: Axle, wheel: typeof known.front): readonly AtWheel[] | Gaps {
      if (isGaps(wheel)) return wheel
      const { axle: _, ...room } = wheel as WheelValues
      make.all('room', wheelRoom, room, {
        item: axle,
        labels: {
          inner: `Innermost point of a ${axle} wheel, from the centre line`,
          fore: `A ${axle} wheel reaches ahead and behind its axle`,
          top: `Highest point of a ${axle} wheel`,
          bottom: `Lowest point of a ${axle} wheel, hanging`,
        },
      })
      return (['left', 'right'] as const).flatMap(side =>
        atWheel(make, `${axle} ${side}`, side, wheel as Readonly<Record<string, Value>>, shapes),
      )
    }
  },
})

function atWheel(
  make: Maker,
  name: string,
  side: WheelSide,
  wheel: Readonly<Record<string, Value>>,
  shapes: readonly PlacedShape[],
): readonly AtWheel[] {
  const inputs = (s: PlacedShape) => ({ ...(wheel as WheelValues), side: sideWord(side), place: s.place, sides: s.sides, turns: s.turns })
  const numbers = Object.fromEntries(Object.entries(wheel).map(([k, v]) => [k, v.value])) as { [K in keyof WheelValues]: number },
    slabs = sweptBoxes({ ...numbers, radius: numbers.diameter / 2 }, side)
  const nearest = shapes.reduce<{ s: PlacedShape; gap: number } | undefined>((best, s) => {
    const gap = leastGap(slabs, s.box, best?.gap ?? Infinity)
    return best === undefined || gap < best.gap ? { s, gap } : best
  }, undefined)
  if (!nearest) return []
  const gap = make.work('air', wheelToBody, inputs(nearest.s), { item: name, label: `Air between the ${name} wheel and ${nearest.s.name}` })
  return [{ wheel: name, shape: nearest.s, gap }]
}
type WheelValues = { readonly [K in 'axle' | 'track' | 'diameter' | 'width' | 'height' | 'lock' | 'offset' | 'bump' | 'droop']: Value }
