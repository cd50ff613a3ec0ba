import type { ModuleRecord, Pack } from '../../model/pack.ts'
import { type Field, type Gap, isGap } from '../../working/value.ts'

/** Records of modules that go into the pack, by name; spares and rejected ones stay on the shelf. */
export const recordsInPack = (pack: Pack): readonly (readonly [name: string, record: ModuleRecord])[] =>
  Object.entries(pack.salvage).filter(([, r]) => isGap(r.use) || r.use.value === 'in the pack')

/** What is known of one module: measured, or how an untested one is planned. */
export type Tested = { readonly name: string; readonly measured: Field } | { readonly name: string; readonly against: Field }
export const tested = (records: readonly (readonly [string, ModuleRecord])[], key: 'capacity' | 'resistance'): readonly Tested[] =>
  records.map(([name, r]) => (isGap(r[key]) ? { name, against: r.againstOthers } : { name, measured: r[key] }))

/** The gap to close where fewer modules are recorded than the pack has places; nothing where each has its record. */
export function missingRecords(pack: Pack): Gap | null {
  const { modulesInSeries: n, strings } = pack
  if (isGap(n)) return n
  if (isGap(strings)) return strings
  if (!isGap(pack.otherModule.inSeries) && pack.otherModule.inSeries.value > 0)
    return {
      gap: true,
      path: 'pack.other-module',
      label: 'test records of the modules of the other form, for which the file has no place yet',
      until: 'before the part is bought',
    }
  return recordsInPack(pack).length >= n.value * strings.value
    ? null
    : {
        gap: true,
        path: 'pack.salvage',
        label: 'records of the other modules',
        until: 'before the part is bought',
        measure: { tool: 'module tester, insulation tester, meter', accuracy: '± 1 %', minutes: 300 },
      }
}
