import type { System } from '@ampwright/conversion'
import {
  comparisonView,
  type Desk,
  enquiryLetter,
  type FileBeside,
  type FilePlace,
  type FileReading,
  filePlaces,
  fileReading,
  filesBeside,
  type Letter,
  type Recipient,
  type Side,
  type TripRoute,
  tripRoutes,
} from '@ampwright/workbench'

/** What the pages beside the stages need of the engine, and no stage does: fetched when the first of them is opened. */
export {
  coastDownView,
  letterText,
  logTrial,
  lotView,
  moduleTable,
  partTable,
  partTaking,
  placesIn,
  standing,
  tableTrial,
} from '@ampwright/workbench'

export type Comparison =
  | { readonly ok: true; readonly view: ReturnType<typeof comparisonView> }
  | { readonly ok: false; readonly says: string }
type Sided = Side | { readonly refused: string }

/** Two conversions side by side, or why one cannot be assessed. */
export function compared(a: Sided, b: Sided, system: System): Comparison {
  if ('refused' in a) return { ok: false, says: a.refused }
  return 'refused' in b ? { ok: false, says: b.refused } : { ok: true, view: comparisonView(a, b, system) }
}

/** The enquiry letter of the car laid open, once it is assessed. */
export function letterOf(desk: Desk, to: Recipient): Letter | undefined {
  const a = desk.assessment
  return a && enquiryLetter(a, desk.current(), to, desk.system)
}

export type FileList = {
  readonly files: readonly FileBeside[]
  readonly places: readonly FilePlace[]
  readonly routes: readonly TripRoute[]
}

const readings = new WeakMap<Uint8Array, { readonly system: System; readonly reading: FileReading }>()
/** What a file holds. A large one is read once, not after every edit. */
export function readingOf(name: string, bytes: Uint8Array, system: System): FileReading {
  const kept = readings.get(bytes)
  if (kept?.system === system) return kept.reading
  const reading = fileReading(name, bytes, system)
  readings.set(bytes, { system, reading })
  return reading
}

/** The files beside a conversion, and the places that take one. */
export function fileList(desk: Desk, attachments: ReadonlyMap<string, Uint8Array>): FileList {
  const places = filePlaces(desk.current().text.tree),
    read = [...attachments].map(([name, bytes]) => readingOf(name, bytes, desk.system))
  return { files: filesBeside(read, places), places, routes: tripRoutes(read, places) }
}
