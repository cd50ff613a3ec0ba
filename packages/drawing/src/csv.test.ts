import { expect, it } from 'vitest'
import { csvOf } from './csv.ts'

it('a table becomes comma-separated values: quotes doubled, cells with commas quoted, an empty cell for what is not known', () =>
  expect(
    csvOf({
      table: () => ({
        columns: ['', 'road speed, km/h', 'with "quotes"'],
        rows: [
          ['first', 1.5, undefined],
          ['line\nend', -2, 'x'],
        ],
      }),
    }),
  ).toBe(',"road speed, km/h","with ""quotes"""\r\nfirst,1.5,\r\n"line\nend",-2,x\r\n'))
