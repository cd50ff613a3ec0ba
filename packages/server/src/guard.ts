import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'

const POLICY = [
  "default-src 'self'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "connect-src 'self'",
  "worker-src 'self'",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ')

export const HEADERS: Readonly<Record<string, string>> = {
  'content-security-policy': POLICY,
  'x-content-type-options': 'nosniff',
  'x-frame-options': 'DENY',
  'referrer-policy': 'no-referrer',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
  'permissions-policy': 'camera=(), microphone=(), geolocation=(), payment=(), usb=()',
}

const SAFE = new Set(['GET', 'HEAD'])

/** The names this machine may be called by: anything else came here by a name somebody else chose. */
export function isOwnHost(host: string | undefined, port: number): boolean {
  const said = /^(localhost|127\.0\.0\.1|\[::1\])(?::(\d{1,5}))?$/i.exec(host ?? '')
  return said !== null && Number(said[2] ?? 80) === port
}

/** Why a request is not answered, or nothing. Pages of other sites may neither read nor change anything here. */
export function objection(request: Pick<FastifyRequest, 'method' | 'headers' | 'url'>, port: number): string | undefined {
  const { host, origin } = request.headers,
    site = request.headers['sec-fetch-site']
  // A whole address in the first line is for go-betweens, and there is none here.
  if (!isOwnHost(host, port) || !request.url.startsWith('/'))
    return 'This address does not belong to this server; use the one it printed when it started.'
  if (origin !== undefined && !(origin.startsWith('http://') && isOwnHost(origin.slice(7), port)))
    return 'Pages of other sites are not answered.'
  const isPage = SAFE.has(request.method) && !/^\/api(\/|$|\?)/i.test(request.url)
  if (!isPage && site !== undefined && site !== 'same-origin' && site !== 'none') return 'Pages of other sites are not answered.'
  if (SAFE.has(request.method)) return undefined
  const isJson = /^application\/json\b/i.test(request.headers['content-type'] ?? '')
  if (!isJson && request.headers['x-ampwright'] === undefined)
    return 'A change needs a body of the type application/json, or the header x-ampwright: 1.'
  return undefined
}

/** Checks every request before anything else looks at it, and gives every answer its headers. `port` may be known later only. */
export function guard(app: FastifyInstance, port: () => number): void {
  app.addHook('onRequest', async (request: FastifyRequest, reply: FastifyReply) => {
    void reply.headers(HEADERS)
    if (/^\/api(\/|$|\?)/i.test(request.url)) void reply.header('cache-control', 'no-store')
    const why = objection(request, port())
    if (why !== undefined) return reply.code(403).send({ refused: 'foreign', message: why })
    return undefined
  })
}
