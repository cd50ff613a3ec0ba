import { headingText } from './csv-header.ts'
import type { NumberColumn, Separator, WordColumn } from './csv-table.ts'

export type CsvStyle = { readonly separator?: Separator; readonly decimal?: '.' | ','; readonly notes?: readonly string[] }
export type CsvColumn = NumberColumn | WordColumn

/**
 * Columns as a CSV text that reads back to the last bit: units in the header, lines ended as RFC 4180 says; NaN becomes an empty cell.
 *
 * Throws RangeError when there is no column, lengths differ, a number is infinite, a note has two lines, or a decimal comma meets separating commas.
 */
export function writeCsv(columns: readonly CsvColumn[], { separator = ',', decimal = '.', notes = [] }: CsvStyle = {}): string {
  const first = columns[0]
  if (!first) throw new RangeError('columns must hold at least one column, found none')
  const rows = first.values.length
  for (const { name, values } of columns) {
    if (values.length !== rows) throw new RangeError(`column ${name} must have ${rows} rows, found ${values.length}`)
  }
  if (separator === ',' && decimal === ',') throw new RangeError('separator must be ; or a tab beside a decimal comma, found ,')
  const broken = notes.find(n => /[\r\n]/.test(n))
  if (broken !== undefined) throw new RangeError(`notes must be single lines, found ${JSON.stringify(broken)}`)
  const word = (text: string): string => (/^[#\s]|[",;\t\r\n]|\s$/.test(text) ? `"${text.replaceAll('"', '""')}"` : text)
  const number = (value: number): string => {
    if (Number.isNaN(value)) return ''
    if (!Number.isFinite(value)) throw new RangeError(`numbers must be finite or NaN, found ${value}`)
    const text = Object.is(value, -0) ? '-0' : String(value)
    return decimal === ',' ? text.replace('.', ',') : text
  }
  const lines = [...notes.map(n => `# ${n}`), columns.map(c => word(headingText(c))).join(separator)]
  for (let i = 0; i < rows; i++) {
    const line = columns
      .map(({ values }) => (typeof values[i] === 'string' ? word(values[i] as string) : number(values[i] as number)))
      .join(separator)
    // An empty line would be passed over by readers.
    lines.push(line === '' ? '""' : line)
  }
  lines.push('')
  return lines.join('\r\n')
}
