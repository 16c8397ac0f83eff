import type { FastifyReply, FastifyRequest } from 'fastify'

/**
 * The Idempotency-Key of a request (draft-ietf-httpapi-idempotency-key-header-07), or null where it has none. The draft has it
 * in double quotes; without them it is understood, too.
 */
export function idempotencyKey({ headers }: FastifyRequest): string | null {
  const header = headers['idempotency-key']
  if (header === undefined) return null
  const text = Array.isArray(header) ? header.join(',') : header
  return /^"(.*)"$/.exec(text.trim())?.[1] ?? text.trim()
}

/** Tells whether an answer was kept from an earlier request. */
export const replayHeader = (reply: FastifyReply, replayed: boolean): FastifyReply =>
  replayed ? reply.header('idempotency-replayed', 'true') : reply

export const REPLAY_HEADER = {
  'Idempotency-Replayed': {
    type: 'string',
    description: 'true where this is the answer to an earlier request with the same Idempotency-Key',
  },
} as const

/** The problems of routes that take an Idempotency-Key. */
export const ONCE_PROBLEMS = [
  'idempotency-key-malformed',
  'idempotency-key-busy',
  'idempotency-key-reused',
] as const
