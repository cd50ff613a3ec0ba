import type { ModuleRecord, Pack } from '../../model/pack.ts'
import { type Field, type Gap, isGap } from '../../working/value.ts'

/** Records of modules that go into the pack, by name; spares and rejected ones stay on the shelf. */
export const recordsInPack = (pack: Pack): readonly (readonly [name: string, record: ModuleRecord])[] =>
  Object.entries(pack.salvage).filter(([, r]) => isGap(r.use) || r.use.value === 'in the pack')

/** What is known of one module: measured, or how an untested one is planned. */
export type Tested = { readonly name: string; readonly measured: Field } | { readonly name: string; readonly against: Field }
export const tested = (records: readonly (readonly [string, ModuleRecord])[], key: 'capacity' | 'resistance'): readonly Tested[] =>
  records.map(([name, r]) => (isGap(r[key]) ? { name, against: r.againstOthers } : { name, measured: r[key] }))

/** Whether a record is of a module of the other form. */
export const isOther = ({ form }: ModuleRecord): boolean => !isGap(form) && form.value === 'other'
/** Cells in series of the module a record is of. */
export const cellsOf = (pack: Pack, r: ModuleRecord): Field => (isOther(r) ? pack.otherModule : pack.module).cellsInSeries

/** Places for modules of each form; the gap where they cannot be told. */
export function placesOf({
  modulesInSeries: n,
  strings,
  otherModule: { inSeries },
}: Pack): { readonly main: number; readonly other: number } | Gap {
  if (isGap(n)) return n
  if (isGap(strings)) return strings
  return { main: n.value * strings.value, other: isGap(inSeries) ? 0 : inSeries.value * strings.value }
}

/** The gap to close where fewer modules are recorded than the pack has places; nothing where each has its record. */
export function missingRecords(pack: Pack): Gap | null {
  const places = placesOf(pack),
    records = recordsInPack(pack),
    others = records.filter(([, r]) => isOther(r)).length
  if (isGap(places)) return places
  return records.length - others >= places.main && others >= places.other
    ? null
    : {
        gap: true,
        path: 'pack.salvage',
        label: 'records of the other modules',
        until: 'before the part is bought',
        measure: { tool: 'module tester, insulation tester, meter', accuracy: '± 1 %', minutes: 300 },
      }
}
