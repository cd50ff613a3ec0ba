import { surveyedGap } from '../../fitting/surveyed.ts'
import type { SurveyedWay } from '../../model/survey.ts'
import type { Fact, Figure, Gap, Value } from '../../working/value.ts'
import { type Gaps, isGaps, type Maker, maybe, study } from '../study.ts'
import type { Way } from '../../fitting/way-in.ts'
import { type PlacedShape, shapesOf } from './places.ts'
import { goingIn, scansOf, wayOf, wayPose } from './scan-task.ts'
import { beingMeasured, type Found, surveyed, surveyOf, three } from './scans.ts'

/** A part on its way in past a scan, where that is tightest. */
export type PastScan = {
  readonly name: string
  readonly way: Value<Way>
  readonly air: Figure
  /** It runs into the scan. */
  readonly strikes: boolean
  /** How far it is out of its seat there, and the place of the scan that is nearest or struck. */
  readonly out: Fact
  readonly at: readonly Fact[]
}
export type PastOneScan = { readonly passing: readonly PastScan[]; readonly waits: Gap | undefined; readonly fault: string | undefined }

/** How the parts pass what was scanned, each on its straight way in. */
export const pastScans = study({
  id: 'way-past-scan',
  stage: 'fit',
  asks: 'Does each part come past what was scanned, on its way in?',
  reads: (m, ask) => {
    const ways = new Map(shapesOf(m).map(([name, b]) => [name, 'wayIn' in b ? b.wayIn : undefined]))
    return {
      scans: scansOf(m).map(([name]) => ({ name, found: maybe(surveyOf(m, name)) })),
      parts: goingIn(m, ask).flatMap(shape => {
        const way = ways.get(shape.name)
        return way && wayOf(m, shape) ? [{ shape, way }] : []
      }),
    }
  },
  answer: ({ scans, parts }, make): { readonly scans: Readonly<Record<string, PastOneScan | Gaps>> } => ({
    scans: Object.fromEntries(
      scans.map(({ name, found }): [string, PastOneScan | Gaps] => {
        if (isGaps(found)) return [name, found]
        const { survey } = found as Found,
          all = parts as readonly Going[],
          measured = all.flatMap(part => {
            const way = survey.ways[part.shape.name]
            return way?.pose === wayPose(part.shape, part.way.value) ? [{ part, way }] : []
          })
        return [
          name,
          {
            passing: near(measured).map(({ part, way }) => passed(make, name, survey.residual, part, way)),
            waits: survey.fault === undefined && measured.length < all.length ? beingMeasured(name, 'ways in past it: survey') : undefined,
            fault: survey.fault,
          },
        ]
      }),
    ),
  }),
})

/** Parts that pass further off than this are not told, unless none passes nearer [m]. */
const CLOSE = 0.1
type Measured = { readonly part: Going; readonly way: SurveyedWay }
function near(all: readonly Measured[]): readonly Measured[] {
  const least = all.reduce((a, { way }) => Math.min(a, way.apart), Infinity)
  return all.filter(({ way }) => way.apart < CLOSE || way.apart === least)
}

type Going = { readonly shape: PlacedShape; readonly way: Value<Way> }

function passed(make: Maker, scan: string, residual: number, { shape, way }: Going, found: SurveyedWay): PastScan {
  const { name } = shape,
    half = 2 * residual + found.apart - found.atLeast
  const air = make.work(
    'air',
    surveyedGap,
    {
      surveyed: surveyed(scan, `least air beside ${name} on its way in`, 's', found.apart, 'm', half),
      away: three(scan, `${name} away from it on its way in`, 'n', found.away, '1'),
      now: shape.place,
      before: three(scan, `${name} when its way was measured`, 'p_0', found.place, 'm'),
    },
    { item: `${name} past ${scan}`, label: `${name} ${way.value}: air to the scan ${scan}` },
  )
  return {
    name,
    way,
    air,
    strikes: found.apart === 0,
    out: surveyed(scan, `${name} out of its seat where its way is tightest`, 't', found.out, 'm'),
    at: three(scan, `place beside the way of ${name}`, 'p', found.at, 'm'),
  }
}
