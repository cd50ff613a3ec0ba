import { createWriteStream } from 'node:fs'
import { Readable, Transform } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import { StoreFault } from '@ampwright/store'
import type { FastifyReply, FastifyRequest } from 'fastify'

const tooLarge = (most: number): StoreFault =>
  new StoreFault('size', `This is too large; at most ${Math.floor(most / 1_000_000)} MB are taken.`)

/** The bytes of a request, at most so many; refused before they are read where the request says it is larger. */
function streamOf(request: FastifyRequest, reply: FastifyReply, most: number): Readable {
  if (Number(request.headers['content-length'] ?? 0) > most) {
    void reply.header('connection', 'close')
    throw tooLarge(most)
  }
  if (request.body instanceof Readable) return request.body
  if (request.body === undefined || request.body === null) return Readable.from([])
  throw new StoreFault('content', 'Bytes are wanted here: send them as application/octet-stream.')
}

export async function bytesIn(request: FastifyRequest, reply: FastifyReply, most: number): Promise<Buffer> {
  const parts: Buffer[] = []
  let size = 0
  for await (const part of streamOf(request, reply, most)) {
    size += (part as Buffer).length
    if (size > most) throw tooLarge(most)
    parts.push(part as Buffer)
  }
  return Buffer.concat(parts)
}

/** The same into a file, for what may be large. */
export async function intoFile(
  request: FastifyRequest,
  reply: FastifyReply,
  most: number,
  file: string,
  hear: (size: number) => void = () => {},
  signal?: AbortSignal,
): Promise<void> {
  let size = 0
  const bound = new Transform({
    transform(part: Buffer, _, done) {
      size += part.length
      hear(size)
      done(size > most ? tooLarge(most) : null, part)
    },
  })
  await pipeline(streamOf(request, reply, most), bound, createWriteStream(file, { flags: 'wx', mode: 0o600 }), signal ? { signal } : {})
}
