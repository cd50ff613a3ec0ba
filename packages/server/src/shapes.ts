import { z } from 'zod'

/** The shapes of the interface: every request and every answer is held against one of these. */

const named = <T extends z.ZodType>(id: string, shape: T): T => {
  z.globalRegistry.add(shape, { ...z.globalRegistry.get(shape), id })
  return shape
}

export const Id = z.string().regex(/^[0-9a-f]{16}$/, 'the id of a conversion: 16 figures and letters a to f')
export const RevisionNumber = z.number().int().min(1).max(999_999_999)
export const RevisionText = z
  .string()
  .regex(/^[1-9]\d{0,8}$/, 'the number of a revision, from 1')
  .transform(Number)
const Time = z.string().describe('ISO 8601, UTC')
const Name = z.string().max(200)
const Who = z.string().max(100).describe('who makes the change')

export const Path = z
  .union([z.string().min(1).max(2000), z.array(z.string().max(500)).min(1).max(40)])
  .describe('keys that lead to a place of the text; as one string joined by dots')
export const Now = named(
  'Now',
  z
    .union([z.null(), z.string().max(200_000), z.array(z.string().max(2000)).max(5000), z.record(z.string(), z.string().max(20_000))])
    .describe('one value, a row, named values in one line, or null for nothing'),
)
export const SeenEdit = named(
  'SeenEdit',
  z.strictObject({
    path: Path,
    now: Now,
    was: Now.describe('what the window saw there; of a whole group its text or its named values'),
  }),
)

export const IssueShape = named(
  'Issue',
  z.object({
    line: z.number(),
    column: z.number(),
    path: z.string(),
    what: z.string(),
    found: z.string(),
    accepted: z.string(),
    nearest: z.string().optional(),
  }),
)
export const ClashShape = named(
  'Clash',
  z.object({ path: z.string(), yours: Now, theirs: z.union([z.null(), z.string(), z.array(z.string())]), was: Now }),
)

export const Refused = named(
  'Refused',
  z.object({ refused: z.string().describe('a word for the program'), message: z.string().describe('a sentence for the person') }),
)
export const Unreadable = named(
  'Unreadable',
  z.object({ refused: z.literal('unreadable'), message: z.string(), issues: z.array(IssueShape) }),
)
export const Clashes = named(
  'Clashes',
  z.object({
    refused: z.literal('clash'),
    message: z.string(),
    clashes: z.array(ClashShape),
    revision: RevisionNumber,
    text: z.string(),
  }),
)

export const VariantShape = named('Variant', z.object({ of: z.string(), named: z.string(), revision: z.number() }))
export const ConversionLine = named(
  'ConversionLine',
  z.object({
    id: z.string(),
    name: z.string().describe('of the car; empty where the text does not say'),
    variant: VariantShape.nullable(),
    revision: RevisionNumber.describe('the last one'),
    made: Time,
    at: Time.describe('when it last changed'),
    deletedUntil: Time.nullable().describe('until when a deleted one can be brought back'),
  }),
)
export const FileLine = named('FileLine', z.object({ name: z.string(), sha256: z.string(), size: z.number() }))
export const ConversionShape = named('Conversion', z.object({ ...ConversionLine.shape, text: z.string(), files: z.array(FileLine) }))
export const RevisionLineShape = named(
  'RevisionLine',
  z.object({
    revision: RevisionNumber,
    at: Time,
    by: z.string(),
    kind: z.enum(['made', 'edit', 'restore', 'import', 'file']),
    what: z.string(),
    sha256: z.string().describe('of the text'),
  }),
)
export const RevisionShape = named('Revision', z.object({ ...RevisionLineShape.shape, text: z.string(), files: z.array(FileLine) }))
export const Saved = named('Saved', z.object({ id: z.string(), revision: RevisionNumber, text: z.string() }))

export const Base64Files = z
  .record(z.string().max(200), z.base64().max(140_000_000))
  .describe('files beside the text by name, each in base64')
