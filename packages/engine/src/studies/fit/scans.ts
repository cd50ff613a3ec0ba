import { CLEARANCE_HABITS } from '../../fitting/clearance-habits.ts'
import { surveyedGap, surveyedSpace } from '../../fitting/surveyed.ts'
import type { Vector } from '../../fitting/vector.ts'
import type { Model } from '../../model/model.ts'
import type { Surveys } from '../../model/survey.ts'
import { type Fact, type Figure, type Gap, isGap } from '../../working/value.ts'
import { type Gaps, isGaps, type Maker, maybe, study } from '../study.ts'
import type { PlacedShape } from './places.ts'
import { goingIn, laidScan, poseOf, scansOf } from './scan-task.ts'

/** A shape, how near it comes to what was scanned, and what the trade leaves there. */
export type ToScan = { readonly scan: string; readonly shape: string; readonly gap: Figure; readonly limit: Fact }
/** What is known of a scan: measured, or why not. `waits` are shapes that stand elsewhere than when they were measured. */
export type Scanned = { readonly near: readonly ToScan[]; readonly waits: Gap | undefined; readonly fault: string | undefined }

/** Shapes further from a scan than this are not told, unless none is nearer [m]. */
const CLOSE = 0.1

/** What was measured of the scans, and what it says of the shapes as they stand. */
export const scans = study({
  id: 'scan',
  stage: 'fit',
  asks: 'How near do the parts come to what was scanned, and how much room does it leave?',
  reads: (m, ask) => ({
    scans: scansOf(m).map(([name, { resolution }]) => ({
      name,
      found: maybe(surveyOf(m, name)),
      edge: isGap(resolution) ? null : resolution,
    })),
    shapes: goingIn(m, ask),
  }),
  answer: ({ scans: all, shapes }, make): { readonly scans: Readonly<Record<string, Scanned | Gaps>> } => ({
    scans: Object.fromEntries(
      all.map(({ name, found, edge }): [string, Scanned | Gaps] => {
        if (isGaps(found)) return [name, found]
        const { survey, facts } = found as Found
        if (facts.cubes && edge)
          make.work('free', surveyedSpace, { cubes: facts.cubes, edge }, { item: name, label: `Free space of ${name}` })
        return [
          name,
          {
            near: nearest(make, name, survey, shapes as readonly PlacedShape[]),
            waits: waiting(name, survey, shapes),
            fault: survey.fault,
          },
        ]
      }),
    ),
  }),
})

type Survey = Surveys[string]
export type Found = { readonly survey: Survey; readonly facts: { readonly cubes?: Fact } }

/** The survey of a scan as it lies, or the gap that says what it waits for. */
export function surveyOf(m: Model, name: string): Found | Gap | Gaps {
  const laid = laidScan(m, name)
  if (isGaps(laid)) return laid
  const survey = m.surveys?.[name]
  if (survey?.pose !== laid.pose) return beingMeasured(name)
  const facts = survey.cubes === undefined ? {} : { cubes: surveyed(name, 'free cubes', 'N', survey.cubes, '1') }
  return { survey, facts }
}

export const beingMeasured = (name: string, what = 'gaps and free space'): Gap => ({
  gap: true,
  path: `fit.scans.${name}`,
  label: `${what} of the scan ${name}`,
  until: 'any time',
  why: 'being measured',
})

const gapNow = (survey: Survey, shape: PlacedShape): Survey['gaps'][string] | undefined => {
  const gap = survey.gaps[shape.name]
  return gap?.pose === poseOf(shape) ? gap : undefined
}
const waiting = (name: string, survey: Survey, shapes: readonly PlacedShape[]): Gap | undefined =>
  survey.fault === undefined && shapes.some(s => !gapNow(survey, s)) ? beingMeasured(name) : undefined

function nearest(make: Maker, scan: string, survey: Survey, shapes: readonly PlacedShape[]): readonly ToScan[] {
  const found = shapes.flatMap(shape => {
    const gap = gapNow(survey, shape)
    return gap ? [{ shape, gap }] : []
  })
  const least = found.reduce((a, b) => (b.gap.apart < a ? b.gap.apart : a), Infinity)
  return found
    .filter(f => f.gap.apart < CLOSE || f.gap.apart === least)
    .map(({ shape, gap }) => {
      const told = make.work(
        'gap',
        surveyedGap,
        {
          surveyed: surveyed(scan, `gap of ${shape.name}`, 's', gap.apart, 'm', 2 * survey.residual),
          away: three(scan, `${shape.name} away from it`, 'n', gap.away, '1'),
          now: shape.place,
          before: three(scan, `${shape.name} when measured`, 'p_0', gap.place, 'm'),
        },
        { item: `${shape.name} and ${scan}`, label: `Gap from ${shape.name} to the scan ${scan}` },
      )
      return { scan, shape: shape.name, gap: told, limit: CLEARANCE_HABITS.toBody }
    })
}

export function surveyed(scan: string, what: string, symbol: string, value: number, unit: string, half?: number): Fact {
  return {
    path: `fit.scans.${scan}#${what}`,
    label: what,
    symbol,
    unit,
    ...(unit === 'm' ? { shows: 'length' as const } : {}),
    value,
    ...(half === undefined ? {} : { half }),
    origin: { how: 'measured', note: 'on the scan, over all its triangles' },
  }
}
export const three = (scan: string, what: string, symbol: string, v: Vector, unit: string): readonly Fact[] =>
  v.map((x, i) => surveyed(scan, `${what}, ${'xyz'[i]}`, symbol, x, unit))
