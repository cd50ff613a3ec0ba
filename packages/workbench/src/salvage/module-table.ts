import { readQuantity } from '@ampwright/conversion'
import { type Field, isGap, type Kind, type Model, type ModuleRecord } from '@ampwright/engine'
import { type CsvColumn, type Separator, writeCsv } from '@ampwright/exchange'

type NumberKey = 'capacity' | 'resistance' | 'restVoltage' | 'restVoltageLater' | 'daysApart' | 'insulation'
const NUMBERS: readonly { readonly key: NumberKey; readonly name: string; readonly kind: Kind; readonly unit: string }[] = [
  { key: 'capacity', name: 'capacity', kind: 'charge', unit: 'Ah' },
  { key: 'resistance', name: 'resistance', kind: 'resistance', unit: 'mΩ' },
  { key: 'restVoltage', name: 'rest voltage', kind: 'voltage', unit: 'V' },
  { key: 'restVoltageLater', name: 'rest voltage later', kind: 'voltage', unit: 'V' },
  { key: 'daysApart', name: 'days apart', kind: 'duration', unit: 'd' },
  { key: 'insulation', name: 'insulation', kind: 'resistance', unit: 'MΩ' },
]
const WORDS = ['serial', 'source', 'history', 'place'] as const

/**
 * The salvaged modules of a car as a table for a spreadsheet, empty cells where a reading is missing: filled in, it reads back as a tester's table.
 * Modules without a serial number are left out, for nothing would find them again. An empty text where there are none.
 */
export function moduleTable({ pack }: Model, separator: Separator = '\t'): string {
  const records = Object.values(pack.salvage).filter(r => !isGap(r.serial))
  if (records.length === 0) return ''
  return writeCsv([...WORDS.map(key => wordColumn(key, records)), ...NUMBERS.map(n => numberColumn(n, records))], { separator })
}

const wordColumn = (key: (typeof WORDS)[number], records: readonly ModuleRecord[]): CsvColumn => ({
  name: key,
  values: records.map(r => wordOf(r[key])),
})
const wordOf = (f: Field<string>): string => (isGap(f) ? '' : f.value)

function numberColumn({ key, name, kind, unit }: (typeof NUMBERS)[number], records: readonly ModuleRecord[]): CsvColumn {
  const one = readQuantity(`1 ${unit}`, kind)
  if (!one.ok) throw new RangeError(`moduleTable: ${unit} is no unit of ${kind}`)
  const { value } = one.quantity
  // Twelve digits are what was typed: the last few are the sums of the units.
  const values = records.map(r => (isGap(r[key]) ? Number.NaN : Number((r[key].value / value).toPrecision(12))))
  return { name, unit, values: Float64Array.from(values) }
}
