import { type System, writeQuantity } from '@ampwright/conversion'
import type { AlignedBox, Kind, Vector } from '@ampwright/engine'
import type { MeshFile } from '@ampwright/exchange'
import { type Alignment, type Gap, type MeshMeasures, mirrors, type ScanAsked, type ScanSurvey, SIDES } from '@ampwright/geometry'
import { plain, shownNumber } from '@ampwright/workbench'
import { colours, columns, type Terminal, wrapped } from './terminal.ts'

export type Row = readonly [string, string]
export type Says = (value: number, kind: Kind) => string

const SI: Readonly<Partial<Record<Kind, string>>> = { length: 'm', area: 'm²', volume: 'm³' }
/** A value in a unit of the reader's choice. */
export const saysIn =
  (system: System): Says =>
  (value, kind) =>
    shownNumber(value, kind, SI[kind] ?? '', system)
const percent = (share: number): string => `${plain(100 * share, 2)} %`
export const count = (n: number): string => writeQuantity(n, 'count')
export const many = (n: number, one: string, more = `${one}s`): string => `${count(n)} ${n === 1 ? one : more}`

/** A scan for people: what it is, where it lies, what it leaves free, how near boxes come. */
export function printScan(name: string, read: MeshFile, survey: ScanSurvey, asked: ScanAsked, t: Terminal, system: System): void {
  const k = colours(t),
    says = saysIn(system),
    part = (title: string, rows: readonly Row[]): void => {
      t.out(k.bold(title))
      for (const line of columns(rows, t.width, 2)) t.out(line)
    }
  part(name, aboutFile(read, survey))
  const { lies, free, gaps } = survey
  if (!lies) {
    t.out('')
    for (const line of wrapped(
      'Where it lies in the car is not known yet: pick three points of it whose places you have measured, --pick each.',
      t.width,
    ))
      t.out(k.dim(line))
    return
  }
  t.out('')
  part('In the car', aboutPlace(lies.inCar, lies.alignment, mirrors(lies.placement), asked, says))
  if (free && asked.free) {
    t.out('')
    part('Free space', aboutFree(free, asked.free, says))
  }
  if (gaps.length > 0) {
    t.out('')
    part(
      'Gaps',
      gaps.map((gap, i): Row => [`Box ${i + 1}`, aboutGap(gap, says)]),
    )
  }
}

function aboutFile({ format, unit, up }: MeshFile, { file, likelyUnits, lies }: ScanSurvey): readonly Row[] {
  const { low, high } = file.bounds,
    extent = high.map((h, i) => plain(h - (low[i] as number))).join(' × '),
    fixed = unit ? `${unit}, and ${up} up: ${format} fixes both` : undefined
  const guess = likelyUnits.length ? `by its size ${likelyUnits.join(' or ')}` : 'its size fits no unit of a car'
  return [
    ['Format', format],
    ['Triangles', count(file.triangles)],
    ['Skin', skin(file)],
    ['Extent', `${extent}, as the file counts`],
    ...(lies?.alignment ? [] : [['Unit', fixed ?? guess] as Row]),
  ]
}

function skin({ closed, openEdges, oddEdges }: MeshMeasures): string {
  if (closed) return 'closed'
  const odd = oddEdges > 0 ? `, ${many(oddEdges, 'edge')} where triangles do not agree which side is out` : ''
  return `open: ${many(openEdges, 'open edge')}${odd}`
}

function aboutPlace(m: MeshMeasures, alignment: Alignment | undefined, mirrored: boolean, asked: ScanAsked, says: Says): readonly Row[] {
  const rows: Row[] = alignment
    ? [...aboutPicks(alignment, asked, says)]
    : [['Lies', 'by its axes as you said; its origin is that of the car']]
  if (mirrored) rows.push(['Mirrored', 'as you said: left and right are exchanged back'])
  rows.push(...reach(m.bounds, says), ['Area', says(m.area, 'area')])
  if (m.volume !== undefined) rows.push(['Volume', says(Math.abs(m.volume), 'volume')])
  return rows
}

function aboutPicks({ unit, scaleOff, placement, residuals, residual }: Alignment, { unit: said }: ScanAsked, says: Says): readonly Row[] {
  const off =
    Math.abs(scaleOff) < 5e-5
      ? ''
      : `; your distances are ${percent(Math.abs(scaleOff))} ${scaleOff > 0 ? 'longer' : 'shorter'} than those on it`
  const scale = unit
    ? `${unit}, ${said ? 'as said' : 'by the distances between the points'}${off}`
    : `none that is known: one unit of the file is ${says(placement.scale, 'length')} by the distances between the points`
  return [
    ['Lies', `by ${many(residuals.length, 'point')}, ${says(residual, 'length')} left over (root of the mean square)`],
    ['Left over', residuals.map((r, i) => `${i + 1}: ${says(r, 'length')}`).join(' · ')],
    ['Unit', scale],
  ]
}

const reach = ({ low, high }: AlignedBox, says: Says): readonly Row[] => [
  ['Along', `${says(low[0], 'length')} to ${says(high[0], 'length')} behind the front axle`],
  ['Across', `${says(low[1], 'length')} to ${says(high[1], 'length')} to the right of the middle`],
  ['Height', `${says(low[2], 'length')} to ${says(high[2], 'length')} above the ground`],
]

function aboutFree(
  { volume, reached, field }: NonNullable<ScanSurvey['free']>,
  { from, keep = 0 }: NonNullable<ScanAsked['free']>,
  says: Says,
): readonly Row[] {
  return [
    [
      'Volume',
      `${says(volume, 'volume')}, in cubes of ${says(field.edge, 'length')}${keep > 0 ? ` that keep ${says(keep, 'length')} off` : ''}`,
    ],
    ['From', place(from, says)],
    ['Reaches the limits', sidesText(reached)],
  ]
}

/** Which sides of the limits a flood reached, and how much of each. */
export function sidesText(reached: Readonly<Record<string, number>>): string {
  const sides = SIDES.filter(side => (reached[side] ?? 0) > 0).map(side => `${side} ${percent(reached[side] as number)}`)
  return sides.length ? `${sides.join(', ')}: open there, or a hole wider than a cube` : 'nowhere: closed all round'
}

export const aboutGap = ({ gap, overlap, onFirst, onSecond }: Gap, says: Says): string =>
  overlap
    ? `▲ runs into the scan at ${place(onFirst, says)}`
    : `${says(gap, 'length')}, from ${place(onSecond, says)} to ${place(onFirst, says)}`

export const place = (at: Vector, says: Says): string => at.map(x => says(x, 'length')).join(', ')
