/** A part record as the resolver needs it: texts by key, and how such a record knows its values. */
export type PartRecord = {
  readonly id: string
  readonly how: 'datasheet' | 'assumed'
  readonly fields: Readonly<Record<string, { readonly text: string }>>
  /** Fields that hold by what the part is, whatever else of it is assumed. */
  readonly defined?: readonly string[]
}
export type FileDatum =
  | { readonly ok: true; readonly datum: unknown }
  | { readonly ok: false; readonly found: string; readonly accepted: string }
export type LookUps = {
  readonly parts?: (id: string) => PartRecord | undefined
  readonly partNames?: readonly string[]
  /** A file beside the conversion. A datum of undefined: the file is sound, but carries no such thing. */
  readonly attachments?: (name: string, format: string) => FileDatum | undefined
  /** A standard cycle: speed over time; and all there are. */
  readonly cycles?: (id: string) => unknown
  readonly cycleNames?: readonly string[]
}
export type Reading = {
  readonly strict: boolean
  readonly lookUps: LookUps
  readonly file?: string
  /** Sections of which not every line could be read: what seems to be missing there may be there. */
  readonly torn?: ReadonlySet<string>
}
