import { applyEdits, isSound, readText } from '@ampwright/conversion'
import { type Outcome, StoreFault } from '@ampwright/store'
import { startText } from '@ampwright/workbench'
import { z } from 'zod'
import { Batch, ConversionLine, ConversionShape, Making, Saved, ToRevision } from '../shapes.ts'
import { answered, line, saved, whole } from '../told.ts'
import { type Behind, ById, CHANGED, MOST_JSON, REFUSED, type Routed } from './routed.ts'

/** Conversions as a whole: list, make, read, change, delete. */
export function conversionRoutes(app: Routed, { store, samples }: Behind): void {
  app.get(
    '/api/conversions',
    {
      schema: { summary: 'Every conversion, deleted ones too, last changed first', response: { ...REFUSED, 200: z.array(ConversionLine) } },
    },
    () => store.conversions().map(line),
  )

  app.post(
    '/api/conversions',
    {
      bodyLimit: MOST_JSON,
      schema: {
        summary: 'Makes a conversion: from a text, from what is known of a new car, of a sample, as a copy or as a variant',
        body: Making,
        response: { ...CHANGED, 201: Saved },
      },
    },
    (request, reply) => answered(reply, made(request.body), 201),
  )

  app.get(
    '/api/conversions/:id',
    {
      schema: {
        summary: 'A conversion with its text and the list of its files',
        params: ById,
        response: { ...REFUSED, 200: ConversionShape },
      },
    },
    request => whole(store, request.params.id),
  )

  app.post(
    '/api/conversions/:id/edits',
    {
      bodyLimit: 8_000_000,
      schema: {
        summary: 'A batch of edits, all or none; each applies where what was seen still stands',
        params: ById,
        body: Batch,
        response: { ...CHANGED, 200: Saved },
      },
    },
    (request, reply) => answered(reply, store.edit(request.params.id, defined(request.body))),
  )

  app.post(
    '/api/conversions/:id/undo',
    {
      schema: {
        summary: 'Takes back what one revision changed; refused with both values where somebody changed the same since',
        params: ById,
        body: ToRevision,
        response: { ...CHANGED, 200: Saved },
      },
    },
    (request, reply) => answered(reply, store.undo(request.params.id, request.body.revision, request.body.by)),
  )

  app.post(
    '/api/conversions/:id/restore',
    {
      schema: {
        summary: 'An earlier revision once more, as a new one',
        params: ById,
        body: ToRevision,
        response: { ...REFUSED, 200: Saved },
      },
    },
    request => saved(store.restore(request.params.id, request.body.revision, request.body.by)),
  )

  app.delete(
    '/api/conversions/:id',
    { schema: { summary: 'Deletes; for thirty days it can be brought back', params: ById, response: { ...REFUSED, 200: ConversionLine } } },
    request => line(store.remove(request.params.id)),
  )

  app.post(
    '/api/conversions/:id/undelete',
    { schema: { summary: 'Brings a deleted conversion back', params: ById, response: { ...REFUSED, 200: ConversionLine } } },
    request => line(store.bringBack(request.params.id)),
  )

  function made(m: z.output<typeof Making>): Outcome {
    const by = m.by === undefined ? {} : { by: m.by }
    if (m.text !== undefined)
      return store.make({ text: m.name === undefined ? m.text : renamed(m.text, m.name), files: fromBase64(m.files), ...by })
    if (m.start !== undefined) return store.make({ text: startText(defined(m.start)), ...by })
    if (m.copyOf !== undefined) return store.duplicate(m.copyOf, m.revision, m.by)
    if (m.variantOf !== undefined) return store.variant(m.variantOf, m.named ?? '', m.revision, m.by)
    const sample = samples.find(s => s.sample === m.sample)
    if (!sample) throw new StoreFault('unknown', `No sample is called so; there are ${samples.map(s => s.sample).join(', ') || 'none'}.`)
    return store.make({ text: sample.text, files: sample.files, what: `sample ${sample.sample}`, ...by })
  }
}

export const fromBase64 = (files: Readonly<Record<string, string>> | undefined): Record<string, Uint8Array> =>
  Object.fromEntries(Object.entries(files ?? {}).map(([name, bytes]) => [name, Buffer.from(bytes, 'base64')]))

/** A text that cannot be read keeps its name: what is wrong with it is said next. */
function renamed(text: string, name: string): string {
  const reading = readText(text)
  if (!isSound(reading)) return text
  const applied = applyEdits(text, [{ path: ['car'], now: name }], reading)
  return applied.ok ? applied.text : text
}

type Defined<T> = { [K in keyof T]: Exclude<T[K], undefined> }
/** Without the keys that hold nothing. */
export const defined = <T extends object>(given: T): Defined<T> =>
  Object.fromEntries(Object.entries(given).filter(([, value]) => value !== undefined)) as Defined<T>
