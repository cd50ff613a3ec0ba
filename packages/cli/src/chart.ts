import { displayUnit, type System } from '@ampwright/conversion'
import { type Kind, kindOf, type Trace } from '@ampwright/engine'
import { plain, Refusal } from '@ampwright/workbench'
import { colours, padded, type Terminal, wrapped } from './terminal.ts'

const DOTS = [
  [0x01, 0x08],
  [0x02, 0x10],
  [0x04, 0x20],
  [0x40, 0x80],
] as const
const MARKS = 'abcdefghijklmnopqrstuvwxyz'
/** More lines than this in one picture cannot be told apart. */
const READABLE = 6
type Series = Trace['series'][number]

/** The series to draw: those named (`*` stands for anything), else all where they are few, else those that lead. One unit in one picture. */
export function chosenSeries(trace: Trace, wanted: string | undefined): readonly Series[] {
  const { series } = trace
  if (wanted === undefined) {
    const alike = series.filter(s => s.unit === series[0]?.unit),
      leading = alike.filter(s => s.leading)
    return alike.length <= READABLE ? alike : leading.length ? leading : alike.slice(0, READABLE)
  }
  const found = wanted.split(',').flatMap(text => {
    const pattern = new RegExp(`^${text.trim().split('*').map(escaped).join('.*')}$`, 'i'),
      starts = new RegExp(`^${escaped(text.trim())}\\b`, 'i')
    const of = (fits: RegExp): readonly Series[] => series.filter(s => fits.test(s.name) || fits.test(s.label))
    const met = of(pattern).length ? of(pattern) : of(starts)
    if (met.length === 0)
      throw new Refusal(`chart: no series of ${trace.id} is called «${text.trim()}»; there are ${series.map(s => s.name).join(', ')}`)
    return met
  })
  const once = series.filter(s => found.includes(s)),
    units = new Set(once.map(s => s.unit))
  if (units.size > 1)
    throw new Refusal(`chart: ${once.map(s => `${s.name} [${s.unit}]`).join(', ')} have different units; choose those of one`)
  return once.slice(0, MARKS.length)
}
const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')

/** A trace as a picture of text: two dots across and four down in each character, one letter on each line. */
export function drawTrace(trace: Trace, series: readonly Series[], t: Terminal, system: System, height = 18): void {
  const k = colours(t)
  const greatest = (lists: readonly Float64Array[]): number =>
    Math.max(0, ...range(lists.flatMap(l => [...l].filter(Number.isFinite))).map(Math.abs))
  const unitX = unitOf({ unit: trace.axis.unit }, system, greatest([trace.axis.values])),
    unitY = unitOf(series[0] ?? { unit: '' }, system, greatest(series.map(s => s.values)))
  const xs = trace.axis.values.map(unitX.from),
    ys = series.map(s => s.values.map(unitY.from))
  const finite = (list: readonly Float64Array[]): number[] => list.flatMap(l => [...l].filter(Number.isFinite))
  const allY = finite(ys),
    [x0, x1] = range(finite([xs])),
    [y0, y1] = range([...allY, 0])
  const gutter = Math.max(...[y0, y1].map(v => plain(v, 3).length)) + 1,
    width = Math.max(20, t.width - gutter - 2)
  const cells = Array.from({ length: height }, () => new Uint8Array(width)),
    ends = new Map<string, string>()
  const put = (x: number, y: number): [number, number] | undefined => {
    const px = Math.round(((x - x0) / (x1 - x0 || 1)) * (width * 2 - 1)),
      py = Math.round((1 - (y - y0) / (y1 - y0 || 1)) * (height * 4 - 1))
    if (px < 0 || py < 0 || px >= width * 2 || py >= height * 4) return undefined
    const row = cells[py >> 2] as Uint8Array
    row[px >> 1] = (row[px >> 1] as number) | (DOTS[py & 3] as readonly [number, number])[px & 1 ? 1 : 0]
    return [px >> 1, py >> 2]
  }
  const letter = (i: number, y: Float64Array): void => {
    // Spread along the axis and off the ground line, so that no two letters meet where lines do.
    const from = Math.round(((i + 1) / (ys.length + 1)) * (xs.length - 1)),
      order = [...xs.keys()].sort((a, b) => Math.abs(a - from) - Math.abs(b - from))
    const free = (n: number): boolean => {
      const at = Number.isFinite(y[n]) ? put(xs[n] as number, y[n] as number) : undefined
      return at !== undefined && !ends.has(`${at[1]} ${at[0]}`)
    }
    const n = order.find(m => y[m] !== 0 && free(m)) ?? order.find(free),
      at = n === undefined ? undefined : put(xs[n] as number, y[n] as number)
    if (at) ends.set(`${at[1]} ${at[0]}`, MARKS[i] as string)
  }
  for (const [i, y] of ys.entries()) {
    for (let n = 0; n + 1 < xs.length; n++) {
      const [xa, xb, ya, yb] = [xs[n], xs[n + 1], y[n], y[n + 1]] as [number, number, number, number]
      if (![ya, yb].every(Number.isFinite)) continue
      const steps = Math.max(
        1,
        Math.ceil((Math.abs(xb - xa) / (x1 - x0 || 1)) * width * 2),
        Math.ceil((Math.abs(yb - ya) / (y1 - y0 || 1)) * height * 4),
      )
      for (let s = 0; s <= steps; s++) put(xa + ((xb - xa) * s) / steps, ya + ((yb - ya) * s) / steps)
    }
    letter(i, y)
  }
  t.out(`${k.bold(trace.label)}  ${unitY.text}`)
  cells.forEach((row, j) => {
    const label = j === 0 ? plain(y1, 3) : j === height - 1 ? plain(y0, 3) : ''
    const line = [...row].map((c, i) => ends.get(`${j} ${i}`) ?? (c ? String.fromCodePoint(0x2800 + c) : ' ')).join('')
    t.out(`${padded(label, gutter, true)}│${line.trimEnd()}`)
  })
  t.out(`${' '.repeat(gutter)}└${'─'.repeat(width)}`)
  const right = `${plain(x1, 3)} ${unitX.text}`
  t.out(`${' '.repeat(gutter + 1)}${padded(plain(x0, 3), width - right.length)}${right}`)
  series.forEach((s, i) => t.out(`${MARKS[i]}  ${s.label}`))
  const others = trace.series.filter(s => !series.includes(s))
  if (others.length)
    for (const line of wrapped(
      `Not drawn: ${others.map(s => s.name).join(', ')}. --series NAME,NAME draws others; * stands for anything.`,
      t.width,
    ))
      t.out(k.dim(line))
}

type Unit = { readonly text: string; readonly from: (v: number) => number }
function unitOf({ unit, shows }: { readonly unit: string; readonly shows?: Kind }, system: System, greatest: number): Unit {
  const kind = shows ?? kindOf(unit)
  if (!kind || kind === 'number') return { text: unit === '1' ? '' : unit, from: v => v }
  const { unit: text, fromSI } = displayUnit(kind, system, greatest)
  return { text, from: fromSI }
}
function range(values: readonly number[]): [number, number] {
  let low = Number.POSITIVE_INFINITY,
    high = Number.NEGATIVE_INFINITY
  for (const v of values) {
    if (v < low) low = v
    if (v > high) high = v
  }
  return low <= high ? [low, high] : [0, 1]
}