export const Start = z.strictObject({
  name: Name.optional(),
  engine: z.string().max(100).optional(),
  driven: z.string().max(100).optional(),
  body: z.string().max(100).optional(),
  rules: z.string().max(100).optional(),
  weight: z.string().max(100).optional(),
})
export const Making = named(
  'Making',
  z
    .strictObject({
      text: z.string().max(2_000_000).optional(),
      files: Base64Files.optional(),
      name: Name.optional().describe('with `text`: the name of the car from now on'),
      start: Start.optional().describe('what is known of a new car'),
      sample: z.string().max(100).optional(),
      copyOf: Id.optional(),
      variantOf: Id.optional(),
      named: z.string().min(1).max(100).optional().describe('with `variantOf`: what the variant is called'),
      revision: RevisionNumber.optional().describe('with `copyOf` and `variantOf`: of which revision'),
      by: Who.optional(),
    })
    .refine(m => [m.text, m.start, m.sample, m.copyOf, m.variantOf].filter(x => x !== undefined).length === 1, {
      message: 'one of text, start, sample, copyOf, variantOf is wanted',
    })
    .refine(m => m.variantOf === undefined || m.named !== undefined, { message: 'named: a variant needs a name' }),
)
export const Batch = named(
  'Batch',
  z.strictObject({
    edits: z.array(SeenEdit).min(1).max(1000),
    by: Who.optional(),
    what: z.string().max(300).optional().describe('what it was for, such as the title of a remedy'),
    seen: RevisionNumber.optional().describe('the revision the window had before it'),
  }),
)
export const ToRevision = z.strictObject({ revision: RevisionNumber, by: Who.optional() })
export const Importing = named(
  'Importing',
  z.strictObject({
    text: z.string().max(2_100_000),
    files: Base64Files.optional(),
    into: Id.optional().describe('the conversion it belongs to; otherwise the last line of an exported text says it'),
    from: RevisionNumber.optional().describe('the revision it was exported from; otherwise that line says it'),
    as: z.enum(['merge', 'variant', 'new']).default('merge'),
    named: z.string().min(1).max(100).optional().describe('what a variant is called'),
    by: Who.optional(),
  }),
)
export const Imported = named(
  'Imported',
  z.object({
    as: z.enum(['new', 'merged', 'unchanged', 'variant']),
    id: z.string(),
    revision: RevisionNumber,
    text: z.string(),
    clashes: z.array(ClashShape).describe('why it became a variant, with both values'),
    layoutLeftOut: z.boolean().describe('comments or layout of the text could not be merged'),
  }),
)
export const Compared = named(
  'Compared',
  z.object({
    edits: z
      .array(z.object({ path: z.string(), was: z.union([z.null(), z.string(), z.array(z.string())]), now: Now }))
      .nullable()
      .describe('null where one of the texts cannot be read'),
    files: z.array(z.object({ file: z.string(), was: z.string().nullable(), now: z.string().nullable() })),
  }),
)
export const Sample = named(
  'Sample',
  z.object({ sample: z.string(), name: z.string(), about: z.string(), demo: z.boolean(), files: z.array(z.string()) }),
)
export const Health = named(
  'Health',
  z.object({ ok: z.literal(true), version: z.string(), node: z.string(), conversions: z.number(), warning: z.string().nullable() }),
)
export const Told = named(
  'Told',
  z.object({
    what: z.enum(['made', 'revision', 'deleted', 'undeleted', 'purged', 'restored', 'workshop']),
    id: z.string().describe('of the conversion; `workshop` for the shelf, empty where a backup was put back'),
    revision: z.number(),
  }),
)
export const RestoredBackup = named('RestoredBackup', z.object({ keptAs: z.string().describe('the file what was here is kept in') }))

export const JobId = z.string().regex(/^[0-9a-f]{16}$/, 'the id of a job: 16 figures and letters a to f')
export const Beginning = named('Beginning', z.strictObject({ kind: z.enum(['backup', 'check']) }))
export const Job = named(
  'Job',
  z.object({
    id: z.string(),
    kind: z.enum(['backup', 'restore', 'check']),
    state: z.enum(['running', 'done', 'failed', 'cancelled', 'stopped']).describe('stopped: the server ended on the way'),
    doing: z.string().describe('what it does now, such as «copying the database»'),
    done: z.number().describe('how much of `of` is done of that'),
    of: z.number(),
    begun: Time,
    ended: Time.nullable(),
    says: z.string().nullable().describe('how it ended, a sentence for the person'),
    result: z
      .object({
        file: z.string().nullable().describe('name of the file to fetch; null where there is none, or no longer'),
        size: z.number().nullable().describe('of that file, in bytes'),
        keptAs: z.string().nullable().describe('the file what was here before is kept in'),
        contents: z.number().nullable().describe('how many were looked through'),
        problems: z.array(z.string()).describe('what is not as it was kept'),
      })
      .nullable(),
  }),
)
const KeptFor = z.object({
  car: z.string(),
  id: z.string().optional().describe('of its conversion, where it is known'),
  missing: z.boolean().describe('no such car is here, or several are called so'),
})
export const ShelfPieceShape = named(
  'ShelfPiece',
  z.object({
    key: z.string(),
    label: z.string().describe('as the catalogue describes it, else its own words'),
    part: z.string().optional(),
    class: z.string().optional(),
    unknown: z.boolean().describe('its record is not in the catalogue'),
    serial: z.string().optional(),
    pieces: z.number(),
    price: z.string().optional().describe('of one piece, for people'),
    priceTyped: z.string().optional().describe('the same as a file spells it'),
    priceIs: z.enum(['paid', 'quoted']).optional(),
    pricedOn: z.string().optional(),
    from: z.string().optional(),
    quoteUntil: z.string().optional(),
    lapsed: z.boolean().describe('the last day of the quote has passed'),
    place: z.string().optional(),
    condition: z.string().optional(),
    note: z.string().optional(),
    reserved: KeptFor.optional(),
    typed: z.record(z.string(), z.string()).describe('the values as they stand in the text, by key: what an edit says it saw'),
    stands: z.string().describe('the whole piece as it stands in the text'),
  }),
)
export const ShelfShape = named(
  'Shelf',
  z.object({
    revision: z.number().int().min(0).describe('0 where nothing was ever kept'),
    at: Time.nullable(),
    name: z.string().describe('of the workshop; empty where the text does not say'),
    text: z.string(),
    pieces: z.array(ShelfPieceShape),
    classes: z.array(z.object({ class: z.string(), label: z.string(), count: z.number() })),
    notes: z.array(IssueShape).describe('what is odd in the text, and does not stop it'),
  }),
)
export const ShelfSaved = named('ShelfSaved', z.object({ revision: z.number().int().min(0), text: z.string() }))
export const ShelfRevisionLine = named('ShelfRevisionLine', z.object({ ...RevisionLineShape.shape, kind: z.enum(['made', 'edit']) }))
export const Reserving = named('Reserving', z.strictObject({ piece: z.string().min(1).max(500), conversion: Id, by: Who.optional() }))
export const KeptForAnother = named(
  'KeptForAnother',
  z.object({ refused: z.literal('reserved'), message: z.string(), piece: z.string(), car: z.string() }),
)
