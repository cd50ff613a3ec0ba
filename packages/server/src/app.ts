import type { Store } from '@ampwright/store'
import fastifySwagger from '@fastify/swagger'
import Fastify, { type FastifyInstance, type FastifyReply } from 'fastify'
import {
  jsonSchemaTransform,
  jsonSchemaTransformObject,
  serializerCompiler,
  validatorCompiler,
  type ZodTypeProvider,
} from 'fastify-type-provider-zod'
import { guard, HEADERS } from './guard.ts'
import { type Jobs, jobsIn } from './jobs.ts'
import { liveTo } from './live.ts'
import { published } from './openapi.ts'
import { pages } from './pages.ts'
import { answerError } from './refusals.ts'
import { aboutRoutes } from './routes/about.ts'
import { conversionRoutes } from './routes/conversions.ts'
import { fileRoutes } from './routes/files.ts'
import { historyRoutes } from './routes/history.ts'
import { jobRoutes } from './routes/jobs.ts'
import type { Behind, Routed } from './routes/routed.ts'
import { shelfRoutes } from './routes/shelf.ts'
import { transferRoutes } from './routes/transfer.ts'
import type { SampleCar } from './samples.ts'

export type AppOptions = {
  readonly store: Store
  readonly samples: readonly SampleCar[]
  readonly passing: string
  readonly now: () => number
  /** The port it is reached at, for the check of the address; known once it listens. */
  readonly port: () => number
  readonly warning: () => string | null
  readonly web?: string
  /** Takes the lines of the log, each one JSON object. */
  readonly log?: { write(line: string): void }
}

export const VERSION = '0.1.0'

/** The server without a port: everything it answers. */
export async function appOf(o: AppOptions): Promise<FastifyInstance> {
  const app = Fastify({
    logger: o.log ? { level: 'info', stream: o.log } : false,
    bodyLimit: 2_000_000,
    exposeHeadRoutes: false,
    forceCloseConnections: 'idle',
    requestTimeout: 300_000,
    routerOptions: { maxParamLength: 900 },
    frameworkErrors: (_, __, reply) => {
      const answer: FastifyReply = reply as never
      void answer.headers(HEADERS).code(400).send({ refused: 'request', message: 'This address cannot be read.' })
    },
  })
  app.setValidatorCompiler(validatorCompiler)
  app.setSerializerCompiler(serializerCompiler)
  guard(app, o.port)
  app.setErrorHandler(answerError(o.store.folder))
  // Bodies that are not JSON are handed on as they come, to be read only as far as is accepted.
  app.removeContentTypeParser('text/plain')
  app.addContentTypeParser('*', (_, payload, done) => done(null, payload))
  await app.register(fastifySwagger, {
    openapi: {
      openapi: '3.1.0',
      info: {
        title: 'Ampwright',
        version: VERSION,
        description:
          'Saved conversions: revisions, variants, files, live changes; the shelf of the workshop. Loopback only; a change needs JSON or the header x-ampwright.',
      },
    },
    transform: jsonSchemaTransform,
    transformObject: jsonSchemaTransformObject,
  })
  const jobs: Jobs = jobsIn({
      passing: o.passing,
      folder: o.store.folder,
      now: o.now,
      tell: job => live.job(job),
      fault: e => app.log.error({ err: e }, 'fault'),
    }),
    live = liveTo(o.store, () => jobs.list()),
    behind: Behind = { ...o, live, jobs, version: VERSION }
  // Who listens hears that a job was stopped before the stream ends.
  app.addHook('preClose', async () => {
    await jobs.stop()
    live.close()
  })
  await app.register(async routed => {
    for (const routes of [aboutRoutes, conversionRoutes, historyRoutes, fileRoutes, transferRoutes, jobRoutes, shelfRoutes])
      routes(routed.withTypeProvider<ZodTypeProvider>() as unknown as Routed, behind)
  })
  await pages(app, o.web)
  await app.ready()
  return app
}

/** The description of the interface, without a store behind it. */
export async function description(): Promise<string> {
  const store = { folder: '-', heard: () => () => {} } as unknown as Store,
    app = await appOf({ store, samples: [], passing: '', now: () => 0, port: () => 0, warning: () => null }),
    text = JSON.stringify(published(app.swagger()), null, 1)
  await app.close()
  return `${text}\n`
}
