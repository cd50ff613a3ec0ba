import type { z } from 'zod'
import type * as shapes from './shapes.ts'

/** What is only read: whoever calls may hand over what nobody may change. */
type Given<T> = T extends readonly (infer U)[] ? readonly Given<U>[] : T extends object ? { readonly [K in keyof T]: Given<T[K]> } : T

/** The shapes of the interface as types, for those who call it. */
export type ApiNow = z.infer<typeof shapes.Now>
export type ApiSeenEdit = Given<z.input<typeof shapes.SeenEdit>>
export type ApiIssue = z.infer<typeof shapes.IssueShape>
export type ApiClash = z.infer<typeof shapes.ClashShape>
export type ApiRefused = z.infer<typeof shapes.Refused>
export type ApiUnreadable = z.infer<typeof shapes.Unreadable>
export type ApiClashes = z.infer<typeof shapes.Clashes>
export type ApiVariant = z.infer<typeof shapes.VariantShape>
export type ApiConversionLine = z.infer<typeof shapes.ConversionLine>
export type ApiFileLine = z.infer<typeof shapes.FileLine>
export type ApiConversion = z.infer<typeof shapes.ConversionShape>
export type ApiRevisionLine = z.infer<typeof shapes.RevisionLineShape>
export type ApiRevision = z.infer<typeof shapes.RevisionShape>
export type ApiSaved = z.infer<typeof shapes.Saved>
export type ApiMaking = Given<z.input<typeof shapes.Making>>
export type ApiBatch = Given<z.input<typeof shapes.Batch>>
export type ApiImporting = Given<z.input<typeof shapes.Importing>>
export type ApiImported = z.infer<typeof shapes.Imported>
export type ApiCompared = z.infer<typeof shapes.Compared>
export type ApiSample = z.infer<typeof shapes.Sample>
export type ApiHealth = z.infer<typeof shapes.Health>
/** One event of /api/live. */
export type ApiTold = z.infer<typeof shapes.Told>
export type ApiRestoredBackup = z.infer<typeof shapes.RestoredBackup>
/** Long work: one event `job` of /api/live at each step. */
export type ApiJob = z.infer<typeof shapes.Job>
export type ApiShelf = z.infer<typeof shapes.ShelfShape>
export type ApiShelfSaved = z.infer<typeof shapes.ShelfSaved>
export type ApiReserving = Given<z.input<typeof shapes.Reserving>>
