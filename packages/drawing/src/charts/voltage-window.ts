import type { Table } from '@ampwright/engine'
import { axisOver, type Quantity } from '../axis.ts'
import type { Outcome, Page } from '../picture.ts'
import { type Stand, type Window, type Windows, windowsChart } from '../windows.ts'
import { numberIn, said } from './cells.ts'

export type VoltageMarks = {
  readonly nominal?: number | undefined
  /** Where charging stops. */
  readonly charged?: number | undefined
  /** At the hardest launch, cold and on the reserve. */
  readonly sag?: number | undefined
  /** How each part was judged against the pack. */
  readonly outcomes?: Readonly<Record<string, Outcome>> | undefined
}
const VOLTS: Quantity = { label: 'battery voltage', unit: 'V' }
const PACK = 'pack'

/** The window of the pack's voltage against that of every part on it (`voltage-window.parts`), with the sag of a cold launch and where charging stops. */
export function voltageWindowChart(table: Table, marks: VoltageMarks, page: Page): Windows {
  const windows = table.rows.map(({ name, cells }) => windowOf(name, numberIn(cells['lowest']), numberIn(cells['highest']), marks)),
    pack = windows.find(w => w.name === PACK)
  const all = [...windows.flatMap(w => [w.low, w.high]), marks.nominal, marks.charged, marks.sag].filter(v => v !== undefined)
  const least = Math.min(...all, Number.POSITIVE_INFINITY),
    most = Math.max(...all, 0),
    room = Number.isFinite(least) ? (most - least) * 0.06 : 0
  const [low, high] = Number.isFinite(least) ? [Math.max(0, least - room), most + room] : [0, 1]
  const { read } = axisOver(VOLTS, [low, high], {}, page.units, 0),
    stands = standsOf(pack, marks, read)
  return windowsChart(
    {
      label: table.label,
      quantity: VOLTS,
      windows,
      stands,
      band: pack?.low !== undefined && pack.high !== undefined ? { low: pack.low, high: pack.high } : undefined,
      low,
      high,
      text: textOf(windows, stands, read),
    },
    page,
  )
}
function windowOf(name: string, low: number | undefined, high: number | undefined, { outcomes }: VoltageMarks): Window {
  const outcome = outcomes?.[name]
  return {
    name,
    low,
    high,
    none: low === undefined && high === undefined ? 'window not known' : undefined,
    strong: name === PACK,
    stands: outcome ? { outcome, words: outcome } : undefined,
  }
}
/** Full and empty of the pack, and what lies between or below. What falls together is said once. */
function standsOf(pack: Window | undefined, { nominal, charged, sag }: VoltageMarks, read: (v: number) => string): readonly Stand[] {
  const named = [
    ['cold launch', sag],
    ['empty', pack?.low],
    ['nominal', nominal],
    ['charged', charged],
    ['full', pack?.high],
  ] as const
  const together = new Map<string, { value: number; names: string[] }>()
  for (const [name, value] of named)
    if (value !== undefined) {
      const at = together.get(read(value))
      if (at) at.names.push(name)
      else together.set(read(value), { value, names: [name] })
    }
  return [...together]
    .sort((a, b) => a[1].value - b[1].value)
    .map(([text, { value, names }]) => ({ value, label: `${said(names)} ${text}` }))
}
function textOf(windows: readonly Window[], stands: readonly Stand[], read: (v: number) => string): string {
  const each = windows.map(w => {
    const range =
      w.none ?? `${w.low === undefined ? 'lowest not known' : read(w.low)} to ${w.high === undefined ? 'highest not known' : read(w.high)}`
    return `${w.name} ${range}${w.stands ? `, ${w.stands.words}` : ''}`
  })
  return `${each.join('; ')}.${stands.length ? ` The pack: ${said(stands.map(s => s.label))}.` : ''}`
}
