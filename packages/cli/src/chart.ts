import { displayUnit, type System } from '@ampwright/conversion'
import type { Trace } from '@ampwright/engine'
import { kindOf } from '@ampwright/engine'
import { plain } from './shown.ts'
import { colours, padded, type Terminal } from './terminal.ts'

const DOTS = [
  [0x01, 0x08],
  [0x02, 0x10],
  [0x04, 0x20],
  [0x40, 0x80],
] as const
const MARKS = 'abcdefghijklmnop'

/** A trace as a picture of text: two dots across and four down in each character, one letter for each series where it ends. */
export function drawTrace(trace: Trace, t: Terminal, system: System, height = 18): void {
  const k = colours(t),
    series = trace.series.filter(s => s.unit === trace.series[0]?.unit)
  const unitX = unitOf(trace.axis.unit, system),
    unitY = unitOf(series[0]?.unit ?? '', system)
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
  for (const [i, y] of ys.entries()) {
    let last: [number, number] | undefined
    for (let n = 0; n + 1 < xs.length; n++) {
      const [xa, xb, ya, yb] = [xs[n], xs[n + 1], y[n], y[n + 1]] as [number, number, number, number]
      if (![ya, yb].every(Number.isFinite)) continue
      const steps = Math.max(
        1,
        Math.ceil((Math.abs(xb - xa) / (x1 - x0 || 1)) * width * 2),
        Math.ceil((Math.abs(yb - ya) / (y1 - y0 || 1)) * height * 4),
      )
      for (let s = 0; s <= steps; s++) last = put(xa + ((xb - xa) * s) / steps, ya + ((yb - ya) * s) / steps) ?? last
    }
    if (last) ends.set(`${last[1]} ${Math.min(width - 1, last[0] + 1)}`, MARKS[i] as string)
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
}

function unitOf(unit: string, system: System): { text: string; from: (v: number) => number } {
  const kind = kindOf(unit)
  if (!kind || kind === 'number') return { text: unit === '1' ? '' : unit, from: v => v }
  const { unit: text, fromSI } = displayUnit(kind, system)
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
