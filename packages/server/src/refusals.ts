import { type FaultKind, Stopped, StoreFault } from '@ampwright/store'
import { Refusal } from '@ampwright/workbench'
import type { FastifyError, FastifyReply, FastifyRequest } from 'fastify'
import { hasZodFastifySchemaValidationErrors } from 'fastify-type-provider-zod'

const STATUS: Readonly<Record<FaultKind, number>> = {
  unknown: 404,
  deleted: 410,
  name: 400,
  size: 413,
  content: 400,
  full: 507,
  'read-only': 503,
  'in use': 503,
  newer: 503,
  damaged: 503,
  runtime: 503,
}

/** Another job must end first. */
export class Busy extends Error {}

type Told = { readonly status: number; readonly refused: string; readonly message: string }

/** What an error comes to for whoever asked: never a trace, never a place on this machine. */
export function told(error: unknown, folder: string): Told {
  if (error instanceof StoreFault)
    return { status: STATUS[error.kind], refused: error.kind, message: error.message.replaceAll(folder, 'the data folder') }
  if (error instanceof Busy) return { status: 409, refused: 'busy', message: error.message }
  if (error instanceof Stopped || isCutOff(error))
    return { status: 409, refused: 'stopped', message: 'This was stopped on the way. Nothing was changed.' }
  if (error instanceof Refusal) return { status: 400, refused: 'content', message: error.message }
  if (hasZodFastifySchemaValidationErrors(error)) return { status: 400, refused: 'request', message: validation(error) }
  const { statusCode, code } = error as Partial<FastifyError>
  if (statusCode !== undefined && statusCode >= 400 && statusCode < 500)
    return {
      status: statusCode,
      refused: 'request',
      message: WORDS[code ?? ''] ?? WORDS[String(statusCode)] ?? 'This request cannot be read.',
    }
  return {
    status: 500,
    refused: 'fault',
    message: 'Something went wrong in the server; its log says what. Nothing was changed by this request.',
  }
}

const isCutOff = (e: unknown): boolean =>
  e instanceof Error && (e.name === 'AbortError' || ('code' in e && e.code === 'ERR_STREAM_PREMATURE_CLOSE'))

const WORDS: Readonly<Record<string, string>> = {
  '404': 'There is nothing of this name.',
  '413': 'This is too large to be taken.',
  '415': 'A body of this type is not read here; application/json is.',
  FST_ERR_CTP_EMPTY_JSON_BODY: 'The body is empty; JSON is wanted.',
}

function validation(error: {
  validation: readonly { instancePath: string; message?: string | undefined }[]
  validationContext?: string | undefined
}): string {
  const lines = error.validation.slice(0, 5).map(v => {
    const place = v.instancePath.replace(/^\//, '').replaceAll('/', '.').slice(0, 200)
    return `${place || error.validationContext || 'body'}: ${v.message ?? 'not accepted'}`
  })
  return `The request does not fit. ${lines.join('; ')}`
}

/** Answers an error in the same shape as every refusal; what nobody expected goes into the log. */
export const answerError =
  (folder: string) =>
  (error: unknown, request: FastifyRequest, reply: FastifyReply): FastifyReply => {
    const { status, refused, message } = told(error, folder)
    if (status >= 500) request.log.error({ err: error }, refused)
    return reply.code(status).send({ refused, message })
  }
