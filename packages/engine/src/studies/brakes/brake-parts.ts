import { discForcePerPressure, drumForcePerPressure, splitOfForces } from '../../brakes/force-per-pressure.ts'
import type { WheelBrake } from '../../model/brakes.ts'
import { type Field, type Figure, isGap, standard, type Value } from '../../working/value.ts'
import { rolling } from '../donor/rolling.ts'
import { type Ask, from, type Gaps, isGaps, type Maker, maybe, study } from '../study.ts'

const ONE = {
  ...standard('one-piston', 'one piston', 'n_p', 1, '1', { work: 'definition', place: 'the usual caliper' }),
  shows: 'count',
} as const
export type ByParts = { readonly front: Figure | Gaps; readonly rear: Figure | Gaps; readonly split: Figure | Gaps }

function wheelReads(ask: Ask, kind: Field<'disc' | 'drum'>, w: WheelBrake) {
  const wheel = from(ask(rolling), r => r.radius)
  if (isGap(kind)) return { kind, wheel }
  return kind.value === 'disc'
    ? { disc: { friction: w.padFriction, piston: w.piston, pistons: isGap(w.pistons) ? ONE : w.pistons, radius: w.effectiveRadius, wheel } }
    : { drum: { factor: w.brakeFactor, cylinder: w.wheelCylinder, radius: w.drumRadius, wheel } }
}

/** Brake force of each axle for a unit of line pressure, by what its brakes are made of. */
export const brakeParts = study({
  id: 'brake-parts',
  stage: 'brakes & steering',
  asks: 'How hard does each axle brake by what its brakes are made of?',
  reads: (m, ask) => ({
    front: maybe(wheelReads(ask, m.donor.brakes.front, m.brakes.front)),
    rear: maybe(wheelReads(ask, m.donor.brakes.rear, m.brakes.rear)),
  }),
  answer: ({ front: f, rear: r }, make): ByParts => {
    const front = isGaps(f) ? f : force(make, 'front', f as unknown as Wheel),
      rear = isGaps(r) ? r : force(make, 'rear', r as unknown as Wheel)
    const missing = [front, rear].flatMap(x => (isGaps(x) ? x.gaps : []))
    return {
      front,
      rear,
      split: missing.length
        ? { gaps: missing }
        : make.work(
            'split',
            splitOfForces,
            { front: front as Figure, rear: rear as Figure },
            { label: 'Share of the brake force at the front, by parts' },
          ),
    }
  },
})
type Disc = Readonly<Record<'friction' | 'piston' | 'pistons' | 'radius' | 'wheel', Value>>
type Drum = Readonly<Record<'factor' | 'cylinder' | 'radius' | 'wheel', Value>>
type Wheel = { readonly disc: Disc } | { readonly drum: Drum }
function force(make: Maker, axle: 'front' | 'rear', w: Wheel): Figure {
  const more = { label: `Brake force over line pressure, ${axle} axle` }
  return 'disc' in w ? make.work(axle, discForcePerPressure, w.disc, more) : make.work(axle, drumForcePerPressure, w.drum, more)
}
