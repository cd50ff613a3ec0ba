import { type Fact, type Gap, type Origin, type Source, type Tyre } from '@ampwright/engine'
import { readTyre } from '../quantities/tyre.ts'

const PLACE = { work: 'etrto', place: 'size designation, load index and speed symbol' } as const
/** Load index and speed symbol were compared with printed tables of the regulation. */
const SERVICE = { work: 'un-r30', place: 'Annex 4, load index and speed symbol' } as const
/** Old markings and rare symbols are read from memory; that mark goes with the facts. */
const originOf = (marks: readonly string[], source: Source = PLACE): Origin =>
  marks.length ? { how: 'standard', note: marks.join('; '), source: { ...source, mark: 'from memory' } } : { how: 'standard', source }

/**
 * The facts behind one tyre marking. Without a text every field is the same gap; a text that cannot be read gives what was found and what is accepted.
 *
 * The parts of the marking stand at `path#part`: they move together when the marking is edited.
 */
export function tyreFields(gap: Gap): Tyre
export function tyreFields(gap: Gap, text: string): Tyre | { found: string; accepted: string }
export function tyreFields(gap: Gap, text?: string): Tyre | { found: string; accepted: string } {
  if (text === undefined)
    return { text: gap, width: gap, aspect: gap, rim: gap, diameter: gap, construction: gap, loadEach: gap, topSpeed: gap }
  const read = readTyre(text)
  if (!read.ok) return { found: `${read.problem.found}: ${read.problem.why}`, accepted: read.problem.accepted }
  const { tyre } = read,
    size = tyre.marks.filter(m => !/^(load|speed)/.test(m))
  const one = (
    part: string,
    label: string,
    symbol: string,
    unit: string,
    value: number | undefined,
    origin = originOf(size),
  ): Fact | Gap =>
    value === undefined
      ? { ...gap, label: `${label} (not in the marking)` }
      : { path: `${gap.path}#${part}`, label, symbol, unit, value, origin, text }
  return {
    text: { path: gap.path, label: gap.label, symbol: '', unit: '', value: text, text },
    width: one('width', 'section width', 'w', 'm', tyre.width),
    aspect: one('aspect', 'aspect ratio', 'a', '1', tyre.aspect),
    rim: one('rim', 'rim diameter', 'd', 'm', tyre.rim),
    diameter: one('diameter', 'unloaded diameter', 'D', 'm', tyre.diameter),
    construction: { path: `${gap.path}#construction`, label: 'construction', symbol: '', unit: '', value: tyre.construction, text },
    loadEach: one(
      'load',
      'load one tyre may carry',
      'm_LI',
      'kg',
      tyre.loadKg,
      originOf(
        tyre.marks.filter(m => m.startsWith('load')),
        SERVICE,
      ),
    ),
    topSpeed: one(
      'speed',
      'speed of the symbol',
      'v_sym',
      'm/s',
      tyre.maxSpeed,
      originOf(
        tyre.marks.filter(m => m.startsWith('speed')),
        SERVICE,
      ),
    ),
  }
}
