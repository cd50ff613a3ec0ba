import type { Store } from '@ampwright/store'
import type { FastifyBaseLogger, FastifyInstance, RawReplyDefaultExpression, RawRequestDefaultExpression, RawServerDefault } from 'fastify'
import type { ZodTypeProvider } from 'fastify-type-provider-zod'
import { z } from 'zod'
import type { Jobs } from '../jobs.ts'
import type { liveTo } from '../live.ts'
import type { SampleCar } from '../samples.ts'
import { Clashes, Id, Refused, Unreadable } from '../shapes.ts'

export type Routed = FastifyInstance<
  RawServerDefault,
  RawRequestDefaultExpression,
  RawReplyDefaultExpression,
  FastifyBaseLogger,
  ZodTypeProvider
>

/** What the routes answer from. */
export type Behind = {
  readonly store: Store
  readonly samples: readonly SampleCar[]
  readonly live: ReturnType<typeof liveTo>
  readonly jobs: Jobs
  readonly now: () => number
  /** A place for what passes through: backups on their way out or in. */
  readonly passing: string
  /** What is not as it should be, though it works; null where all is well. */
  readonly warning: () => string | null
  readonly version: string
}

/** Largest bundle and backup that is taken [bytes]. */
export const MOST_BUNDLE_FILE = 200_000_000
export const MOST_BACKUP = 8_000_000_000
/** Largest body of JSON where files may come along [bytes]. */
export const MOST_JSON = 160_000_000

export const ById = z.object({ id: Id })
/** Answers every route may give: refused before anything was looked at, by what was asked, or by the disk. */
export const REFUSED = { '4xx': Refused, '5xx': Refused }
export const CHANGED = { ...REFUSED, 409: Clashes, 422: Unreadable }
/** An answer that is bytes of a type. */
export const bytesOf = (...types: readonly string[]) => ({
  content: Object.fromEntries(types.map(type => [type, { schema: z.any().describe('bytes') }])),
})
