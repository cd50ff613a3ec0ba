import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'

/**
 * Measured cell files (open data, licence in each header), kept beside the repository and not in it: AMPWRIGHT_CELL_DATA names the folder.
 *
 * Columns by name, as far as a file has them.
 */
const folder = process.env['AMPWRIGHT_CELL_DATA'] ?? join(new URL('.', import.meta.url).pathname, '../../shared/reference/cell')
export const cellFile = (name: string): string | undefined => (existsSync(join(folder, name)) ? join(folder, name) : undefined)

export type Columns = Readonly<Record<string, Float64Array>> & { readonly rows: number }
export function columns(name: string): Columns | undefined {
  const path = cellFile(name)
  if (!path) {
    console.info(`skipped: the measured cell file ${name} is not at hand (set AMPWRIGHT_CELL_DATA to its folder)`)
    return undefined
  }
  const lines = readFileSync(path, 'utf8')
    .split('\n')
    .filter(l => l !== '' && !l.startsWith('#'))
  const [head = '', ...body] = lines,
    keys = head.split(',')
  const out: Record<string, Float64Array> = Object.fromEntries(keys.map(k => [k, new Float64Array(body.length)]))
  for (const [i, line] of body.entries())
    for (const [j, cell] of line.split(',').entries()) (out[keys[j] as string] as Float64Array)[i] = Number(cell)
  return Object.assign(out, { rows: body.length }) as unknown as Columns
}
/** A column that the caller knows is there. */
export function column(data: Columns, key: string): Float64Array {
  const c = data[key]
  if (!c) throw new RangeError(`the file has no column ${key}`)
  return c
}
