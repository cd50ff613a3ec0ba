import { join } from 'node:path'
import { type Running, type Starting, startServer } from '@ampwright/server'
import { root } from './cars.ts'
import { emptyFolder } from './stores.ts'

export const SAMPLES = join(root, 'samples')

/** A server on a port of its own, with an empty data folder. */
export const serving = (more: Partial<Starting> = {}): Promise<Running> =>
  startServer({ data: emptyFolder(), port: 0, samples: SAMPLES, ...more })

export type Answer = { readonly status: number; readonly headers: Headers; readonly bytes: Buffer; readonly json: any }

/** One request. Bytes go as they are, everything else as JSON; a change without a body carries the header that is wanted. */
export async function ask(
  at: Running,
  method: string,
  path: string,
  body?: unknown,
  headers: Record<string, string> = {},
): Promise<Answer> {
  const isBytes = body instanceof Uint8Array,
    isPlain = body === undefined || isBytes
  const answer = await fetch(new URL(path, at.url), {
    method,
    headers: { ...(isPlain ? { 'x-ampwright': '1' } : { 'content-type': 'application/json' }), ...headers },
    ...(body === undefined ? {} : { body: isBytes ? new Uint8Array(body) : JSON.stringify(body) }),
  })
  const bytes = Buffer.from(await answer.arrayBuffer())
  return {
    status: answer.status,
    headers: answer.headers,
    bytes,
    json: answer.headers.get('content-type')?.includes('json') ? JSON.parse(bytes.toString()) : undefined,
  }
}
