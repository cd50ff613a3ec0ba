import { existsSync } from 'node:fs'
import { join } from 'node:path'
import fastifyStatic from '@fastify/static'
import type { FastifyInstance } from 'fastify'

/** Names that carry a mark of their content: such a file never changes. */
const MARKED = /-[\w-]{8,}\.[a-z0-9]+(\.br)?$/i
const NOT_BUILT = 'The app is not built. Build it with `npm run build`, then start again. The interface for programs is under /api.\n'

/** The built app: its files, and its first page for every address that names no file. */
export async function pages(app: FastifyInstance, web: string | undefined): Promise<void> {
  const isBuilt = web !== undefined && existsSync(join(web, 'index.html'))
  if (isBuilt)
    await app.register(fastifyStatic, {
      root: web,
      index: false,
      wildcard: true,
      preCompressed: true,
      dotfiles: 'ignore',
      cacheControl: false,
      setHeaders: (reply, path) =>
        void reply.header('cache-control', MARKED.test(path) ? 'public, max-age=31536000, immutable' : 'no-cache'),
    })
  if (isBuilt) app.get('/', { schema: { hide: true } }, (_, reply) => reply.sendFile('index.html'))

  app.setNotFoundHandler((request, reply) => {
    const [path = ''] = request.url.split('?')
    const isApp = request.method === 'GET' && !/^\/api(\/|$)/i.test(path) && !path.includes('.')
    if (!isApp) return reply.code(404).send({ refused: 'unknown', message: 'There is nothing of this name.' })
    if (isBuilt) return reply.code(200).sendFile('index.html')
    return reply.code(503).type('text/plain; charset=utf-8').send(NOT_BUILT)
  })
}
