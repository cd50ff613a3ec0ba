import { CsvRows } from './csv-rows.ts'
import { type CsvAnswer, type CsvOptions, MOST_CSV_BYTES } from './csv-table.ts'
import { type ByteReader, byteReader, readWhole } from './source-text.ts'

/**
 * A table of numbers with one header row, as columns; or every problem with its line and column.
 *
 * Quoting as in RFC 4180; line ends of all three kinds; a byte-order mark, empty lines and lines with # before the header are passed over.
 * Numbers have a decimal point, or, where semicolons or tabs separate, a decimal comma: the first number with either fixes it for the file.
 * Thousands separators are refused, for 1,234 can be read two ways. Columns are named and given units by `headingOf`.
 * Source: RFC 4180, Common format and MIME type for CSV files (from memory).
 */
export const readCsv = (input: Uint8Array | string, options: CsvOptions = {}): CsvAnswer =>
  readWhole(new CsvRows(options), input, options.mostBytes ?? MOST_CSV_BYTES)

/** The same for a file that comes in pieces. */
export const csvReader = (options: CsvOptions = {}): ByteReader<CsvAnswer> =>
  byteReader(new CsvRows(options), options.mostBytes ?? MOST_CSV_BYTES)
