import { z } from 'zod'
import { published } from '../openapi.ts'
import { DEMO } from '../samples.ts'
import { Health, Sample } from '../shapes.ts'
import { type Behind, bytesOf, REFUSED, type Routed } from './routed.ts'

/** The server itself: whether it is well, the samples, changes as they come, the description of the interface. */
export function aboutRoutes(app: Routed, { store, samples, live, warning, version }: Behind): void {
  app.get(
    '/api/health',
    { schema: { summary: 'Whether the server and its database are well', response: { ...REFUSED, 200: Health } } },
    () => ({
      ok: true as const,
      version,
      node: process.versions.node,
      conversions: store.conversions().filter(c => c.deletedUntil === null).length,
      warning: warning(),
    }),
  )

  app.get('/api/samples', { schema: { summary: 'The sample cars', response: { ...REFUSED, 200: z.array(Sample) } } }, () =>
    samples.map(({ sample, name, about, files }) => ({ sample, name, about, demo: sample === DEMO, files: Object.keys(files) })),
  )

  app.get(
    '/api/live',
    {
      schema: {
        summary:
          'Changes as they come, as server-sent events: first `heads` (every conversion with its revision) and `jobs` (a list of `Job`, where there are any), then `change` (`Told`) for each change and `job` (`Job`) for each step of a job',
        response: { ...REFUSED, 200: bytesOf('text/event-stream') },
      },
    },
    (_, reply) => live.join(reply),
  )

  app.get('/api/openapi.json', { schema: { hide: true } }, () => published(app.swagger()))
}
